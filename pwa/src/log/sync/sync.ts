// The sync: meets the server whenever it is told to, and says how that stands. Nothing here is needed to work with the
// book: what is saved is on this phone, whatever becomes of a round.

import type { About, HeldErasures } from "./answers.ts";
import type { BookLog } from "../book_log.ts";
import { type Exchange, meet, type Meeting } from "./exchange.ts";
import { StorageTrouble, troubleFrom } from "../db/idb.ts";
import { changeLog, logRow, logStores, SentList } from "../db/logs.ts";
import { Outbox } from "./outbox.ts";
import { paces } from "./pace.ts";
import { Pairing } from "./pairing.ts";
import { noteShutOut, wasShutOut } from "./pairing_notes.ts";
import { getPhoto, putPhoto, sendPhotos } from "./photos.ts";
import { faultOf, offerAgain } from "./server_fault.ts";
import { ServerApi, ServerRefusal, ServerTrouble } from "./server_api.ts";

export type Outcome = "met" | "unreachable" | "fault" | "otherBook" | "notPaired" | "shutOut" | "storage";

export interface SyncState {
  readonly phase: "never" | "idle" | "sending" | "fetching" | "unreachable" | "fault" | "otherBook" | "notPaired" | "shutOut"; // shutOut: no longer paired
  readonly fault: string; // in phase fault: the code of what is wrong with the server
  readonly unsent: number; // ops that the server last met has not got
  readonly lastMet: number | undefined; // ms since 1970
  readonly clockOff: number; // ms that this phone is ahead of the server; 0 when small or unknown
  readonly rejected: number;
  readonly held: number; // erasures that wait at the server until somebody agrees
  readonly done: number; // of the work of this phase
  readonly total: number;
  readonly server: string;
  readonly otherBook: string; // the book that the server has, when it is another
  readonly trouble: StorageTrouble | undefined; // this phone could not keep what came
}

export interface SyncMeans {
  readonly fetch: (path: string, init: RequestInit) => Promise<Response>;
  readonly now: () => number;
  readonly base?: string;
  readonly alone?: <T>(work: () => Promise<T>) => Promise<T>; // one tab at a time
}

// isOutside tells whether the server does not let this phone in. Then it is asked only when something may have changed.
export function isOutside({ phase }: Pick<SyncState, "phase">): boolean {
  return phase === "notPaired" || phase === "shutOut";
}

const tolerated = 60_000; // ms of a clock's error that change nothing that matters
const prompt = 10_000; // ms: after a slower answer nobody knows when it was written

const atFirst: SyncState = {
  phase: "never", fault: "", unsent: 0, lastMet: undefined, clockOff: 0, rejected: 0, held: 0, done: 0, total: 0, server: "", otherBook: "", trouble: undefined,
};

export class Sync {
  readonly pairing: Pairing;
  readonly #log: BookLog;
  readonly #means: SyncMeans;
  readonly #api: ServerApi;
  readonly #outbox: Outbox;
  readonly #sent = new SentList();
  readonly #paces = paces();
  readonly #heard = new Set<(state: SyncState) => void>();
  #state = atFirst;
  #met = ""; // the log last met
  #asked = ""; // the log of this round
  #hindrance: unknown; // what kept something from going
  #ready: Promise<void> | undefined;
  #running: Promise<Outcome> | undefined;
  #again = false;
  #outdated = false; // another tab met the server while this one waited for its turn

