// The contract between the shell and a screen. Interfaces only, so that ui knows nothing of log or the calculator:
// the top level wires the real ones in.

import type { Name, Requests, Result } from "../contract/contract.ts";
import type { BookLog } from "../log/book_log.ts";
import type { Sync } from "../log/sync/sync.ts";

// CalcState tells where sums are done: here, on the server, or nowhere; the reason is a technical one, for the details.
export interface CalcState {
  readonly where: "own" | "server" | "none";
  readonly reason: string;
}

export interface Calc {
  readonly state: CalcState;
  // ask answers every question, in order. It rejects only when nothing can answer.
  ask<N extends Name>(name: N, request: Requests[N]): Promise<Result<N>>;
  // latest drops an older unanswered question of the same name, which then answers undefined. The request that was answered last
  // is answered again at once, when it is the same object.
  latest<N extends Name>(name: N, request: Requests[N]): Promise<Result<N> | undefined>;
}

export interface Drafts {
  // save keeps a value on this phone: true when that value, or a later one, is on the disk, false when the phone refused.
  // It never rejects; the status line tells.
  save(name: string, value: unknown): Promise<boolean>;
  // load gives the value last saved, or undefined. It never rejects.
  load(name: string): Promise<unknown>;
  // follow hears of values saved in other tabs. While editing() says so the change waits. The result ends it.
  follow(name: string, hear: (value: unknown) => void, editing?: () => boolean): () => void;
}

export interface ScreenSettings {
  readonly units: "bar" | "psi" | "kpa";
  readonly theme: "system" | "day" | "night";
  readonly language: "phone" | "en" | "de";
  readonly installHint: boolean;
}

// Saving tells whether what is typed is on the disk, or why it is not.
export type Saving = "saved" | "saving" | "refused" | "full" | "silent";

// Ctx is what the shell lends a screen from open to close.
export interface Ctx {
  readonly calc: Calc;
  readonly drafts: Drafts;
  readonly book: BookLog; // the open book: read its records, save changes
  readonly sync: Sync; // how it stands with the server
  readonly settings: ScreenSettings; // always the current ones
  readonly path: readonly string[]; // what follows the screen's name in the address; another path opens the screen anew
  // closed is aborted when the screen closes: give it to listeners.
  readonly closed: AbortSignal;
  // head is the screen's own space in the header, beside the heading.
  readonly head: HTMLElement;
  // heading replaces the words of the heading (title() until then).
  heading(words: string): void;
  readonly saving: Saving;
  onSaving(hear: (saving: Saving) => void): void;
  onSettings(hear: (settings: ScreenSettings) => void): void;
  changeSettings(change: Partial<ScreenSettings>): void;
  onCalc(hear: (state: CalcState) => void): void;
  // say tells people who listen to the page, after a second's rest, so that typing is not talked over.
  say(words: string): void;
  // trouble shows that something broke, with details to copy.
  trouble(error: unknown): void;
}

export interface Screen {
  readonly name: string; // as in the route: #/name or #/name/path
  title(): string;
  // load fetches the script of the screen's page at the path, where it has one of its own. It rejects when that is not to be had.
  load?(path: readonly string[]): Promise<void>;
  open(host: HTMLElement, ctx: Ctx): void;
  close?(): void;
}

// Visit is an address taken apart.
export interface Visit {
  readonly screen: Screen;
  readonly path: readonly string[];
  readonly first: boolean; // the app has just started
}
