// Plays a random history: phones with wrong clocks, servers that never talk, answers that get lost, a server that is
// wiped, another put back to an old copy; edits, choices, removals and erasing. Then everybody meets everybody, and what
// must hold is looked at. A phone can be broken on purpose, to see that it is found out.

import { BookLog, newRec } from "../book_log.ts";
import { FakeServer } from "./fake_server.test.ts";
import { canonical, type Json } from "../op/json.ts";
import { chance, pick, t0 } from "../db/kit.test.ts";
import { MemoryTables } from "../db/memory.ts";
import { type RecordState, valueOf } from "../op/merge.ts";
import { Sync } from "./sync.ts";
import type { Tables } from "../db/tables.ts";

export type Fetch = (path: string, init: RequestInit) => Promise<Response>;

// Breaks breaks a phone.
export interface Breaks {
  readonly tables?: (tables: Tables) => Tables;
  readonly fetch?: (fetch: Fetch, tables: Tables) => Fetch;
}

interface Phone {
  readonly log: BookLog;
  readonly sync: Sync;
  server: FakeServer;
}

const clocks = [0, -7_200_000, 10_000, 400 * 86_400_000];
const fields = ["a", "b", "c", "d"];

export class History {
  readonly #random: () => number;
  readonly #book = newRec();
  readonly #servers: readonly FakeServer[];
  readonly #phones: readonly Phone[];
  readonly #recs = Array.from({ length: 4 }, newRec);
  readonly #values = new Map<string, string[]>(); // all that was ever typed into a record
  #now = t0;
  #typed = 0;
  #anew = 0; // how often a phone exchanged everything again
  #mayAnew: boolean;
  #putBack: (() => void) | undefined;

  constructor(seed: number, breaks: Breaks = {}) {
    this.#random = chance(seed);
    this.#mayAnew = this.#random() < 0.5; // servers get wiped and put back in this one
    this.#servers = Array.from({ length: 1 + this.#upTo(3) }, () => new FakeServer());
    this.#phones = Array.from({ length: 2 + this.#upTo(3) }, (_, i) => this.#phone(clocks[i] ?? 0, breaks));
  }

  // play gives what went wrong, or "".
  async play(): Promise<string> {
    for (let step = 0; step < 40; step++) {
      this.#now += this.#upTo(120_000);
      const wrong = await this.#step();
      if (wrong !== "") return wrong;
    }
    return (await this.#meetAll()) || this.#judged();
  }

  async #step(): Promise<string> {
    const phone = pick(this.#random, this.#phones);
    const rec = pick(this.#random, this.#recs);
    const shown = await phone.log.get(rec);
    const dice = this.#random();
    if (dice < 0.4) return this.#edit(phone, rec, shown);
    if (dice < 0.75) return this.#meet(phone, pick(this.#random, this.#servers), this.#random() < 0.4 ? 1 + this.#upTo(4) : 0);
    if (dice < 0.8) return this.#harm();
    if (shown === undefined || shown.erased) return "";
    if (dice < 0.85) await phone.log.remove(shown);
    else if (dice < 0.89) await (this.#random() < 0.5 ? phone.log.restore(shown) : phone.log.confirmRemoval(shown));
    else if (dice < 0.98) await this.#choose(phone, shown);
    else await phone.log.erase(rec, "tyre");
    return "";
  }

  // The author's own edit shows right after editing.
  async #edit({ log }: Phone, rec: string, shown: RecordState | undefined): Promise<string> {
    const set: Record<string, Json> = {};
    for (let i = 1 + this.#upTo(5); i > 0; i--) set[pick(this.#random, fields)] = this.#type(rec);
    const [after] = await log.save([{ rec, kind: "tyre", set, ...(shown && { shown }) }]);
    const gone = Object.keys(set).find((name) => after?.erased !== true && valueOf(after, name) !== set[name]);
    return gone === undefined ? "" : `the author typed ${String(set[gone])} and sees ${String(valueOf(after, gone))}`;
  }

  async #choose({ log }: Phone, shown: RecordState): Promise<void> {
    for (const name of shown.clashes) {
      const field = name === "deleted" ? shown.deletion : shown.fields[name];
      if (field !== undefined) await log.choose(shown, name, pick(this.#random, [field.shown, ...field.others]).value);
    }
  }

  async #meet(phone: Phone, server: FakeServer, lost: number): Promise<string> {
    phone.server = server;
    server.failures.loseAnswer = lost;
    const outcome = await phone.sync.round();
    server.failures.loseAnswer = 0;
    return outcome === "met" || (lost > 0 && outcome === "unreachable") ? "" : `met ${outcome}`;
  }

  #harm(): string {
    if (!this.#mayAnew) return "";
    const server = pick(this.#random, this.#servers);
    if (this.#random() < 0.3) server.wipe();
    else if (this.#putBack === undefined) this.#putBack = server.copy();
    else this.#putBack();
    return "";
  }

  async #meetAll(): Promise<string> {
    for (let round = 0; round < 3; round++) {
      for (const server of this.#servers) {
        for (const phone of this.#phones) {
          const wrong = await this.#meet(phone, server, 0);
          if (wrong !== "") return wrong;
        }
      }
    }
    return "";
  }

  async #judged(): Promise<string> {
    const texts = await Promise.all(this.#phones.map(({ log }) => log.exportText()));
    const held = [...texts, ...this.#servers.map((server) => server.text())];
    const ids = held.map((text) => [...text.matchAll(/"id":"([0-9a-f]{32})"/g)].map((match) => match[1]).sort().join());
    if (new Set(ids).size !== 1) return "not every op is everywhere";
    for (const rec of this.#recs) {
      const states = await Promise.all(this.#phones.map(({ log }) => log.get(rec)));
      if (new Set(states.map((state) => canonical((state ?? null) as Json))).size !== 1) return "phones show different things";
      const left = states[0]?.erased === true && this.#values.get(rec)?.find((value) => held.some((text) => text.includes(value)));
      if (left) return `${left} was erased and is still there`;
    }
    const unsent = this.#phones.find(({ sync }) => sync.state.unsent > 0);
    if (unsent !== undefined) return `${unsent.sync.state.unsent} ops count as unsent`;
    return !this.#mayAnew && this.#anew > 0 ? "everything was exchanged anew without need" : "";
  }

  #phone(off: number, breaks: Breaks): Phone {
    const plain = new MemoryTables(`rimside-${this.#book}`);
    const counted: Tables = { name: plain.name, read: (stores, work) => plain.read(stores, work), write: (stores, work) => plain.write(stores, (tx) => work(new Proxy(tx, {
      get: (target, name) => {
        if (name === "forgetSent") this.#anew++;
        const method: unknown = Reflect.get(target, name);
        return typeof method === "function" ? method.bind(target) : method;
      },
    }))) };
    const tables = breaks.tables?.(counted) ?? counted;
    const now = (): number => this.#now + off;
    const log = new BookLog(Promise.resolve(tables), { now });
    const fetch: Fetch = (path, init) => phone.server.fetch(path, init);
    const sync = new Sync(log, { now, fetch: breaks.fetch?.(fetch, plain) ?? fetch });
    const phone: Phone = { log, sync, server: this.#servers[0] as FakeServer };
    return phone;
  }

  #type(rec: string): string {
    const value = `typed-${++this.#typed}-`;
    this.#values.set(rec, [...(this.#values.get(rec) ?? []), value]);
    return value;
  }

  #upTo(limit: number): number {
    return Math.floor(this.#random() * limit);
  }
}
