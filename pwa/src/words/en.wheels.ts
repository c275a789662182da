// The words of the Wheels screen.

export const wheelsWords = {
} as const;