  constructor(log: BookLog, means: SyncMeans) {
    this.#log = log;
    this.#means = means;
    this.#api = new ServerApi({ ...means, shutOut: () => this.#noteShutOut() });
    this.pairing = new Pairing(log, this.#api, () => void this.round());
    this.#outbox = new Outbox(log.tables);
    log.onSaved((ops) => void this.#saved(ops));
    log.on(() => void this.#count().catch(() => undefined));
    log.tabs.on((message) => this.#hear(message));
    this.ready.catch(() => undefined); // the first round tells
  }

  // ready is when what is remembered was read; after a refusal it is tried again.
  get ready(): Promise<void> {
    this.#ready ??= this.#start().catch((error: unknown) => {
      this.#ready = undefined;
      throw error;
    });
    return this.#ready;
  }

  get state(): SyncState {
    return this.#state;
  }

  on(hear: (state: SyncState) => void): () => void {
    this.#heard.add(hear);
    return () => this.#heard.delete(hear);
  }

  // round meets the server once. Rounds never overlap: one that is asked for during another follows it.
  round(): Promise<Outcome> {
    if (this.#running !== undefined) {
      this.#again = true;
      return this.#running;
    }
    this.#running = this.#rounds().finally(() => (this.#running = undefined));
    return this.#running;
  }

  // takeBook opens the server's book at the next start of the page; see BookLog.takeBook.
  takeBook(book: string): Promise<void> {
    return this.#log.takeBook(book);
  }

  heldErasures(): Promise<readonly HeldErasures[]> {
    return this.#api.heldErasures();
  }

  async putPhoto(blob: Blob): Promise<string> {
    return putPhoto(await this.#log.tables, blob);
  }

  async getPhoto(sha256: string): Promise<Blob | undefined> {
    return getPhoto(await this.#log.tables, this.#api, sha256);
  }

  async #rounds(): Promise<Outcome> {
    const alone = this.#means.alone ?? ((work) => work());
    for (;;) {
      this.#again = false;
      const outcome = await alone(() => this.#once());
      await this.#count(true).catch(() => undefined);
      if (!this.#again) return outcome;
    }
  }

  async #once(): Promise<Outcome> {
    try {
      await this.ready;
      if (this.#outdated) this.#outbox.forget();
      this.#outdated = false;
      const asked = this.#means.now();
      const about = await this.#api.about();
      this.#compareClocks(about.now, asked, this.#means.now());
      const exchange = await this.#exchange(about);
      this.#change({ held: (about.held ?? []).reduce((sum, each) => sum + each.count, 0) });
      if (about.book === "" || about.book === this.#log.book) await offerAgain(exchange, about);
      const meeting = await meet(exchange, about);
      if (meeting.kind !== "met") return this.#other(meeting.book, about);
      const outcome = await this.#haveMet(exchange, meeting, about);
      return this.#hindrance === undefined ? outcome : await this.#failed(this.#hindrance);
    } catch (error) {
      return this.#failed(error);
    }
  }

  async #exchange({ log, can }: About): Promise<Exchange> {
    this.#asked = log;
    this.#hindrance = undefined;
    return {
      hinder: (error) => (this.#hindrance = error),
      paces: this.#paces, now: this.#means.now, can: new Set(can ?? []),
      tables: await this.#log.tables, api: this.#api, book: this.#log.book, outbox: this.#outbox, sent: this.#sent,
      report: (phase, done, total) => this.#change({ phase, done, total, unsent: this.#outbox.size ?? this.#state.unsent }),
      changed: (updates) => this.#log.changed(updates),
    };
  }

  async #haveMet(exchange: Exchange, { log }: Meeting & { kind: "met" }, { server, name, version = "" }: About): Promise<Outcome> {
    const { tables } = exchange;
    const lastMet = this.#means.now();
    await tables.write([...logStores, "meta"], async (tx) => {
      await changeLog(tx, log, { book: this.#log.book, server, name, version, fault: "", lastMet });
      tx.put("meta", [{ name: "log", value: log }]);
    });
    this.#met = log;
    await sendPhotos(exchange, log);
    this.#change({ phase: "idle", lastMet, server: name || server, otherBook: "", trouble: undefined, done: 0, total: 0 });
    return "met";
  }

  #other(book: string, { server, name }: About): Outcome {
    this.#change({ phase: "otherBook", otherBook: book, server: name || server, done: 0, total: 0 });
    return "otherBook";
  }

  async #noteShutOut(): Promise<void> {
    await noteShutOut(await this.#log.tables, this.#log.device).catch(() => undefined); // then it counts as not paired
  }

  async #failed(error: unknown): Promise<Outcome> {
    const still = { done: 0, total: 0 };
    if (error instanceof ServerRefusal && (error.status === 401 || error.status === 403)) {
      const out = error.code === "shut_out" || (await wasShutOut(await this.#log.tables, this.#log.device).catch(() => false));
      const phase = out ? "shutOut" : "notPaired";
      this.#change({ phase, ...still });
      return phase;
    }
    const fault = faultOf(error);
    if (fault !== "") {
      await this.#noteFault(fault).catch(() => undefined); // then what was refused is offered again a little later
      this.#change({ phase: "fault", fault, ...still });
      return "fault";
    }
    if (error instanceof ServerRefusal || error instanceof ServerTrouble) {
      this.#change({ phase: "unreachable", ...still });
      return "unreachable";
    }
    const phase = this.#state.lastMet === undefined ? "never" : "idle";
    if (!(error instanceof StorageTrouble || error instanceof DOMException)) {
      this.#change({ phase, ...still });
      throw error; // a mistake of ours: the page shows it
    }
    this.#change({ phase, trouble: troubleFrom(error), ...still });
    return "storage";
  }

  async #noteFault(fault: string): Promise<void> {
    if (this.#asked !== "") await (await this.#log.tables).write(logStores, (tx) => changeLog(tx, this.#asked, { fault }));
  }

  #compareClocks(theirs: number, asked: number, answered: number): void {
    if (answered < asked || answered - asked > prompt) return;
    const off = Math.round((asked + answered) / 2 - theirs);
    const clockOff = Math.abs(off) <= tolerated ? 0 : off;
    this.#change({ clockOff });
    // A clock runs a little wrong each day: noting each second of it would redraw everything in every round.
    if (Math.abs(this.#log.clockOff - clockOff) > tolerated) void this.#log.clockIsOff(clockOff).catch(() => undefined); // told again next round
  }

  async #start(): Promise<void> {
    await this.#log.ready;
    await (await this.#log.tables).read(["meta", "logs"], async (tx) => {
      const [met] = await tx.get("meta", ["log"]);
      if (typeof met?.value !== "string") return;
      this.#met = met.value;
      const { lastMet, name, server } = await logRow(tx, met.value);
      if (lastMet > 0) this.#change({ phase: "idle", lastMet, server: name || server });
    });
    await this.#count();
  }

  async #saved(ops: readonly string[]): Promise<void> {
    this.#outbox.add(ops);
    await this.#count().catch(() => undefined); // the next round tells
  }

  // count brings the numbers up to date. During a round the list at hand is that of the log it meets.
  async #count(settled = this.#running === undefined): Promise<void> {
    const unsent = settled ? (await this.#outbox.of(this.#met)).size : this.#outbox.size ?? this.#state.unsent;
    const rejected = (await this.#log.rejected()).length;
    this.#change({ unsent, rejected });
  }

  #change(change: Partial<SyncState>): void {
    const next = { ...this.#state, ...change };
    if (Object.keys(change).every((name) => this.#state[name as keyof SyncState] === next[name as keyof SyncState])) return;
    this.#state = next;
    for (const hear of this.#heard) hear(next);
    if (this.#running !== undefined) this.#log.tabs.tell({ sync: { ...next, trouble: undefined }, met: this.#met });
  }

  // hear takes over what the tab that meets the server says.
  #hear(message: unknown): void {
    const { sync, met } = message as { sync?: SyncState; met?: string };
    if (sync === undefined || met === undefined) return;
    this.#outdated = this.#running !== undefined;
    if (this.#outdated) return;
    this.#outbox.forget();
    this.#met = met;
    this.#state = { ...sync, trouble: this.#state.trouble };
    for (const hear of this.#heard) hear(this.#state);
  }
}
