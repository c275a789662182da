// The ops of a small book, held in memory while much is fetched: asking the database for each op that arrives, and for
// the others of its record, would take nearly as long as writing.

import type { StoredOp } from "../op/op.ts";
import { edition } from "./states.ts";
import type { Tables, Tx } from "./tables.ts";

// Lookup finds ops that are stored already.
export type Lookup = Pick<Tx, "opsOf"> & { readonly ops: (ids: readonly string[]) => Promise<readonly (StoredOp | undefined)[]> };

export function lookIn(tx: Tx): Lookup {
  return { ops: (ids) => tx.get("ops", ids), opsOf: (recs) => tx.opsOf(recs) };
}

const most = 2000; // ops that are read at once; a larger book is asked op by op

export class Held implements Lookup {
  #version: number;
  readonly #byId = new Map<string, StoredOp>();
  readonly #byRec = new Map<string, Map<string, StoredOp>>();

  private constructor(rows: readonly StoredOp[], version: number) {
    this.#version = version;
    this.#put(rows);
  }

  // read gives undefined for a book that is too large.
  static read(tables: Tables): Promise<Held | undefined> {
    return tables.read(["ops", "meta"], async (tx) => {
      if ((await tx.count("ops")) > most) return undefined;
      return new Held(await tx.page("ops", "", most), (await edition(tx)).version);
    });
  }

  // isCurrent tells whether this is what the database holds: another tab may have written, or a transaction failed.
  isCurrent(version: number): boolean {
    return version === this.#version;
  }

  // take follows a write.
  take(rows: readonly StoredOp[], version: number): void {
    this.#version = version;
    this.#put(rows);
  }

  async ops(ids: readonly string[]): Promise<readonly (StoredOp | undefined)[]> {
    return ids.map((id) => this.#byId.get(id));
  }

  async opsOf(recs: readonly string[]): Promise<readonly (readonly StoredOp[])[]> {
    return recs.map((rec) => [...(this.#byRec.get(rec)?.values() ?? [])]);
  }

  #put(rows: readonly StoredOp[]): void {
    for (const row of rows) {
      this.#byId.set(row.id, row);
      const others = this.#byRec.get(row.rec);
      if (others === undefined) this.#byRec.set(row.rec, new Map([[row.id, row]]));
      else others.set(row.id, row);
    }
  }
}
