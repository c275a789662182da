import type { Json } from "../../log/op/json.ts";
import { merge, type RecordState } from "../../log/op/merge.ts";
import type { Op } from "../../log/op/op.ts";
import { equal, test } from "../../ui/testing.ts";
import { bonds, kindOf, type Role, roles } from "./bonds.ts";
import { commit, type Commit, type States } from "./commit.ts";
import { emptyDraft, type PressureDraft } from "../pressure/draft.ts";
import { read } from "../pressure/request.ts";
import { restated } from "../pressure/restate.ts";
import { linksOf, take } from "./take.ts";
import { noTables } from "../pressure/kept.ts";
import { kinds } from "../value/kinds.ts";

let drawn = 0;
const newRec = (): string => (++drawn).toString(16).padStart(32, "0");

// Shelf is a book in miniature: it makes ops of changes and merges them.
class Shelf {
  readonly ops = new Map<string, Op[]>();

  put(rec: string, kind: string, set: Record<string, Json>, bases: Record<string, string[]> = {}): void {
    const op: Op = { id: newRec(), at: 1790000000000 + ++drawn, kind, rec, set, bases };
    this.ops.set(rec, [...(this.ops.get(rec) ?? []), op]);
  }

  take(commit: Commit): PressureDraft {
    for (const { rec, kind, set, shown } of commit.changes) {
      const bases = Object.fromEntries(Object.keys(set).flatMap((name) => {
        const field = shown?.fields[name];
        return field === undefined ? [] : [[name, [...field.shown.ops]] as [string, string[]]];
      }));
      this.put(rec, kind, set, bases);
    }
    return commit.draft;
  }

  state(rec: string): RecordState | undefined {
    const ops = this.ops.get(rec);
    return ops === undefined ? undefined : merge(rec, ops);
  }

  states(draft: PressureDraft): States {
    return Object.fromEntries(roles.flatMap((role) => {
      const state = this.state(draft.links[role] ?? "");
      return state === undefined ? [] : [[role, state] as const];
    }));
  }

  save(draft: PressureDraft): PressureDraft {
    return this.take(commit(draft, read(draft, draft.unit, noTables), this.states(draft), 5, newRec));
  }
}

const first: PressureDraft = {
  ...emptyDraft, started: true, bike: "Ochre",
  texts: { rider: "72", "front.label": "40", "front.measured": "41,5", "front.inner": "25", "front.tyreMax": "5" },
  picks: { "front.profile": "hooked", "front.setup": "tubeless" },
};

const value = (shelf: Shelf, draft: PressureDraft, role: Role, field: string): Json | undefined =>
  shelf.state(draft.links[role] ?? "")?.fields[field]?.shown.value;

test("every bond is a field of the book's list", () => {
  const list = kinds;
  equal(bonds.filter((bond) => !(bond.field in (list[kindOf(bond.role)]?.fields ?? {}))).map((bond) => bond.key), []);
});

test("the first answers become a person, a bike, two wheels and two tyres", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  equal(Object.keys(draft.links).sort(), ["bike", "front.tyre", "front.wheel", "person", "rear.tyre", "rear.wheel"]);
  equal([value(shelf, draft, "person", "mass_kg"), value(shelf, draft, "front.tyre", "measured_mm"), value(shelf, draft, "rear.tyre", "measured_mm"),
    value(shelf, draft, "front.tyre", "max_kpa"), value(shelf, draft, "front.tyre", "measured_at"), value(shelf, draft, "bike", "name")],
  [72, 41.5, 41.5, 500, 5, "Ochre"]);
  equal(value(shelf, draft, "bike", "front"), draft.links["front.wheel"]);
  equal(value(shelf, draft, "rear.wheel", "tyre"), draft.links["rear.tyre"]);
  equal(value(shelf, draft, "bike", "firmness"), undefined, "what was left as it is, is not written");
});

test("saving again writes nothing, and rewriting the same value neither", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  const again = (texts: Record<string, string>): number =>
    commit({ ...draft, texts: { ...draft.texts, ...texts } }, read({ ...draft, texts: { ...draft.texts, ...texts } }, "bar", noTables), shelf.states(draft), 6, newRec).changes.length;
  equal([again({}), again({ "front.measured": "41.5" }), again({ "front.measured": "41.50 mm" }), again({ rider: "" }), again({ rider: "heavy" })], [0, 0, 0, 0, 0]);
});

test("one edit is one field, for both wheels while they are the same", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  const edited = { ...draft, texts: { ...draft.texts, "front.measured": "42" } };
  const { changes } = commit(edited, read(edited, "bar", noTables), shelf.states(draft), 7, newRec);
  equal(changes.map(({ kind, set }) => [kind, set]), [["tyre", { measured_mm: 42, measured_at: 7 }], ["tyre", { measured_mm: 42, measured_at: 7 }]]);
  shelf.save(edited);
  equal(shelf.state(draft.links["front.tyre"] ?? "")?.clashes, []);
});

