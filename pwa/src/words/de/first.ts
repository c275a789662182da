// Was die App auf dem ersten Bild sagt. Die Schlüssel stehen in ../en/first.ts.

export const first = {} as const;
