// The open book on this phone: everything that screens read and write goes through here. Whatever is saved is on the
// disk before anybody is told.

import { copyOwn, named, openNext } from "./book.ts";
import { copiedAt, noteCopied } from "./db/copied.ts";
import { type Change, choice, confirmation, edit, erasure, type Intent, removal, restoration } from "./op/change.ts";
import { isAhead, newRec } from "./op/clock.ts";
import { type HistoryEntry, historyOf } from "./op/history.ts";
import { Database } from "./db/idb.ts";
import { IdbTables } from "./db/idb_tables.ts";
import type { Json } from "./op/json.ts";
import type { RecordState } from "./op/merge.ts";
import { noteDevice } from "./sync/pairing_notes.ts";
import { receive, receiveStores } from "./db/receive.ts";
import { dismiss, listRejected, type RejectedOp } from "./db/rejected.ts";
import { everything, stateOf } from "./db/states.ts";
import { stamped } from "./op/stamp.ts";
import type { NamedRow, Tables } from "./db/tables.ts";
import { Tabs } from "./db/tabs.ts";
import { exported, type ImportResult, imported, linesOf } from "./sync/transfer.ts";
import { Views, type Update } from "./db/views.ts";

export type { Change } from "./op/change.ts";
export { newRec } from "./op/clock.ts";
export type { HistoryEntry } from "./op/history.ts";
export type { RejectedOp } from "./db/rejected.ts";
export { OpTrouble } from "./op/stamp.ts";
export type { ImportResult } from "./sync/transfer.ts";

export interface Means {
  readonly now: () => number;
  readonly random?: () => string; // draws ids
  readonly label?: string; // what this phone's device record is called at first
}

export class BookLog {
  readonly tables: Promise<Tables>;
  readonly tabs = new Tabs();
  readonly #means: Required<Means>;
  readonly #views: Views;
  readonly #heard = new Set<(recs: ReadonlySet<string>) => void>();
  readonly #heardSaved = new Set<(ops: readonly string[]) => void>();
  readonly #db: Promise<Database | Tables>;
  #ready: Promise<void> | undefined;
  #me = "";
  #device = "";
  #book = "";
  #clockOff = 0; // ms that this phone's clock is ahead

