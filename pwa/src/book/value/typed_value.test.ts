import { equal, test } from "../../ui/testing.ts";
import { kinds } from "./kinds.ts";
import { rangeWords, readTyped, typedText } from "./typed_value.ts";

test("typed values: a number in its field's unit, or in one of its own", () => {
  equal(readTyped("wheel", "inner_mm", "25", "bar"), { value: 25 });
  equal(readTyped("wheel", "inner_mm", " 2,5 cm ", "bar"), { value: 25 });
  equal(readTyped("wheel", "rotor_thickness_mm", "1,62", "bar"), { value: 1.62 });
  equal(readTyped("wheel", "max_kpa", "3.4", "bar"), { value: 340 });
  equal(readTyped("wheel", "max_kpa", "3.4 bar", "psi"), { value: 340 });
  equal(readTyped("person", "mass_kg", "72500 g", "bar"), { value: 72.5 });
  equal(readTyped("gauge", "error_kpa", "−0.1", "bar"), { value: -10 });
  equal(readTyped("pump", "stroke_ml", "120", "bar"), { value: 120 });
  equal(readTyped("bike", "speeds", "12", "bar"), { value: 12 });
});

test("typed values: what cannot be says what to do", () => {
  const fault = (kind: string, field: string, text: string): string => {
    const read = readTyped(kind, field, text, "bar");
    return "fault" in read ? read.fault : "";
  };
  equal(fault("wheel", "inner_mm", "250"), "From 10 to 110 mm.");
  equal(fault("wheel", "inner_mm", "9.99"), "From 10 to 110 mm.");
  equal(fault("wheel", "max_kpa", "20"), "From 0.5 to 15 bar.");
  equal(fault("wheel", "inner_mm", "abc"), "That is not a number. Type digits, such as 35.");
  equal(fault("wheel", "inner_mm", "25 bar"), "That unit does not fit here. Use mm.");
  equal(fault("bike", "speeds", "11.5"), "That is a whole number.");
  equal(fault("bike", "speeds", "12 mm"), "That unit does not fit here. Use a bare number.");
  equal(fault("bike", "name", "x".repeat(61)), "At most 60 characters.");
  equal(fault("tyre", "fitted", "yesterday"), "Choose a day.");
  equal(readTyped("bike", "name", "x".repeat(60), "bar"), { value: "x".repeat(60) });
  equal(readTyped("tyre", "fitted", "2026-02-01", "bar"), { value: "2026-02-01" });
});

test("typed values: empty means not known", () => {
  for (const [kind, field] of [["wheel", "inner_mm"], ["bike", "name"], ["tyre", "fitted"]] as const) equal(readTyped(kind, field, "  ", "bar"), { value: null });
});

test("typed values: what is shown is read back as the same value, at both bounds of every number", () => {
  for (const [kind, { fields }] of Object.entries(kinds)) {
    for (const [field, { type, unit = "", min, max }] of Object.entries(fields)) {
      if (type !== "number" || !["", "mm", "kg", "ml", "kPa"].includes(unit) || min === undefined || max === undefined) continue;
      for (const value of [min, max]) {
        const text = typedText(kind, field, value, "kpa");
        const read = readTyped(kind, field, text, "kpa");
        const whole = "fault" in read && read.fault === "That is a whole number.";
        if (!whole) equal([kind, field, read], [kind, field, { value }]);
      }
      equal(rangeWords(kind, field, "bar") === "", false);
    }
  }
});
