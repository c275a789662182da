// How the book stands with the server, in words: the status line, the clock, another book there.

import { w } from "../words/index.ts";
import { plain } from "../words/number.ts";
import { clockWords } from "./when.ts";

// SyncFacts is what these words need to know.
export interface SyncFacts {
  readonly phase: "never" | "idle" | "sending" | "fetching" | "unreachable" | "otherBook" | "shutOut";
  readonly unsent: number;
  readonly lastMet: number; // ms since 1970; 0: never
  readonly clockOff: number; // ms that this phone is ahead of the server
  readonly done: number; // of the work of this phase
  readonly total: number;
}

// syncWords is the part of the status line that follows "All saved on this phone".
export function syncWords(facts: SyncFacts, now: number): readonly string[] {
  const { unsent, lastMet } = facts;
  const waiting = unsent > 0 ? [w("sync.unsent", { n: unsent })] : [];
  const met = lastMet > 0 ? [w("sync.met", { when: clockWords(lastMet, now) })] : [];
  const doing = doingWords(facts);
  return [...waiting, ...(doing === "" ? met : [doing])];
}

// doingWords tells long work with its progress; short work is not worth a word.
function doingWords({ phase, done, total }: SyncFacts): string {
  if ((phase !== "sending" && phase !== "fetching") || total <= longWork) return "";
  return w(phase === "sending" ? "sync.sending" : "sync.fetching", { done, total });
}

const longWork = 500; // ops: one request

// statusLine is the whole line while saving works.
export function statusLine(facts: SyncFacts, now: number): string {
  return [w("status.saved"), ...syncWords(facts, now)].join(" · ");
}

// phaseWords explains what the phase means for the person, "" where there is nothing to explain.
export function phaseWords({ phase }: SyncFacts): string {
  switch (phase) {
    case "never": return w("sync.phase.never");
    case "unreachable": return w("sync.phase.unreachable");
    case "otherBook": return w("sync.phase.otherBook");
    case "shutOut": return w("sync.phase.shutOut");
    default: return "";
  }
}

const tolerated = 2 * 60_000; // ms: less than this changes nothing that matters

// clockWarning is "" while this phone's clock is right.
export function clockWarning({ clockOff }: SyncFacts): string {
  if (Math.abs(clockOff) < tolerated) return "";
  const by = spanWords(Math.abs(clockOff));
  return clockOff > 0 ? w("clock.ahead", { by }) : w("clock.behind", { by });
}

const minute = 60_000;
const hour = 60 * minute;
const day = 24 * hour;

function spanWords(ms: number): string {
  if (ms < 2 * hour) return w("span.minutes", { n: Math.round(ms / minute) });
  if (ms < 2 * day) return w("span.hours", { n: plain(Math.round((ms / hour) * 10) / 10) });
  return w("span.days", { n: Math.round(ms / day) });
}