  constructor(db: Promise<Database | Tables>, means: Means) {
    this.#means = { random: newRec, label: "", ...means };
    this.tables = db.then((open) => (open instanceof Database ? new IdbTables(open) : open));
    this.#db = db;
    this.#views = new Views(this.tables);
    this.tabs.on((message) => this.#hear(message));
    this.ready.catch(() => undefined); // a refusal shows at the first save
  }

  // ready is when this phone's own things are read; after a refusal it is tried again.
  get ready(): Promise<void> {
    this.#ready ??= this.#start().catch((error: unknown) => {
      this.#ready = undefined;
      throw error;
    });
    return this.#ready;
  }

  get book(): string {
    return this.#book;
  }

  // me is the record of the person who uses this phone, "" when nobody was named.
  get me(): string {
    return this.#me;
  }

  // device is this phone's own record.
  get device(): string {
    return this.#device;
  }

  // usualLabel is what this phone's own record is called at first.
  get usualLabel(): string {
    return this.#means.label;
  }

  async setMe(rec: string): Promise<void> {
    await this.ready;
    await (await this.tables).write(["meta"], async (tx) => tx.put("meta", [{ name: "me", value: rec }]));
    this.#me = rec;
    this.tabs.tell({ me: rec });
  }

  // takeDevice makes this phone another device: one that was shut out comes back as somebody new.
  async takeDevice(rec: string): Promise<void> {
    await this.ready;
    await noteDevice(await this.tables, rec);
    this.#device = rec;
    this.tabs.tell({ device: rec });
  }

  // all lists the records of a kind that are neither removed nor erased.
  async all(kind: string): Promise<readonly RecordState[]> {
    const [states, now] = [await this.#views.all(kind), this.now];
    const isWrong = ({ newest }: RecordState): boolean => isAhead(newest, now);
    return states.some(isWrong) ? states.map((state) => (isWrong(state) ? { ...state, newest: 0 } : state)) : states;
  }

  // now is the latest time that it may be: by this phone's clock, or by the server's. A server's clock can be as wrong as a
  // phone's, and one that lags must not make strange what is not.
  get now(): number {
    const now = this.#means.now();
    return Math.max(now, now - this.#clockOff);
  }

  // clockOff is how many ms this phone's clock was ahead of the server's when they last met.
  get clockOff(): number {
    return this.#clockOff;
  }

  // clockIsOff hears how much this phone's clock is ahead of the server's, and remembers it for when no server is near.
  async clockIsOff(ms: number): Promise<void> {
    if (ms === this.#clockOff) return;
    this.#clockOff = ms;
    await (await this.tables).write(["meta"], async (tx) => tx.put("meta", [{ name: "clockOff", value: ms }]));
    this.refresh(); // what counted as newest may not any more
  }

  // everything lists all records, removed and erased ones too.
  async everything(): Promise<readonly RecordState[]> {
    return (await this.tables).read(["records"], everything);
  }

  async get(rec: string): Promise<RecordState | undefined> {
    return (await this.tables).read(["ops"], (tx) => stateOf(tx, rec));
  }

  // save writes changes, and a draft with them, as one: all or nothing.
  save(changes: readonly Change[], draft?: NamedRow): Promise<readonly RecordState[]> {
    return this.#write(changes.map(edit), draft);
  }

  // remove hides records as one: all of them or none.
  async remove(...shown: readonly RecordState[]): Promise<void> {
    if (shown.length > 0) await this.#write(shown.map(removal));
  }

  async restore(shown: RecordState): Promise<void> {
    await this.#write([restoration(shown)]);
  }

  async confirmRemoval(shown: RecordState): Promise<void> {
    await this.#write([confirmation(shown)]);
  }

  async choose(shown: RecordState, field: string, value: Json): Promise<void> {
    await this.#write([choice(shown, field, value)]);
  }

  async erase(rec: string, kind: string): Promise<void> {
    await this.eraseAll([{ rec, kind }]);
  }

  // eraseAll erases records for good, and writes what others lose by it, as one: all or nothing.
  async eraseAll(gone: readonly Pick<RecordState, "rec" | "kind">[], changes: readonly Change[] = []): Promise<void> {
    await this.#write([...changes.map(edit), ...gone.map(({ rec, kind }) => erasure(rec, kind))]);
  }

  // history lists what was done to a record, newest first.
  async history(rec: string): Promise<readonly HistoryEntry[]> {
    const [rows] = await (await this.tables).read(["ops"], (tx) => tx.opsOf([rec]));
    return historyOf(rows ?? []);
  }

  clashing(): Promise<readonly RecordState[]> {
    return this.#views.clashing();
  }

  // rejected lists what a server or this phone did not take, until somebody has read it.
  async rejected(): Promise<readonly RejectedOp[]> {
    return listRejected(await this.tables);
  }

  async dismissRejected(id: string): Promise<void> {
    await dismiss(await this.tables, id);
    this.#tell(new Set(), []);
  }

  // takeBook makes another book the one that opens when the page is loaded again. While this one is empty, drafts and
  // settings come along; otherwise each book keeps its own, and the phone counts as the same device.
  async takeBook(book: string): Promise<void> {
    const db = await this.#db;
    if (db instanceof Database) {
      const empty = await this.isEmpty();
      await copyOwn(db, book, empty);
      if (empty && !(await this.isEmpty())) return; // something was saved just now: a person has to decide
    }
    openNext(book);
  }

  // isEmpty tells whether nothing was ever written on this phone.
  async isEmpty(): Promise<boolean> {
    return (await (await this.tables).read(["ops"], (tx) => tx.count("ops"))) === 0;
  }

  exportFile(): Promise<File> {
    return this.tables.then((tables) => exported(tables, this.#book, this.#means.now()));
  }

  async exportText(): Promise<string> {
    return (await this.exportFile()).text();
  }

  importText(text: string): Promise<ImportResult> {
    return this.#import(text.split("\n"));
  }

  async importFile(file: Blob): Promise<ImportResult> {
    return this.#import(linesOf(new Uint8Array(await file.arrayBuffer())));
  }

  async #import(lines: readonly (string | undefined)[]): Promise<ImportResult> {
    await this.ready;
    const first = await this.isEmpty();
    const result = await imported(await this.tables, this.#book, lines, (taken) => this.changed([taken], taken.stored));
    if (first && result.kind === "read" && result.stored.length > 0) await this.noteCopied(); // the file is a copy of all there is
    return result;
  }

  // bringBook imports a file. On a phone on which nothing was ever written the file's book becomes the open one at the next start
  // of the page: there is nothing that it could be mixed up with, and nobody has to choose.
  async bringBook(file: Blob): Promise<ImportResult & { readonly opens?: boolean }> {
    const result = await this.importFile(file);
    if (result.kind !== "other_book" || !((await this.#db) instanceof Database) || !(await this.isEmpty())) return result;
    const tables = new IdbTables(named(result.book));
    const brought = await imported(tables, result.book, linesOf(new Uint8Array(await file.arrayBuffer())), async () => undefined);
    await noteCopied(tables, this.#means.now());
    await this.takeBook(result.book);
    return { ...brought, opens: true };
  }

  // noteCopied remembers that a copy of all that is here left the phone now.
  async noteCopied(): Promise<void> {
    await noteCopied(await this.tables, this.#means.now());
  }

  // uncopiedSince tells since when, in ms since 1970, what is written is on this phone alone as far as it knows: since the last
  // copy, or since the first entry. Undefined: nothing is here.
  async uncopiedSince(): Promise<{ readonly at: number; readonly never: boolean } | undefined> {
    return copiedAt(await this.tables);
  }

  // on hears which records changed: after a save, a pull, or another tab's. The result ends it.
  on(hear: (recs: ReadonlySet<string>) => void): () => void {
    this.#heard.add(hear);
    return () => this.#heard.delete(hear);
  }

  // onSaved hears of new ops that no server has yet, here or in another tab.
  onSaved(hear: (ops: readonly string[]) => void): () => void {
    this.#heardSaved.add(hear);
    return () => this.#heardSaved.delete(hear);
  }

  // changed brings everybody up to date; the sync tells it of what it has fetched.
  async changed(updates: readonly Update[], saved: readonly string[] = []): Promise<void> {
    const recs = new Set(updates.flatMap(({ states }) => states.map((state) => state.rec)));
    if (recs.size === 0 && saved.length === 0) return;
    this.tabs.tell({ recs: [...recs], saved });
    for (const each of updates) await this.#views.take(each);
    this.#tell(recs, saved);
  }

  // refresh has everything read anew, after a time in which this tab may have missed what others told.
  refresh(): void {
    this.#views.forget();
    this.#tell(new Set(), []);
  }

  #tell(recs: ReadonlySet<string>, saved: readonly string[]): void {
    for (const hear of this.#heard) hear(recs);
    if (saved.length > 0) for (const hear of this.#heardSaved) hear(saved);
  }

  async #start(): Promise<void> {
    const tables = await this.tables;
    this.#book = tables.name.replace(/^rimside-/, "");
    if ((await this.#db) instanceof Database) this.tabs.join(`${tables.name}-log`);
    await tables.write(["meta"], async (tx) => {
      const [me, device, off] = await tx.get("meta", ["me", "device", "clockOff"]);
      this.#clockOff = typeof off?.value === "number" ? off.value : 0;
      this.#me = typeof me?.value === "string" ? me.value : "";
      this.#device = typeof device?.value === "string" ? device.value : this.#means.random();
      if (device === undefined) tx.put("meta", [{ name: "device", value: this.#device }]);
    });
  }

  #hear(message: unknown): void {
    const { recs, saved, me, device } = message as { recs?: readonly string[]; saved?: readonly string[]; me?: string; device?: string };
    if (device !== undefined) this.#device = device;
    if (me !== undefined) this.#me = me;
    if (recs === undefined) return;
    const hear = (): void => this.#tell(new Set(recs), saved ?? []);
    void this.#views.refresh(recs).catch(() => this.#views.forget()).then(hear);
  }

  async #write(intents: readonly Intent[], draft?: NamedRow): Promise<readonly RecordState[]> {
    await this.ready;
    const tables = await this.tables;
    const now = this.#means.now();
    const taken = await tables.write([...receiveStores, "drafts"], async (tx) => {
      if (draft !== undefined) tx.put("drafts", [{ name: draft.name, value: draft.value, at: now }]);
      return receive(tx, await stamped(tx, intents, { ...this.#means, now, author: this.#me, device: this.#device }));
    });
    await this.changed([taken], taken.stored);
    const states = new Map(taken.states.map((state) => [state.rec, state]));
    return intents.flatMap(({ rec }) => states.get(rec) ?? []);
  }
}
