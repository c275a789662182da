// References in lists: a wheel is told by its name, and by its id where the name does not tell it from others.

import { isId } from "../../../log/op/op.ts";
import { type RecordState, valueOf } from "../../../log/op/merge.ts";
import { w } from "../../../words/index.ts";
import { kindWords } from "../../value/kind_words.ts";
import { listed } from "./lists.ts";

export type Named = { readonly rec: string } | { readonly fault: string };

export class Names {
  readonly #byRec: ReadonlyMap<string, RecordState>;
  readonly #byName = new Map<string, string[]>(); // "kind name" -> records

  constructor(states: readonly RecordState[]) {
    this.#byRec = new Map(states.map((state) => [state.rec, state]));
    for (const state of states) {
      const name = nameOf(state);
      if (name === "" || !listed(state)) continue;
      const key = keyOf(state.kind, name);
      const others = this.#byName.get(key);
      if (others === undefined) this.#byName.set(key, [state.rec]);
      else others.push(state.rec);
    }
  }

  find(rec: string): RecordState | undefined {
    return this.#byRec.get(rec);
  }

  // read finds whom a cell means; capitals do not count.
  read(cell: string, kind: string): Named {
    const text = cell.trim();
    const id = text.toLowerCase();
    if (isId(id)) {
      const state = this.#byRec.get(id);
      return state?.kind === kind && listed(state) ? { rec: id } : { fault: w("listFault.noId", { kind: kindWords(kind) }) };
    }
    const found = this.#byName.get(keyOf(kind, text)) ?? [];
    const [rec] = found;
    if (rec === undefined) return { fault: w("listFault.noName", { kind: kindWords(kind), name: short(text) }) };
    return found.length === 1 ? { rec } : { fault: w("listFault.manyNames", { n: found.length, name: short(text) }) };
  }

  // write is the name where it is read back as the same record.
  write(rec: string, kind: string): string {
    const name = nameOf(this.#byRec.get(rec));
    const back = name === "" ? undefined : this.read(name, kind);
    return back !== undefined && "rec" in back && back.rec === rec ? name : rec;
  }
}

function nameOf(state: RecordState | undefined): string {
  const name = valueOf(state, "name");
  return typeof name === "string" ? name.trim() : "";
}

function keyOf(kind: string, name: string): string {
  return `${kind} ${name.toLowerCase()}`;
}

const cut = 40; // characters of a cell that are enough to find it by

export function short(text: string): string {
  const plain = text.replace(/[\s\0]+/g, " ");
  return plain.length <= cut ? plain : `${plain.slice(0, cut)}…`;
}
