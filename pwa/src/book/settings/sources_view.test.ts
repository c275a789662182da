import { equal, test } from "../../ui/testing.ts";
import { useLocale } from "../../words/index.ts";
import { sourcesView } from "./sources_view.ts";

const lapse = { group: "Air", words: "Lapse", formula: "T = T0 − L H", values: [{ words: "L", value: 0.0065, unit: "K/m" }], source: "ISO 2533", mark: "published" };
const cap = { group: "Rules", words: "Cap", formula: "", values: [{ words: "", value: 500, unit: "kPa" }, 7], source: "ours", mark: "sure" };

test("sources: what several calculations rest on is told once, with all its digits", () => {
  useLocale(["en"]);
  const view = sourcesView([{ name: "pressure", sources: [cap, lapse] }, { name: "air", sources: [lapse] }]);
  equal(view.groups, [
    { title: "Rules", lines: [{ words: "Cap", formula: "", values: [{ words: "", text: "500 kPa" }], from: "ours", mark: "memory", usedBy: "pressure" }] },
    { title: "Air", lines: [{ words: "Lapse", formula: "T = T0 − L H", values: [{ words: "L", text: "0.0065 K/m" }], from: "ISO 2533", mark: "published", usedBy: "pressure, air" }] },
  ]);
  equal([view.total, view.counts.map(({ n }) => n)], [2, [1, 0, 1, 0]]);
});

test("sources: a description from elsewhere tells none", () => {
  equal(sourcesView([1, {}, { sources: 3 }]).total, 0);
});
