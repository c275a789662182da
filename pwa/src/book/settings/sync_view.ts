// How the book stands with the server, in words: the status line, the clock, another book there.

import { isOutside, type SyncState } from "../../log/sync/sync.ts";
import { facts as sideBySide, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { clockWords } from "../value/when.ts";

// SyncFacts is what these words need to know.
export type SyncFacts = Pick<SyncState, "phase" | "fault" | "unsent" | "lastMet" | "clockOff" | "done" | "total"> & { readonly held?: number };

// syncWords is the part of the status line that follows "All saved on this phone".
export function syncWords(facts: SyncFacts, now: number): readonly string[] {
  const { unsent, lastMet } = facts;
  const waiting = unsent > 0 ? [w("sync.unsent", { n: unsent })] : [];
  const met = lastMet ? [w("sync.met", { when: clockWords(lastMet, now) })] : [];
  const doing = doingWords(facts);
  const held = (facts.held ?? 0) > 0 ? [w("sync.held", { n: facts.held ?? 0 })] : [];
  return [...waiting, ...held, ...(doing === "" ? met : [doing])];
}

// doingWords tells long work with its progress; short work is not worth a word.
function doingWords({ phase, done, total }: SyncFacts): string {
  if ((phase !== "sending" && phase !== "fetching") || total <= longWork) return "";
  return w(phase === "sending" ? "sync.sending" : "sync.fetching", { done, total });
}

const longWork = 500; // ops: one request

// statusLine is the whole line while saving works.
export function statusLine(facts: SyncFacts, now: number): string {
  return sideBySide([w("status.saved"), ...syncWords(facts, now)]);
}

// phaseWords says what that means for the person.
export function phaseWords({ phase, fault, unsent }: SyncFacts): string {
  if (phase === "fault") return w(`sync.fault.${isFault(fault) ? fault : "internal"}`);
  if (phase === "idle") return w(unsent === 0 ? "sync.phase.even" : "sync.phase.waiting");
  return w(`sync.phase.${phase}`);
}

// outsideWords tells why nothing goes to the server that is there, "" when something does.
export function outsideWords(facts: SyncFacts): string {
  return facts.phase === "otherBook" || facts.phase === "fault" || isOutside(facts) ? phaseWords(facts) : "";
}

const faults = ["damaged", "damaged_page", "full", "read_only", "busy", "too_small", "internal"] as const;

function isFault(code: string): code is (typeof faults)[number] {
  return faults.some((each) => each === code);
}

// clockWarning is "" while this phone's clock is right, as far as anybody knows.
export function clockWarning({ clockOff }: SyncFacts): string {
  if (clockOff === 0) return "";
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
