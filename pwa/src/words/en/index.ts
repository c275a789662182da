// The catalogue: every word a person reads, in English. The app itself takes it in two parts.

import { first } from "./first.ts";
import { later } from "./later.ts";

export const en = { ...first, ...later } as const;