test("a text that was emptied takes the value back", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  const emptied = shelf.save({ ...draft, texts: { ...draft.texts, "front.measured": " " } });
  equal(value(shelf, emptied, "front.tyre", "measured_mm"), null);
});

test("what another phone changed appears, and only on its wheel", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  const rear = shelf.state(draft.links["rear.tyre"] ?? "");
  shelf.put(rear?.rec ?? "", "tyre", { measured_mm: 44 }, { measured_mm: [...(rear?.fields["measured_mm"]?.shown.ops ?? [])] });
  const taken = take(draft, shelf.states(draft));
  equal([taken.rearSame, taken.texts["front.measured"], taken.texts["rear.measured"], taken.texts["rear.label"]], [false, "41,5", "44", "40"]);
  equal(commit(taken, read(taken, "bar", noTables), shelf.states(taken), 9, newRec).changes, [], "taking is not editing");
});

test("what changed on the front alone does not pass for an edit of the rear", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  const front = shelf.state(draft.links["front.tyre"] ?? "");
  shelf.put(front?.rec ?? "", "tyre", { measured_mm: 44 }, { measured_mm: [...(front?.fields["measured_mm"]?.shown.ops ?? [])] });
  const taken = take(draft, shelf.states(draft));
  equal([taken.rearSame, taken.texts["front.measured"], taken.texts["rear.measured"]], [false, "44", "41,5"]);
  equal(commit(taken, read(taken, "bar", noTables), shelf.states(taken), 9, newRec).changes, []);
  const rear = shelf.state(draft.links["rear.tyre"] ?? "");
  shelf.put(rear?.rec ?? "", "tyre", { measured_mm: 44 }, { measured_mm: [...(rear?.fields["measured_mm"]?.shown.ops ?? [])] });
  equal(take(taken, shelf.states(taken)).rearSame, true, "the same again");
  const typing = take(draft, shelf.states(draft), undefined, "front.label");
  equal([typing.rearSame, typing.texts["front.measured"]], [true, "41,5"], "not while one of both is typed in");
});

test("an edit beside an edit clashes; nothing is overwritten unseen", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  const rec = draft.links["person"] ?? "";
  shelf.put(rec, "person", { mass_kg: 75 }, { mass_kg: [...(shelf.state(rec)?.fields["mass_kg"]?.shown.ops ?? [])] });
  const edited = { ...draft, texts: { ...draft.texts, rider: "70" } };
  equal(take(edited, shelf.states(edited)).texts["rider"], "70", "what is typed here stays");
  shelf.save(edited);
  equal([shelf.state(rec)?.clashes, value(shelf, draft, "person", "mass_kg")], [["mass_kg"], 70]);
});

test("a change of unit is no edit", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  const psi = restated(draft, "psi");
  equal([psi.texts["front.tyreMax"], commit(psi, read(psi, "psi", noTables), shelf.states(psi), 9, newRec).changes], ["72.5", []]);
});

test("a bike from the book opens with all it has", () => {
  const shelf = new Shelf();
  const draft = shelf.save({ ...first, rearSame: false, texts: { ...first.texts, "rear.label": "45", "rear.inner": "25", pump: "60" } });
  const bike = shelf.state(draft.links["bike"] ?? "") as RecordState;
  const opened: PressureDraft = { ...emptyDraft, links: linksOf(bike, (rec) => shelf.state(rec)) };
  equal(Object.entries(opened.links).sort(), Object.entries(draft.links).sort());
  const taken = take(opened, shelf.states(opened));
  equal([taken.bike, taken.texts["rider"], taken.texts["front.label"], taken.texts["rear.label"], taken.texts["front.tyreMax"], taken.texts["pump"], taken.rearSame],
    ["Ochre", "72", "40", "45", "5", "60", false]);
  equal(commit(taken, read(taken, "bar", noTables), shelf.states(taken), 9, newRec).changes, []);
});

test("an erased person leaves the screen, and a new edit makes a new one", () => {
  const shelf = new Shelf();
  const draft = shelf.save(first);
  shelf.put(draft.links["person"] ?? "", "erase", { kind: "person" });
  const taken = take(draft, shelf.states(draft));
  equal([taken.texts["rider"], taken.links["person"], JSON.stringify(taken).includes("72")], ["", undefined, false]);
  const typed = shelf.save({ ...taken, texts: { ...taken.texts, rider: "80" } });
  equal([value(shelf, typed, "person", "mass_kg"), typed.links["person"] === draft.links["person"]], [80, false]);
});
