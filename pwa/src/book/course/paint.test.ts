import { equal, test } from "../../ui/testing.ts";
import { paint, type Painted } from "./paint.ts";

const whole: readonly Painted[] = [{ kind: "pea", from: 0, to: 100 }];
const said = (course: readonly Painted[]): string => course.map(({ kind, from, to }) => `${kind} ${from}-${to}`).join(", ");

test("paint: over, beside and across what was there", () => {
  const once = paint(whole, "egg", 40, 20);
  equal(said(once), "pea 0-20, egg 20-40, pea 40-100");
  equal(said(paint(once, "rice", 30, 60)), "pea 0-20, egg 20-30, rice 30-60, pea 60-100");
  equal(said(paint(once, "pea", 10, 50)), "pea 0-100");
  equal(said(paint(once, "egg", 40, 70)), "pea 0-20, egg 20-70, pea 70-100");
  equal(said(paint(once, "fist", -5, 500)), "fist 0-100");
  equal(said(paint(once, "fist", 30, 30)), said(once));
  equal(said(paint([], "fist", 0, 3)), "");
});

test("paint: no gap and no overlap, whatever is painted", () => {
  let seed = 7;
  const draw = (n: number): number => (seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) % n;
  let course = whole;
  for (let n = 0; n < 500; n++) {
    course = paint(course, ["pea", "egg", "rice", "fist"][draw(4)] ?? "pea", draw(1200) / 10 - 10, draw(1200) / 10 - 10);
    equal([course[0]?.from, course[course.length - 1]?.to], [0, 100]);
    for (let k = 1; k < course.length; k++) equal([course[k]?.from, course[k]?.kind === course[k - 1]?.kind], [course[k - 1]?.to, false]);
  }
});
