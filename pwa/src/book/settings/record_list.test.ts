import { equal, test } from "../../ui/testing.ts";
import { at, hex, merged, op, record, told } from "../value/kit.test.ts";
import { kindLists } from "./record_list.ts";

test("record list: by kind, what is there first, then deleted, then erased; the newest on top, and no more than asked for", () => {
  const named = (name: string, minute: number): ReturnType<typeof merged> => merged(op(hex(name), "tyre", { name }, { at: at(9, minute) }));
  const deleted = merged(op(hex("d"), "tyre", { name: "D" }), op(hex("d"), "tyre", { deleted: true }, { at: at(11, 0), seen: [] }));
  const erased = merged(op(hex("e"), "tyre", { name: "E" }), op(hex("e"), "erase", { kind: "tyre" }, { at: at(11, 30) }));
  const states = [erased, deleted, named("A", 1), named("B", 2), record("lamp", "l", {}), record("person", "p", { name: "Ana" })];
  const lists = kindLists(states, told(states), () => 10);
  equal(lists.map((each) => [each.title, each.total]), [["Person", 1], ["Tyre", 4], ["Something newer (lamp)", 1]]);
  equal(lists[1]?.lines.map((line) => [line.title, line.name, line.deleted, line.erased]), [
    ["Tyre · B", "B", false, false], ["Tyre · A", "A", false, false], ["Tyre · D", "D", true, false], ["Tyre · erased", "something erased", false, true],
  ]);
  const [, few] = kindLists(states, told(), () => 1);
  equal([few?.total, few?.lines.length], [4, 1]);
});
