import { equal, test } from "../../../ui/testing.ts";
import { section, type SectionMeasures, seatOf } from "./section_draw.ts";
import { sideView } from "./side_draw.ts";

// drawn reads the millimetres of every letter off the drawing.
function drawn(node: SVGSVGElement): Readonly<Record<string, number>> {
  const scale = Number(node.dataset["scale"]);
  document.body.replaceChildren(node);
  return Object.fromEntries([...node.querySelectorAll<SVGLineElement>("[data-letter]")].map((line) => [line.dataset["letter"], Math.round((line.getTotalLength() / scale) * 1000) / 1000]));
}

test("section: every letter's line is as long as its millimetres, on narrow and on wide rims", () => {
  for (const m of [{ a: 19, g: 5.5, h: 2.8, well: 3.1, l1: 7, hook: true }, { a: 45, g: 6.5, h: 4, well: 4, l1: 20, hook: false }] satisfies SectionMeasures[]) {
    equal(drawn(section(m, "a rim")), { A: m.a, G: m.g, H: m.h, L1: m.l1, P: Math.round(seatOf(m) * 1000) / 1000 });
  }
});

test("side view: the arc still off is as long as the calculator says; none, and more than half, are drawn too", () => {
  for (const offMm of [0, 40, 230.9, 1500]) {
    const node = sideView({ edgeMm: 317, floorMm: 308, offMm }, "a wheel", "");
    document.body.replaceChildren(node);
    const arc = node.querySelector<SVGPathElement>(".bead-off");
    const long = arc === null ? 0 : arc.getTotalLength() / Number(node.dataset["scale"]);
    equal(Math.abs(long - offMm) <= 0.001 * offMm + 0.001, true, `${offMm} mm are drawn as ${long}`);
  }
});
