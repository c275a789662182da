import { equal, test } from "../../ui/testing.ts";
import { at, byAna, hex, op, record, told } from "../value/kit.test.ts";
import { rejectedViews } from "./rejected_view.ts";

const rec = hex("ochre");
const tyre = record("tyre", "ochre", { name: "Ochre 40s" });

test("refused: what it was, the server's words and code, details to copy", () => {
  const refused = { id: hex("a"), log: hex("log"), code: "other_content", message: "Another entry has this id.", op: op(rec, "tyre", { measured_mm: 41.5 }, { at: at(10, 2), ...byAna }) };
  const [view] = rejectedViews([refused], told([tyre]));
  equal([view?.title, view?.by.replace(/\s/g, " "), view?.values, view?.reason, view?.code],
    ["Tyre · Ochre 40s", "Ana, 10:02 AM today", [{ label: "Measured width", value: "41.5 mm" }], "Another entry has this id.", "other_content"]);
  equal(JSON.parse(view?.details ?? ""), refused);
});

test("refused: a delete, an erasing, a record nobody knows, something that cannot be read, a code without words", () => {
  const of = (change: object): object => ({ id: hex("a"), log: hex("log"), code: "brand_new", message: "", ...change });
  const views = rejectedViews([
    of({ op: op(rec, "tyre", { deleted: true }, { at: at(10, 2), ...byAna }) }),
    of({ op: op(rec, "erase", { kind: "tyre" }) }),
    of({ op: op(hex("new"), "lamp", { glow: 1 }) }),
    of({}),
  ] as Parameters<typeof rejectedViews>[0], told([tyre]));
  equal(views.map((view) => view.title), ["Tyre · Ochre 40s", "Tyre · Ochre 40s", "Something newer (lamp)", "Something that cannot be read"]);
  equal([views[0]?.by.startsWith("Removed by Ana"), views[0]?.values, views[1]?.values, views[2]?.values], [true, [], [], [{ label: "glow", value: "1" }]]);
  equal(views[3]?.reason, "No reason was given.");
  equal(rejectedViews([of({ code: "op_too_large" })] as Parameters<typeof rejectedViews>[0], told())[0]?.reason, "It is too large.");
});
