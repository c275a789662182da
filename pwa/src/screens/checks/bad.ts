// How bad a finding is, in words.

import type { Severity } from "../../book/checks/walk.ts";
import { w } from "../../words/index.ts";

export const badWords = (severity: Severity): string => w(`checks.bad.${severity}`);
