// Sweat and salt since the last wash: a wheel's metals and a bike's rides as the calculator asks for them, and its answer in
// words.

import type { Answers, Requests } from "../../contract/contract.ts";
import { saltFields } from "../../contract/salt_fields.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";
import { chosen } from "../value/choice.ts";
import { optionWords } from "../value/kind_words.ts";
import { textOf } from "./walk_save.ts";
import { dayWords } from "../value/when.ts";

export const rideKinds = ["indoor", "wet", "salted", "dry"] as const;
export const sweats = ["low", "mean", "high"] as const;

type SaltRequest = Requests["salt"];
type Materials = NonNullable<SaltRequest["materials"]>;

// materialsOf are a wheel's metals, as far as somebody said.
export function materialsOf(wheel: RecordState | undefined): Materials {
  const parts = [["rim", "rim_material"], ["nipple", "nipple_material"], ["spoke", "spoke_material"], ["hub", "hub_material"]] as const;
  return Object.fromEntries(parts.flatMap(([part, field]) => {
    const material = chosen(saltFields[`materials.${part}`].choices, valueOf(wheel, field));
    return material === undefined ? [] : [[part, material] as const];
  }));
}

// saltLog are a bike's rides and washes, by day.
export function saltLog(entries: readonly RecordState[], bike: string): SaltRequest["log"] {
  return logOf(entries, bike).flatMap((entry) => {
    const hours = valueOf(entry, "hours");
    const kind = chosen(saltFields["log.*.kind"].choices, valueOf(entry, "kind"));
    const sweat = chosen(saltFields["log.*.sweat"].choices, valueOf(entry, "sweat"));
    return kind === undefined ? [] : [{ day: textOf(entry, "day"), kind, ...(typeof hours === "number" && { hours }), ...(sweat !== undefined && { sweat }) }];
  });
}

// indoorsOnly is the log of a wheel that goes in for the trainer: rides on it and washes, no road.
export function indoorsOnly(log: SaltRequest["log"]): SaltRequest["log"] {
  return log.filter(({ kind }) => kind === "indoor" || kind === "wash" || kind === "wipe");
}

// logOf are the entries themselves, the newest day first.
export function logOf(entries: readonly RecordState[], bike: string): readonly RecordState[] {
  return entries
    .filter((entry) => !entry.deleted && !entry.erased && valueOf(entry, "bike") === bike && textOf(entry, "day") !== "" && textOf(entry, "kind") !== "")
    .sort((a, b) => (textOf(a, "day") < textOf(b, "day") ? 1 : textOf(a, "day") > textOf(b, "day") ? -1 : b.newest - a.newest));
}

export type SaltAnswer = Answers["salt"];
type Couple = SaltAnswer["couples"][number];

// coupleWords ranks a couple in words: the gap alone is no prediction.
export function coupleWords({ where, anode, cathode, gap_v, rank }: Couple): string {
  return w("salt.couple", { where: w(`salt.where.${where}`), anode: optionWords("rim_material", anode), cathode: optionWords("rim_material", cathode), gap: fixed(gap_v, 2), rank: w(`salt.rank.${rank}`) });
}

// logWords is a line of the log: "Indoor ride, 1.5 h, middling sweat".
export function logWords(entry: RecordState, now: number): string {
  const [hours, sweat] = [valueOf(entry, "hours"), textOf(entry, "sweat")];
  return [
    dayWords(textOf(entry, "day"), now), optionWords("kind", textOf(entry, "kind")),
    typeof hours === "number" ? w("recValue.with", { n: hours, unit: w("recUnit.h") }) : "", sweat === "" ? "" : w("salt.sweatOf", { sweat: optionWords("sweat", sweat) }),
  ].filter((words) => words !== "").join(", ");
}
