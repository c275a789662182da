// The words of lists as files, and of erasing a person.

export const listWords = {
} as const;
