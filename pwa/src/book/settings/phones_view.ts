// Who may come in, in words: the list of phones, a code, what went wrong, and over which way the app came.

import type { Device, NewCode } from "../../log/sync/pairing.ts";
import { ServerRefusal } from "../../log/sync/server_api.ts";
import { facts, w } from "../../words/index.ts";
import { ageOf } from "../value/age.ts";
import { clockWords } from "../value/when.ts";

export interface PhoneView {
  readonly id: string;
  readonly name: string;
  readonly label: string; // as it stands, "" for none
  readonly line: string;
  readonly here: boolean;
  readonly out: boolean;
}

// phoneViews lists this phone first, then who came last, and at the end who is shut out. own is the record of this phone:
// a server that lets everybody in cannot tell who asks.
export function phoneViews(devices: readonly Device[], own: string, now: number): readonly PhoneView[] {
  const told = devices.some((each) => each.here);
  const isHere = (each: Device): boolean => (told ? each.here : each.id === own);
  const rank = (each: Device): number => (each.revoked ? 2 : isHere(each) ? 0 : 1);
  return devices.toSorted((a, b) => rank(a) - rank(b) || b.seen_at - a.seen_at).map((each) => ({
    id: each.id, name: each.label || w("phones.unnamed"), label: each.label, line: lineOf(each, isHere(each), now), here: isHere(each), out: each.revoked,
  }));
}

function lineOf({ revoked, seen_at }: Device, here: boolean, now: number): string {
  const seen = seen_at === 0 ? w("phones.never") : w("phones.seen", { when: ageOf(now - seen_at) });
  return facts([here ? w("phones.here") : "", revoked ? w("phones.out") : "", here && !revoked ? "" : seen]);
}

// readCode gives the digits of a code as people type it, "" when it is none.
export function readCode(text: string): string {
  const digits = text.replace(/[\s-]/g, "");
  return /^\d{6}$/.test(digits) ? digits : "";
}

export const longestLabel = 60; // characters

export interface Fault {
  readonly field: "code" | "label" | ""; // "": none of them
  readonly words: string;
}

// typedFault finds what is wrong before anything is sent.
export function typedFault(code: string, label: string): Fault | undefined {
  if (readCode(code) === "") return { field: "code", words: w("pair.digits") };
  return labelFault(label);
}

export function labelFault(label: string): Fault | undefined {
  const count = [...label.trim()].length;
  return count === 0 || count > longestLabel ? { field: "label", words: w("pair.noLabel") } : undefined;
}

// saidFault words what became of asking the server.
export function saidFault(error: unknown): Fault {
  if (!(error instanceof ServerRefusal)) return { field: "", words: w("pair.alone") };
  if (error.code === "wrong_code") return { field: "code", words: w("pair.wrong") };
  if (error.code === "too_many_tries") return { field: "", words: w("pair.tooMany") };
  if (error.code === "bad_request" && error.field === "code") return { field: "code", words: w("pair.digits") };
  if (error.code === "bad_request" && error.field === "label") return { field: "label", words: w("pair.noLabel") };
  return { field: "", words: w("pair.refused") };
}

export interface CodeView {
  readonly figures: string; // "" when it is no longer good
  readonly until: string;
}

// codeView shows a code while it is good. clockOff is how far this phone's clock is ahead of the server's.
export function codeView({ code, expires_at }: NewCode, clockOff: number, now: number): CodeView {
  const ends = expires_at + clockOff;
  if (ends <= now) return { figures: "", until: w("code.over") };
  return {
    figures: `${code.slice(0, 3)} ${code.slice(3)}`,
    until: w("code.left", { time: clockWords(ends, now), n: Math.ceil((ends - now) / 60_000) }),
  };
}

export type Way = "https" | "here" | "plain";

// wayOf tells over which connection the app came.
export function wayOf({ protocol, hostname }: Pick<Location, "protocol" | "hostname">): Way {
  if (protocol === "https:") return "https";
  return /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\])$/.test(hostname) ? "here" : "plain";
}
