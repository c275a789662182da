import envelopeCases from "../../../../store/oplog/testdata/envelope.json";
import { equal, test } from "../../ui/testing.ts";
import { isRejection, maxOpBytes, readOp } from "./op.ts";

const id = "a0000000000000000000000000000000";
const text = (value: string): string =>
  `{"id":"${id}","at":1790000000000,"kind":"note","rec":"7ec00000000000000000000000000000","set":{"text":${JSON.stringify(value)}}}`;

function codeOf(bytes: string): string {
  const read = readOp(bytes);
  return isRejection(read) ? read.code : "";
}

test("op: the envelope's cases, as the server reads them", () => {
  equal(envelopeCases.length >= 40, true, "cases");
  for (const { name, text, code } of envelopeCases) equal(codeOf(text), code, name);
});

test("op: two MiB are taken, a byte more is not, counted as UTF-8", () => {
  const room = maxOpBytes - text("").length;
  equal([codeOf(text("x".repeat(room))), codeOf(text("x".repeat(room + 1)))], ["", "op_too_large"]);
  const umlauts = Math.floor(room / 2);
  equal([codeOf(text("ä".repeat(umlauts))), codeOf(text("ä".repeat(umlauts + 1)))], ["", "op_too_large"]);
});

test("op: a refusal names the op and what is wrong with it", () => {
  equal(readOp(text("x").replace("1790000000000", "7")), { id, code: "at_out_of_range", member: "at" });
  equal(readOp(text("x").replace('"kind":"note"', '"kind":7')), { id, code: "op_malformed", member: "kind" });
  equal(readOp(text("x").slice(0, -1)), { id, code: "op_malformed", member: "" });
  equal(readOp(text("x".repeat(maxOpBytes))), { id, code: "op_too_large", member: "" });
});

test("op: half a character that came unescaped is found too", () => {
  equal(codeOf(text("x").replace('"x"', '"\ud83d"')), "op_malformed");
  equal(codeOf(text("x").replace('"x"', '"\ud83d\udeb2"')), "");
});

test("op: nesting that could overflow the stack is refused", () => {
  equal(codeOf(text("x").replace('"x"', "[".repeat(200_000) + "]".repeat(200_000))), "op_malformed");
});

test("op: a member called code does not make an op a refusal", () => {
  equal(codeOf(text("x").replace('"kind"', '"code":"op_malformed","kind"')), "");
});
