// Notes on a bike, newest first.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { listed, w } from "../../words/index.ts";
import { ageOf } from "../value/age.ts";
import { sides } from "../pressure/answer.ts";
import { feltOf } from "../pressure/learned.ts";

const shown = 5;

export function noteLines(notes: readonly RecordState[], bike: string | undefined, now: number): readonly { readonly rec: string; readonly words: string }[] {
  return notes.filter((note) => bike !== undefined && valueOf(note, "bike") === bike)
    .sort((a, b) => b.newest - a.newest || (a.rec < b.rec ? -1 : 1)).slice(0, shown)
    .map((note) => ({ rec: note.rec, words: w("notes.line", { text: textOf(note), age: ageOf(now - note.newest) }) }));
}

// textOf is what was written, or else what was felt of which wheel.
function textOf(note: RecordState): string {
  const text = valueOf(note, "note");
  const felt = feltOf(note);
  const side = sides.find((each) => each === valueOf(note, "side"));
  const said = listed([
    ...(felt === undefined ? [] : [w(`ride.is.${felt}`)]),
    ...(valueOf(note, "rim_strike") === true ? [w("ride.hit")] : []),
    ...(typeof text === "string" && text !== "" ? [text] : []),
  ]);
  return side === undefined || said === "" ? said : w("field.sided", { side: w(`side.${side}`), label: said });
}
