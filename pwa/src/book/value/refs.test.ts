import { equal, test } from "../../ui/testing.ts";
import { byAna, byBen, hex, merged, op } from "./kit.test.ts";
import { refsIn, refsOf } from "./refs.ts";

test("refs: what values point to, in lists and objects too, and who set them", () => {
  const rec = hex("trip");
  const state = merged(
    op(rec, "trip", { bikes: [hex("b1"), hex("b2")], items: [{ of: hex("i") }], name: "x" }, byAna),
    op(rec, "trip", { name: hex("n"), deleted: true }, byBen));
  const names = [...refsIn([state])].sort();
  equal(names, [hex("b1"), hex("b2"), hex("i"), hex("n"), byAna.author, byAna.device, byBen.author, byBen.device].sort());
  equal([...refsOf([{ set: { of: hex("o"), n: 1 }, device: hex("d") }])].sort(), [hex("d"), hex("o")].sort());
});
