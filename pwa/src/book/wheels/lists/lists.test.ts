import type { Json } from "../../../log/op/json.ts";
import { chance, hexId, pick } from "../../../log/db/kit.test.ts";
import { merge, type RecordState, valueOf } from "../../../log/op/merge.ts";
import { equal, test } from "../../../ui/testing.ts";
import { csvRows, fileText } from "./csv.ts";
import { ana, anaPhone, benPhone, hex, merged, op } from "../../value/kit.test.ts";
import { type Column, columnsOf, type Decimal, type ListKind, listKinds, type Shelf } from "./lists.ts";
import { listText } from "./lists_write.ts";
import { type ListPlan, readList } from "./lists_read.ts";

type Writer = (shelf: Shelf, decimal: Decimal) => string;

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const nobody = { me: "", device: anaPhone };
const pieces = ["a", "Ochre", '"', '""', "'", ",", ";", "\t", "\n", "\r", "\r\n", "=", "+", "-", "@", " ", "🚲", "é", "1", ".5", "-0.1", "yes", "__proto__"];

function text(random: () => number, max: number): string {
  let made = "";
  for (let n = Math.floor(random() * 7); n > 0; n--) made += pick(random, pieces);
  return [...made].slice(0, max).join("");
}

function value(random: () => number, { spec }: Column, others: readonly RecordState[]): Json {
  const { min = 0, max = 0 } = spec;
  switch (spec.type) {
    case "text": return text(random, max);
    case "number": return pick(random, [min, max, min + (max - min) * random(), Number((min + (max - min) * random()).toFixed(1))]);
    case "flag": return random() < 0.5;
    case "choice": return pick(random, spec.options ?? []);
    case "day": return `20${10 + Math.floor(random() * 80)}-0${1 + Math.floor(random() * 9)}-1${Math.floor(random() * 10)}`;
    case "time": return Math.floor(random() * 4e12);
    case "ref": return pick(random, others.filter((each) => each.kind === spec.kinds?.[0])).rec;
    default: return null;
  }
}

function someRecord(random: () => number, kind: ListKind, others: readonly RecordState[]): RecordState {
  const rec = hexId(random);
  const set = Object.fromEntries(columnsOf(kind).filter(() => random() < 0.6).map((column) => [column.name, value(random, column, others)]));
  return merge(rec, [op(rec, kind, { ...set, name: set["name"] || "x" }, { device: anaPhone })]);
}

// life plays one round trip; it gives what was lost, "" for nothing.
function lost(seed: number, write: Writer): string {
  const random = chance(seed);
  const kind = pick(random, listKinds);
  // Two of each kind may bear one name, or none.
  const others = [...listKinds, "event"].flatMap((each) => Array.from({ length: 3 }, () => merge(hexId(random), [op("0", each, { name: pick(random, ["Twin", "twin", "Lone", "-", "=x", ""]) })])))
    .map((state) => ({ ...state, rec: state.rec }));
  const own = Array.from({ length: 1 + Math.floor(random() * 6) }, () => someRecord(random, kind, others));
  const decimal = pick(random, [".", ","] as const);
  const targets = others.filter((each) => each.kind !== kind);
  const bytes = encode(write({ kind, states: [...targets, ...own], who: nobody }, decimal));
  const draw = (): string => hexId(random);
  const same = readList(bytes, { kind, states: [...targets, ...own], who: nobody }, draw);
  if ("refused" in same) return same.refused;
  if (same.changes.length > 0 || same.left > 0 || same.same !== own.length) return `back in the same book: ${JSON.stringify(same)}`;
  const fresh = readList(bytes, { kind, states: targets, who: nobody }, draw);
  if ("refused" in fresh) return fresh.refused;
  const made = new Map(fresh.changes.map(({ rec, set }) => [rec, set]));
  for (const state of own) {
    for (const { name } of columnsOf(kind)) {
      const [want, got] = [valueOf(state, name) ?? "", made.get(state.rec)?.[name] ?? ""];
      if (want !== got) return `${kind}.${name}: ${JSON.stringify(want)} became ${JSON.stringify(got)}`;
    }
  }
  return "";
}

const seeds = Array.from({ length: 400 }, (_, n) => n + 1);

test("lists: whatever records hold goes out and comes back the same", () => {
  for (const seed of seeds) equal(lost(seed, listText), "", `seed ${seed}`);
});

