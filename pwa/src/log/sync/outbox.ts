// The ops that the server's log has not got. Finding them is a walk along two long lists, so it is done once, and then
// kept up to date.

import { logStores, unsent } from "../db/logs.ts";
import type { Tables } from "../db/tables.ts";

interface List {
  readonly log: string;
  readonly ids: Set<string>;
  readonly walked: Promise<void>;
}

export class Outbox {
  readonly #tables: Promise<Tables>;
  #list: List | undefined;

  constructor(tables: Promise<Tables>) {
    this.#tables = tables;
  }

  // of lists what is to be sent to a log; "" stands for one that has nothing.
  async of(log: string): Promise<ReadonlySet<string>> {
    if (this.#list?.log !== log) {
      const ids = new Set<string>();
      this.#list = { log, ids, walked: this.#walk(log, ids) };
    }
    const list = this.#list;
    try {
      await list.walked;
    } catch (error) {
      if (this.#list === list) this.#list = undefined;
      throw error;
    }
    return list.ids;
  }

  // size is the length of the list at hand, undefined when there is none.
  get size(): number | undefined {
    return this.#list?.ids.size;
  }

  add(ids: readonly string[]): void {
    for (const id of ids) this.#list?.ids.add(id);
  }

  done(ids: readonly string[]): void {
    for (const id of ids) this.#list?.ids.delete(id);
  }

  forget(): void {
    this.#list = undefined;
  }

  async #walk(log: string, into: Set<string>): Promise<void> {
    const found = await (await this.#tables).read(["ops", ...logStores], (tx) => unsent(tx, log));
    for (const id of found) into.add(id);
  }
}
