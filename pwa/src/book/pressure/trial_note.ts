// What a settled trial speaks for: an observation for the shift of each wheel whose pressure was tried.

import type { Requests } from "../../contract/contract.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { isObject, sides } from "./answer.ts";

type Note = Requests["shift"]["notes"][number];

// trialNotes are what a trial teaches; none when nothing was shown, or when what was recommended that day is not known.
export function trialNotes(entry: RecordState): readonly Note[] {
  const values = valueOf(entry, "values");
  if (!isObject(values) || !isObject(values["result"]) || !isObject(values["shift"])) return [];
  const { result, shift } = values;
  const [difference, low, high] = ["difference", "low", "high"].map((name) => (isObject(result) ? result[name] : undefined));
  if (!isObject(result) || typeof result["best"] !== "string" || typeof difference !== "number" || typeof low !== "number" || typeof high !== "number") return [];
  return sides.flatMap((wheel): Note[] => {
    const taught = isObject(shift) ? shift[wheel] : undefined;
    if (!isObject(taught)) return [];
    const [ridden, p0, label] = [taught["ridden_kpa"], taught["p0_kpa"], taught["label_mm"]];
    const sidewall = (["cloth", "glove", "hose"] as const).find((each) => each === taught["sidewall"]);
    const setup = (["tube", "tubeless", "insert"] as const).find((each) => each === taught["setup"]);
    if (typeof ridden !== "number" || typeof p0 !== "number" || typeof label !== "number" || sidewall === undefined || setup === undefined) return [];
    return [{ wheel, ridden_kpa: ridden, p0_kpa: p0, trial: { difference, low, high }, tyre: { label_mm: label, sidewall, setup } }];
  });
}
