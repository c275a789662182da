// The words of measurements and of the measuring guide.

export const measureWords = {
} as const;
