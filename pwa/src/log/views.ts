// What screens look at again and again is read once and kept up to date, record by record.

import type { RecordState } from "./merge.ts";
import { clashing } from "./receive.ts";
import type { Tables } from "./tables.ts";

interface View {
  readonly belongs: (state: RecordState) => boolean;
  readonly states: Promise<Map<string, RecordState>>;
  list: readonly RecordState[] | undefined;
}

export class Views {
  readonly #tables: Promise<Tables>;
  readonly #byKind = new Map<string, View>();
  #clashing: View | undefined;
  #refreshed: Promise<unknown> = Promise.resolve();

  constructor(tables: Promise<Tables>) {
    this.#tables = tables;
  }

  // all lists the records of a kind that are neither removed nor erased.
  all(kind: string): Promise<readonly RecordState[]> {
    let view = this.#byKind.get(kind);
    if (view === undefined) {
      view = this.#view((state) => state.kind === kind && !state.deleted && !state.erased, this.#ofKind(kind));
      this.#byKind.set(kind, view);
      view.states.catch(() => this.#byKind.delete(kind)); // asked again, it may answer
    }
    return listed(view);
  }

  clashing(): Promise<readonly RecordState[]> {
    if (this.#clashing === undefined) {
      this.#clashing = this.#view((state) => state.clashes.length > 0, this.#allClashing());
      this.#clashing.states.catch(() => (this.#clashing = undefined));
    }
    return listed(this.#clashing);
  }

  // refresh reads records again that have changed. One refresh follows the other, so the last word is the newest.
  refresh(recs: ReadonlySet<string>): Promise<void> {
    const next = this.#refreshed.then(() => this.#readAgain([...recs]));
    this.#refreshed = next.catch(() => this.forget());
    return next;
  }

  // forget has everything read anew when it is next asked for.
  forget(): void {
    this.#byKind.clear();
    this.#clashing = undefined;
  }

  #view(belongs: View["belongs"], read: Promise<readonly RecordState[]>): View {
    const states = read.then((all) => new Map(all.filter(belongs).map((state) => [state.rec, state])));
    return { belongs, states, list: undefined };
  }

  async #ofKind(kind: string): Promise<readonly RecordState[]> {
    return (await this.#tables).read(["records"], (tx) => tx.recordsOf(kind));
  }

  async #allClashing(): Promise<readonly RecordState[]> {
    return (await this.#tables).read(["records", "meta"], async (tx) => {
      const states = await tx.get("records", await clashing(tx));
      return states.flatMap((state) => state ?? []);
    });
  }

  async #readAgain(recs: readonly string[]): Promise<void> {
    const views = [...this.#byKind.values(), ...(this.#clashing === undefined ? [] : [this.#clashing])];
    if (views.length === 0) return;
    const states = await (await this.#tables).read(["records"], (tx) => tx.get("records", recs));
    for (const view of views) {
      const into = await view.states;
      states.forEach((state, i) => {
        if (state !== undefined && view.belongs(state)) into.set(state.rec, state);
        else into.delete(recs[i] as string);
      });
      view.list = undefined;
    }
  }
}

async function listed(view: View): Promise<readonly RecordState[]> {
  const states = await view.states;
  return (view.list ??= [...states.values()]);
}
