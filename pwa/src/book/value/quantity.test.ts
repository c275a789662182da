import cases from "./quantities.json";
import { equal, test } from "../../ui/testing.ts";
import { type Dimension, parse, type PressureUnit, showKpa, stepKpa, typedKpa } from "./quantity.ts";

// What people type, and what is meant.
for (const each of cases as { text: string; dimension: string; unit: string; si?: number; error?: string }[]) {
  test(`typed ${each.dimension} ${JSON.stringify(each.text)}`, () => {
    const parsed = parse(each.text, each.dimension as Dimension, each.unit);
    if ("fault" in parsed) return equal(parsed.fault, each.error);
    equal(each.error, undefined);
    const want = each.si ?? NaN;
    equal(Math.abs(parsed.si - want) <= 1e-9 * Math.max(1, Math.abs(want)), true, `${parsed.si} for ${want}`);
  });
}

test("a rounded pressure never passes the limit it must keep", () => {
  const read = (text: string, unit: PressureUnit): number => {
    const parsed = parse(text, "pressure", unit);
    return "si" in parsed ? parsed.si / 1000 : NaN;
  };
  for (const unit of ["bar", "psi", "kpa"] as const) {
    for (let kpa = 40.03; kpa < 900; kpa += 7.77) {
      equal(read(showKpa(kpa, unit, "down"), unit) <= kpa + 1e-6, true, `${kpa} down in ${unit}`);
      equal(read(showKpa(kpa, unit, "up"), unit) >= kpa - 1e-6, true, `${kpa} up in ${unit}`);
    }
  }
  equal(showKpa(500, "bar", "down"), "5.00");
});

test("a typed pressure means the same after a change of unit and back", () => {
  for (const kpa of [150, 215, 420, 500]) {
    const psi = parse(typedKpa(kpa, "psi"), "pressure", "psi");
    equal("si" in psi && Math.abs(psi.si / 1000 - kpa) < 0.5, true, String(kpa));
  }
  equal([stepKpa("bar"), stepKpa("kpa")].map(Math.round), [5, 5]);
});
