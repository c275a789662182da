// What screens look at again and again is read once and kept up to date, record by record.

import type { RecordState } from "../op/merge.ts";
import { isUntidy, latest, edition, statesFor, stateStores, tidy } from "./states.ts";
import type { Tables } from "./tables.ts";

interface Known {
  readonly state: RecordState;
  readonly version: number; // of the write that the state comes from, or of a later one
}

interface View {
  readonly minds: (state: RecordState) => boolean; // to know of it, if only that it does not belong
  readonly belongs: (state: RecordState) => boolean;
  readonly known: Promise<Map<string, Known>>;
  list: readonly RecordState[] | undefined;
}

// Update is what records have become by the write of that version.
export interface Update {
  readonly states: readonly RecordState[];
  readonly version: number;
}

export class Views {
  readonly #tables: Promise<Tables>;
  readonly #byKind = new Map<string, View>();
  #clashing: View | undefined;

  constructor(tables: Promise<Tables>) {
    this.#tables = tables;
  }

  // all lists the records of a kind that are neither removed nor erased.
  all(kind: string): Promise<readonly RecordState[]> {
    let view = this.#byKind.get(kind);
    if (view === undefined) {
      view = opened((state) => state.kind === kind, (state) => state.kind === kind && !state.deleted && !state.erased, this.#ofKind(kind));
      this.#byKind.set(kind, view);
      view.known.catch(() => this.#byKind.delete(kind)); // asked again, it may answer
    }
    return listed(view);
  }

  clashing(): Promise<readonly RecordState[]> {
    if (this.#clashing === undefined) {
      this.#clashing = opened((state) => state.clashes.length > 0, (state) => state.clashes.length > 0, this.#allClashing());
      this.#clashing.known.catch(() => (this.#clashing = undefined));
    }
    return listed(this.#clashing);
  }

  // take brings lists up to date with what was written. What is older than what they have does not count: the writes of
  // several tabs may become known in another order.
  async take({ states, version }: Update): Promise<void> {
    for (const view of this.#views()) {
      const known = await view.known;
      for (const state of states) {
        const has = known.get(state.rec);
        if (has === undefined ? !view.minds(state) : has.version >= version) continue;
        known.set(state.rec, { state, version });
        view.list = undefined;
      }
    }
  }

  // refresh reads records again that another tab has changed.
  async refresh(recs: readonly string[]): Promise<void> {
    if (this.#views().length === 0 || recs.length === 0) return;
    await this.take(await (await this.#tables).read(["ops", "meta"], async (tx) => {
      const [found, { version }] = [await statesFor(tx, recs), await edition(tx)];
      return { states: found.flatMap((state) => state ?? []), version };
    }));
  }

  // forget has everything read anew when it is next asked for.
  forget(): void {
    this.#byKind.clear();
    this.#clashing = undefined;
  }

  #views(): View[] {
    return [...this.#byKind.values(), ...(this.#clashing === undefined ? [] : [this.#clashing])];
  }

  async #ofKind(kind: string): Promise<Update> {
    const tables = await this.#tables;
    const { rows, version } = await tables.read(stateStores, async (tx) => ({ rows: await tx.statesOf(kind), ...(await edition(tx)) }));
    if (isUntidy(rows)) void tidy(tables, kind).catch(() => undefined); // it is only slower so
    return { states: latest(rows), version };
  }

  async #allClashing(): Promise<Update> {
    return (await this.#tables).read(["ops", "meta"], async (tx) => {
      const { clashing, version } = await edition(tx);
      return { states: (await statesFor(tx, clashing)).flatMap((state) => state ?? []), version };
    });
  }
}

function opened(minds: View["minds"], belongs: View["belongs"], read: Promise<Update>): View {
  const known = read.then(({ states, version }) => new Map(states.map((state) => [state.rec, { state, version }])));
  return { minds, belongs, known, list: undefined };
}

async function listed(view: View): Promise<readonly RecordState[]> {
  const known = await view.known;
  return (view.list ??= [...known.values()].map(({ state }) => state).filter(view.belongs));
}
