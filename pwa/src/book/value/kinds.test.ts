import { schema } from "../../contract/kinds.ts";
import { schema as written } from "../../log/op/change.ts";
import { equal, test } from "../../ui/testing.ts";
import { fieldOf, kinds } from "./kinds.ts";

test("kinds: ops are written with the schema of the list", () => equal(written, schema));

test("kinds: a field is found, and a name that only an object has is none", () => {
  equal([fieldOf("tyre", "label_mm")?.type, fieldOf("tyre", "toString"), fieldOf("toString", "name"), kinds["bike"]?.is], ["number", undefined, undefined, "description"]);
});
