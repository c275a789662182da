import type { Source } from "../../contract/sources.ts";
import { equal, test } from "../../ui/testing.ts";
import { useLocale } from "../../words/index.ts";
import { sourcesView } from "./sources_view.ts";

const lapse: Source = { group: "Air", words: "Lapse", formula: "T = T0 − L H", values: [{ words: "L", value: 0.0065, unit: "K/m" }], from: "ISO 2533", mark: "published", usedBy: ["pressure", "air"] };
const cap: Source = { group: "Rules", words: "Cap", formula: "", values: [{ words: "", value: 500, unit: "kPa" }], from: "ours", mark: "memory", usedBy: ["pressure"] };

test("sources: in their groups, with all their digits and what rests on them", () => {
  useLocale(["en"]);
  const view = sourcesView([cap, lapse, { ...cap, words: "Other" }]);
  equal(view.groups.map(({ title, lines }) => [title, lines.length]), [["Rules", 2], ["Air", 1]]);
  equal(view.groups[0]?.lines[0], { words: "Cap", formula: "", values: [{ words: "", text: "500 kPa" }], from: "ours", mark: "memory", usedBy: "pressure" });
  equal(view.groups[1]?.lines, [{ words: "Lapse", formula: "T = T0 − L H", values: [{ words: "L", text: "0.0065 K/m" }], from: "ISO 2533", mark: "published", usedBy: "pressure, air" }]);
  equal([view.total, view.counts.map(({ n }) => n)], [3, [1, 0, 2, 0]]);
});
