// What other printed widths would ask: the same question with another tyre on the same rims.

import { hooklessCapKpa, roomRoadMm } from "../../contract/contract.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { type PressureAnswer, type Side, sides } from "./answer.ts";
import { noticeViews } from "./notices.ts";
import type { PressureUnit } from "../value/quantity.ts";
import type { RequestBody, RimBody, TyreBody, WheelBody } from "./request.ts";
import { type Tables, usualInnerFor } from "./tables.ts";
import { sceneOf } from "./screen_view.ts";
import { toldNumber } from "./told.ts";

const labels = [18, 20, 23, 25, 28, 30, 32, 35, 38, 40, 42, 45, 47, 50, 54, 57, 60, 63, 66]; // as the calculator tries them
const narrower = 3;
const wider = 4;
const growth = 2; // mm that a tyre grows with age; and 1 mm for each mm of a wider rim (facts of frame clearance)

// labelsRound are the widths next to the one that is mounted, which is among them.
export function labelsRound(mounted: number): readonly number[] {
  return [...labels.filter((mm) => mm < mounted).slice(-narrower), mounted, ...labels.filter((mm) => mm > mounted).slice(0, wider)];
}

// widthQuestion is the question with this width at both ends. A tyre that is mounted already stays as it is; what is
// marked on it or measured does not count for another.
export function widthQuestion(body: RequestBody, mm: number): RequestBody {
  const { now: _, ...rest } = body;
  return { ...rest, front: mounting(body.front, mm), rear: mounting(body.rear, mm) };
}

function mounting(wheel: WheelBody, mm: number): WheelBody {
  const { tyre, rim } = wheel;
  if (tyre.label_mm === mm) return wheel;
  const top = rimTop(rim);
  const other: TyreBody = { label_mm: mm, sidewall: tyre.sidewall, setup: tyre.setup, hookless_ok: true, ...(top < Infinity && { max_kpa: top }) };
  return { tyre: other, rim };
}

// rimTop is what the rim allows any tyre: the new one's own mark is still to be read.
function rimTop({ profile, max_kpa, table_max_kpa }: RimBody): number {
  return Math.min(max_kpa ?? Infinity, table_max_kpa ?? Infinity, profile === "hooked" ? Infinity : hooklessCapKpa);
}

export type Room = Readonly<Partial<Record<Side, number>>>; // mm, the widest tyre that clears

export interface WidthRow {
  readonly mm: number;
  readonly mounted: boolean;
  readonly numbers: Readonly<Record<Side, string>>; // "" for none
  readonly why: readonly string[]; // why not, or what to mind
}

export interface Asked {
  readonly mm: number;
  readonly question: RequestBody;
  readonly answer: PressureAnswer;
}

// widthRow tells what a width asks of both wheels, or why it will not do.
export function widthRow({ mm, answer }: Asked, unit: PressureUnit, room: Room, tables: Tables, body: RequestBody): WidthRow {
  const mounted = sides.every((side) => body[side].tyre.label_mm === mm);
  const tight = sides.filter((side) => body[side].tyre.label_mm !== mm && isTight(mm, body[side].rim, room[side], tables));
  const number = (side: Side): string => {
    return tight.includes(side) ? "" : toldNumber(answer[side], sceneOf(body, unit))?.text ?? "";
  };
  const why = [...tight.map((side) => sided(side, w("widths.tight", { room: plain(room[side] ?? 0), gap: roomRoadMm }))), ...stops(answer, unit)];
  return { mm, mounted, numbers: { front: number("front"), rear: number("rear") }, why: once(why) };
}

// isTight: with its growth the tyre would leave less than the least gap on each side of the frame's opening.
function isTight(mm: number, rim: RimBody, room: number | undefined, tables: Tables): boolean {
  return room !== undefined && mm + (rim.inner_mm - (usualInnerFor(mm, tables) ?? rim.inner_mm)) + growth + 2 * roomRoadMm > room;
}

// What to mind besides stops; the rest concerns the mounted tyre or is said below the table.
const minded = ["narrow_care", "wide_care", "hookless_no_table"];

function stops(answer: PressureAnswer, unit: PressureUnit): readonly string[] {
  return noticeViews(answer, unit).filter((each) => each.severity === "stop" || minded.includes(each.code))
    .map((each) => (each.wheel === "both" ? each.text : sided(each.wheel, each.text)));
}

function sided(side: Side, text: string): string {
  return w("field.sided", { side: w(`side.${side}`), label: text });
}

// once says what holds for both wheels alike only once.
function once(lines: readonly string[]): readonly string[] {
  const [front, rear] = sides.map((side) => sided(side, "")) as [string, string];
  const out: string[] = [];
  for (const line of lines) {
    const twin = line.startsWith(rear) ? out.indexOf(front + line.slice(rear.length)) : -1;
    if (twin >= 0) out[twin] = line.slice(rear.length);
    else out.push(line);
  }
  return out;
}

// widthCautions are what holds for all the widths shown.
export function widthCautions(body: RequestBody, room: Room): readonly string[] {
  const rims = sides.map((side) => body[side].rim);
  return [
    w("widths.sidewall"),
    ...(rims.some((rim) => rim.profile !== "hooked") ? [w("widths.hookless")] : []),
    ...(rims.some((rim) => rim.table_max_kpa !== undefined) ? [w("widths.table")] : []),
    ...(sides.some((side) => room[side] === undefined) ? [w("widths.room")] : []),
  ];
}