test("lists: a writer that loses something is found out", () => {
  const broken: Readonly<Record<string, (text: string) => string>> = {
    "quotes not doubled": (text) => text.replace(/([^,;\t\r\n"])""/g, '$1"'),
    "line ends made alike": (text) => text.replace(/\r\n|\r/g, "\n"),
    "no apostrophe before a minus": (text) => text.replaceAll("'-", "-"),
    "two decimals": (text) => text.replace(/(\d[.,]\d\d)\d+/g, "$1"),
    "spaces trimmed": (text) => text.replace(/ +"/g, '"'),
    "no colours above the sixteenth bit": (text) => text.replace(/\p{Emoji_Presentation}/gu, "?"),
    "flags as words of another language": (text) => text.replaceAll("yes", "oui"),
  };
  for (const [what, spoil] of Object.entries(broken)) {
    equal(seeds.some((seed) => lost(seed, (shelf, decimal) => spoil(listText(shelf, decimal))) !== ""), true, what);
  }
});

test("lists: no cell that goes out begins like a formula, unless it is a number", () => {
  const random = chance(7);
  const states = Array.from({ length: 200 }, () => someRecord(random, "gauge", []));
  const cells = [...csvRows(listText({ kind: "gauge", states, who: nobody }, ".").slice(1), ",")].flatMap((row) => row.cells);
  equal(cells.filter((cell) => /^[=+\-@\t\r]/.test(cell) && !/^-?\d+(\.\d+)?$/.test(cell)), []);
  equal(cells.some((cell) => /^-\d/.test(cell)), true, "numbers below nothing stay numbers");
});

const wheel = merged(op(hex("w1"), "wheel", { name: "Ochre front", inner_mm: 23, retired: true }, { device: benPhone }));
const tyre = merged(op(hex("t1"), "tyre", { name: "Ridge 40", measured_mm: 41, measured_at: 5 }));

function readFrom(text: string | Uint8Array, kind: ListKind = "wheel", states: readonly RecordState[] = [wheel, tyre, ana], who = nobody): ListPlan {
  const read = readList(typeof text === "string" ? encode(text) : text, { kind, states, who }, () => hex("new"));
  if ("refused" in read) throw new Error(read.refused);
  return read;
}

function refusal(text: string | Uint8Array): string {
  const read = readList(typeof text === "string" ? encode(text) : text, { kind: "wheel", states: [], who: nobody }, () => hex("new"));
  return "refused" in read ? read.refused : "";
}

const sets = (plan: ListPlan): unknown => plan.changes.map(({ rec, set }) => [rec === hex("new") ? "new" : rec, set]);

test("lists: separators, decimals, capitals and order are found out", () => {
  for (const text of [
    "name,inner_mm,tyre\nA,21.5,ridge 40\n", "\uFEFFINNER_MM;Tyre;Name\r\n21,5;Ridge 40;A\r\n", "tyre\tname\tinner_mm\rRidge 40\tA\t2.15e1", '"name","inner_mm","tyre"\n"A","21,5","Ridge 40"',
  ]) equal(readFrom(text).changes.map(({ set }) => [set["name"], set["inner_mm"], set["tyre"]]), [["A", 21.5, tyre.rec]], text);
});

test("lists: an empty cell leaves a value, a lone minus clears it, an id changes its record", () => {
  const plan = readFrom(`id,name,inner_mm,retired,note\n${wheel.rec},,-,No,hello\n`);
  equal(sets(plan), [[wheel.rec, { inner_mm: null, retired: false, note: "hello" }]]);
  equal([plan.changes[0]?.shown === wheel, plan.edits], [true, ["Ochre front: inner_mm, retired, note"]]);
  equal(sets(readFrom(`id,name\n${wheel.rec.toUpperCase()},\n`)), []);
  equal(sets(readFrom(`id,name\n${hex("else")},B\n`)), [[hex("else"), { name: "B" }]], "from a phone that has not been met");
});

test("lists: a bad cell or row is named, and the rest is taken", () => {
  const plan = readFrom(`id,name,inner_mm,setup,tyre,retired\n,A,23,tube,,\n,B,25,,,\n,C,250,foam,Nobody,maybe\n${tyre.rec},D,,,,\nxyz,E,,,,\n${wheel.rec},F,,,,\n${wheel.rec},G,,,,\n,H,1,2,3,4,5,6\n,,,,,\n,-,,,,\n`);
  equal(plan.changes.map(({ set }) => set["name"]), ["A", "B", "F"]);
  equal([plan.fresh, plan.changed, plan.left], [2, 1, 6]);
  equal(plan.reasons, [
    "line 4, column inner_mm: 250 is too much: 10 to 110 mm", "line 4, column setup: foam is none of tube, tubeless or insert",
    "line 4, column tyre: none is called Nobody here (Tyre)", "line 4, column retired: maybe is neither yes nor no",
    "line 5, column id: this id belongs to another kind of record (Tyre)",
    "line 6, column id: xyz is no id: 32 digits and letters from a to f, or nothing for a new record",
    "line 8, column id: line 7 has this id already", "line 9: it has more cells (8) than the first line has columns (6)", "line 11: it says nothing about a new record",
  ]);
});

test("lists: two of one name are told by their ids, and what is gone is not pointed to", () => {
  const twin = merged(op(hex("t2"), "tyre", { name: "ridge 40" }));
  const gone = merged(op(hex("t3"), "tyre", { name: "Old" }), op(hex("t3"), "tyre", { deleted: true }));
  const states = [tyre, twin, gone];
  equal(readFrom("name,tyre\nA,Ridge 40", "wheel", states).reasons, ["line 2, column tyre: more than one is called Ridge 40 (2): write the id of the one that is meant"]);
  equal(sets(readFrom(`name,tyre\nA,${twin.rec}`, "wheel", states)), [["new", { name: "A", tyre: twin.rec }]]);
  equal(readFrom(`name,tyre\nA,Old\nB,${gone.rec}`, "wheel", states).left, 2);
  equal(readFrom(`id,name\n${gone.rec},A`, "tyre", states).reasons, ["line 2, column id: this record is removed; restore it from its history first"]);
});

test("lists: a tyre measured anew is not as old as its last measurement", () => {
  equal(sets(readFrom(`id,measured_mm\n${tyre.rec},42`, "tyre")), [[tyre.rec, { measured_mm: 42, measured_at: null }]]);
});

test("lists: a weight that is not for this phone does not go out, and is not changed", () => {
  const weighed = merged(op(hex("cleo"), "person", { name: "Cleo", mass_kg: 61.5 }, { device: benPhone }));
  const onBens = { me: "", device: benPhone };
  const shelf = (who: typeof nobody): Shelf => ({ kind: "person", states: [weighed], who });
  equal([listText(shelf(nobody), ".").includes("61.5"), listText(shelf(onBens), ".").includes("61.5"), listText(shelf({ me: weighed.rec, device: anaPhone }), ",").includes("61,5")], [false, true, true]);
  equal(readFrom(listText(shelf(nobody), "."), "person", [weighed]).same, 1);
  for (const guess of ["61.5", "70", "-"]) equal(readFrom(`id,mass_kg\n${weighed.rec},${guess}`, "person", [weighed]).left, 1, guess);
  equal(readFrom(`id,mass_kg\n${weighed.rec},70`, "person", [weighed], onBens).changed, 1);
});

test("lists: hostile files are refused or read without harm", () => {
  equal(refusal(new Uint8Array([0x6e, 0x61, 0x6d, 0x65, 0x0a, 0xfc])), "This file is not written in UTF-8. Save it as “CSV UTF-8” and import that. Nothing was changed.");
  for (const [what, bytes] of [["large", new Uint8Array((4 << 20) + 1)], ["nothing", ""], ["no column", "hello,you\n1,2"], ["zeros", "n\0a\0m\0e\0\n"], ["open", '"name\nA'], ["rows", `name\n${"A\n".repeat(10_001)}`]] as const) {
    equal(refusal(bytes).includes("Nothing was changed."), true, what);
  }
  equal(readFrom(`name,note\nA,"never closed\nB,C`).reasons, ["line 2: a quote is opened here and never closed; the rest of the file was not read"]);
  equal(readFrom(`name,note\nA,${"x".repeat(1 << 20)}\nB,y`).reasons, ["line 2, column note: too many characters (1048576): at most 2000"]);
  equal(readFrom("name\nA\0B").reasons, ["line 2, column name: there is a character in it that no text has"]);
  const wide = readFrom(`name${",x".repeat(100_000)}\nA${",1".repeat(100_000)}`);
  equal([wide.unknown.length, sets(wide)], [100_000, [["new", { name: "A" }]]]);
  const named = readFrom("__proto__,constructor,name,toString,name,\n1,2,A,3,4,5");
  equal([named.unknown, sets(named)], [["__proto__", "constructor", "toString", "name"], [["new", { name: "A" }]]]);
  equal(readFrom("name\n__proto__\nconstructor").fresh, 2);
  equal(sets(readFrom("name\n'=1+1\n=2+2")), [["new", { name: "=1+1" }], ["new", { name: "=2+2" }]]);
  equal(fileText(encode(listText({ kind: "wheel", states: [merged(op(hex("f"), "wheel", { name: "=2+2" }))], who: nobody }, ".")))?.includes(",'=2+2,"), true);
});

test("lists: impossible days and moments are no values", () => {
  equal(readFrom("name,fitted,measured_at\nA,2026-06-31,\nB,14.07.2026,\nC,,2026-02-30\nD,2026-06-30,2026-06-30T08:00Z", "tyre").left, 3);
});
