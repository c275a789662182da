// The catalogue: every word a person reads, in English. Keys are flat; {name} is a placeholder.

export const en = {
  "app.name": "Rimside",
  "app.titled": "{screen} · Rimside",
} as const;
