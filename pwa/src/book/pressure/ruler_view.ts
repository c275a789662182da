// The ruler of one wheel: floor, fine range, the number, what was read, and the limit, as places on a line.

import { all, w } from "../../words/index.ts";
import type { WheelAnswer } from "./answer.ts";
import { onGauge, type Scene, type Told, toldRange } from "./told.ts";

// RulerView holds places from 0 to 1 along the line.
export interface RulerView {
  readonly floor: number | undefined; // too soft below it
  readonly limit: number | undefined; // too hard above it
  readonly good: readonly [number, number] | undefined;
  readonly ends: readonly [string, string]; // the fine range in figures
  readonly number: number;
  readonly read: number | undefined;
  readonly twin: string; // the same in words
}

export function rulerView(wheel: WheelAnswer, number: Told, scene: Scene, read: number | undefined): RulerView {
  const at = (kpa: number | null): number | undefined => (kpa === null ? undefined : onGauge(kpa, wheel, scene));
  const [floor, limit] = [at(wheel.floor_kpa), at(wheel.ceiling_kpa)];
  const good = wheel.good_kpa === null ? undefined : toldRange([onGauge(wheel.good_kpa[0], wheel, scene), onGauge(wheel.good_kpa[1], wheel, scene)], number, scene.unit);
  const known = [number.kpa, floor, good?.[0].kpa, good?.[1].kpa].filter((each) => each !== undefined);
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const room = Math.max(most - least, number.kpa * 0.2);
  // A limit far above would squeeze all the rest to one end: the line ends before it then.
  const near = limit !== undefined && limit > most && limit < most + room;
  const [from, to] = [least - room * 0.15, (near ? limit : most) + room * 0.15];
  const place = (kpa: number): number => Math.min(1, Math.max(0, (kpa - from) / (to - from)));
  const maybe = (kpa: number | undefined): number | undefined => (kpa === undefined || kpa > to ? undefined : place(kpa));
  return {
    floor: maybe(floor), limit: maybe(limit), good: good === undefined ? undefined : [place(good[0].kpa), place(good[1].kpa)],
    ends: good === undefined ? ["", ""] : [good[0].text, good[1].text], number: place(number.kpa), read: read === undefined ? undefined : place(read),
    twin: twin(number, good, wheel, scene),
  };
}

function twin(number: Told, good: readonly [Told, Told] | undefined, wheel: WheelAnswer, scene: Scene): string {
  const unit = w(`unit.${scene.unit}`);
  return all([
    w("ruler.number", { p: number.text, unit }),
    good === undefined ? "" : w("ruler.good", { low: good[0].text, high: good[1].text, unit }),
    wheel.limited_by === "none" ? "" : w("ruler.held", { by: w(`limit.${wheel.limited_by}`) }),
  ]);
}
