// Codes on wheels' tags.

import { equal, test } from "../../ui/testing.ts";
import { record } from "../value/kit.test.ts";
import { readTag, tagged, tagOf } from "./tags.ts";

test("tags: a code is five letters of the record's end, and never an I, L, O or U", () => {
  equal(tagOf("00000000000000000000000000000000"), "00000");
  equal(tagOf("0000000000000000000000000000003f"), "0001Z"); // 63 = 1 · 32 + 31
  equal(tagOf("000000000000000000000000ffffffff"), "ZZZZZ");
});

test("tags: what is typed finds the wheel", () => {
  equal(["o001z", " 000 1-Z", "OOOIZ", "https://car.example/#/car/tags/0001Z"].map(readTag), ["0001Z", "0001Z", "0001Z", "0001Z"]);
  const wheels = ["4e1", "4e2"].map((end) => ({ ...record("wheel", "a", {}), rec: end.padStart(32, "0") }));
  for (const wheel of wheels) equal(tagged(wheels, tagOf(wheel.rec).toLowerCase()).map(({ rec }) => rec), [wheel.rec]);
  equal(tagged(wheels, "7"), []);
});
