// Lives through a history of many phones in one page, each with the real log and sync, against real servers. The history
// and the verdict come from outside: see store/oplog/history and pwa/journey.

import { BookLog } from "../book_log.ts";
import { Database } from "../db/idb.ts";
import { IdbTables } from "../db/idb_tables.ts";
import { MemoryTables } from "../db/memory.ts";
import { type FieldState, type RecordState, valueOf } from "../op/merge.ts";
import { newRec } from "../op/clock.ts";
import { Sync } from "./sync.ts";
import type { Tables } from "../db/tables.ts";

interface Step {
  readonly do: "edit" | "decide" | "remove" | "restore" | "erase" | "meet";
  readonly now: number;
  readonly phone: number;
  readonly server: number;
  readonly rec: string;
  readonly set?: Readonly<Record<string, string>>;
  readonly lost?: number;
}

const lost = "the answer got lost";

class Phone {
  readonly log: BookLog;
  readonly sync: Sync;
  readonly #tables: Tables;
  now = 0;
  server = 0;
  #lose = 0;
  #asked = 0;

  constructor(book: string, off: number, store: "memory" | "idb") {
    this.#tables = named(`rimside-${book}`, store === "idb" ? new IdbTables(new Database(`rimside-live-${newRec()}`)) : new MemoryTables(""));
    const now = (): number => this.now + off;
    this.log = new BookLog(Promise.resolve(this.#tables), { now });
    this.sync = new Sync(this.log, { now, fetch: (path, init) => this.#fetch(path, init) });
  }

  // The server does its work; then its answer may get lost on the way back.
  async #fetch(path: string, init: RequestInit): Promise<Response> {
    const answer = await fetch(`/s${this.server}/${path}`, init);
    await answer.clone().arrayBuffer();
    if (++this.#asked === this.#lose) throw new TypeError(lost);
    return answer;
  }

  async meet(server: number, lose: number): Promise<string> {
    this.server = server;
    this.#lose = lose;
    this.#asked = 0;
    const outcome = await this.sync.round();
    const gotLost = lose > 0 && this.#asked >= lose;
    return outcome === "met" || (gotLost && outcome === "unreachable") ? "" : `met server ${server}: ${outcome}`;
  }

  texts(): Promise<string[]> {
    return this.#tables.read(["ops"], async (tx) => (await tx.page("ops", "", 1e6)).map((row) => row.bytes));
  }
}

function named(name: string, tables: Tables): Tables {
  return { name, read: (stores, work) => tables.read(stores, work), write: (stores, work) => tables.write(stores, work) };
}

let phones: readonly Phone[] = [];

const kind = "tyre";

// step does one thing, and says what is wrong with it afterwards, or "".
async function step({ do: what, now, phone: number, server, rec, set, lost: lose }: Step): Promise<string> {
  const phone = phones[number];
  if (phone === undefined) return `no phone ${number}`;
  phone.now = now;
  if (what === "meet") return phone.meet(server, lose ?? 0);
  const shown = await phone.log.get(rec);
  if (what === "edit") return edit(phone, rec, shown, set ?? {});
  if (shown === undefined || shown.erased) return "";
  if (what === "decide") await decide(phone, shown);
  if (what === "remove") await phone.log.confirmRemoval(shown);
  if (what === "restore" && shown.deleted) await phone.log.restore(shown);
  if (what === "erase") await phone.log.erase(rec, kind);
  return "";
}

async function edit(phone: Phone, rec: string, shown: RecordState | undefined, set: Readonly<Record<string, string>>): Promise<string> {
  const [after] = await phone.log.save([{ rec, kind, set, ...(shown && { shown }) }]);
  const wrong = Object.entries(set).find(([name, value]) => after?.erased !== true && valueOf(after, name) !== value);
  return wrong === undefined ? "" : `the author typed ${wrong[1]} and sees ${String(valueOf(after, wrong[0]))}`;
}

async function decide(phone: Phone, shown: RecordState): Promise<void> {
  for (const name of shown.clashes) {
    const field = Object.hasOwn(shown.fields, name) ? shown.fields[name] : undefined;
    if (field !== undefined) await phone.log.choose(shown, name, field.shown.value);
  }
}

// picture writes a state as the server's program does, so that the two can be compared.
function picture(state: RecordState | undefined): string {
  if (state === undefined) return "nothing";
  const quoted = (list: readonly string[]): string => `[${list.map((each) => JSON.stringify(each)).join(" ")}]`;
  const field = ([name, { shown, others }]: [string, FieldState]): string => ` ${name}=${[shown, ...others].map((each) => JSON.stringify(each.value)).join("|")}`;
  const fields = Object.entries(state.fields).sort(([a], [b]) => (a < b ? -1 : 1)).map(field).join("");
  return `${state.kind} erased=${state.erased} deleted=${state.deleted} newest=${state.newest} clashes=${quoted(state.clashes)} unseen=${quoted(state.unseen)}${fields}`;
}

const live = {
  begin(book: string, clocks: readonly number[], store: "memory" | "idb"): void {
    phones = clocks.map((off) => new Phone(book, off, store));
  },

  // steps does several and stops at the first that is wrong.
  async steps(list: readonly Step[]): Promise<string> {
    for (const each of list) {
      const wrong = await step(each);
      if (wrong !== "") return `${JSON.stringify(each)}: ${wrong}`;
    }
    return "";
  },

  // end has everybody meet everybody, twice as news needs two turns to reach all, then tells what each phone shows and holds.
  async end(servers: number, recs: readonly string[]): Promise<{ wrong: string; pictures: string[][]; texts: string[][] }> {
    let wrong = "";
    for (let round = 0; round < 2; round++) {
      for (let server = 0; server < servers; server++) {
        for (const phone of phones) wrong ||= await phone.meet(server, 0);
      }
    }
    const pictures = await Promise.all(phones.map((phone) => Promise.all(recs.map(async (rec) => picture(await phone.log.get(rec))))));
    return { wrong, pictures, texts: await Promise.all(phones.map((phone) => phone.texts())) };
  },

  // photo has a phone keep a picture of a size that no packing makes smaller.
  async photo(phone: number, size: number): Promise<string> {
    const bytes = new Uint8Array(size);
    for (let from = 0; from < size; from += 65536) crypto.getRandomValues(bytes.subarray(from, from + 65536));
    bytes.set([0xff, 0xd8, 0xff, 0xe0]); // how a JPEG begins
    return (await phones[phone]?.sync.putPhoto(new Blob([bytes], { type: "image/jpeg" }))) ?? "";
  },

  async drop(): Promise<void> {
    for (const { name = "" } of await indexedDB.databases()) {
      if (name.startsWith("rimside-live-")) indexedDB.deleteDatabase(name);
    }
  },
};

Object.assign(globalThis, { live });
