import { equal, test } from "../../ui/testing.ts";
import { chance, pick, shuffled } from "../db/kit.test.ts";
import { elementsOf } from "./raw.ts";

test("raw: each element as it came, whatever stands round it", () => {
  const ops = [
    `{"id":"a","n":9007199254740993,"x":1.0e+2}`,
    `{ "s" : "\\u00e4 \\" ] } , [ \\\\" ,\n "deep":[[{"]":"}"}]] }`,
    `{}`, `"text, with ] and \\""`, `-1.50`, `null`, `[ ]`, `{"ops":[1,2]}`, `"\ud83d\udeb2 ä"`,
  ];
  for (const [between, around] of [[",", ""], [" ,\r\n\t", " \n "]] as const) {
    const json = `${around}{"book":"x","before":{"ops":["no"]},"ops"${around}:${around}[${around}${ops.join(between)}${around}]${around},"next":7,"more":false}${around}`;
    JSON.parse(json);
    equal(elementsOf(json, "ops"), ops);
  }
});

test("raw: no list, an empty one, an escaped name, a name twice", () => {
  equal(elementsOf(`{}`, "ops"), []);
  equal(elementsOf(` { } `, "ops"), []);
  equal(elementsOf(`{"ops":[],"a":1}`, "ops"), []);
  equal(elementsOf(`{"ops":7,"a":"ops"}`, "ops"), []);
  equal(elementsOf(`{"\\u006fps":[ 1 ]}`, "ops"), ["1"]);
  equal(elementsOf(`{"ops":[1],"ops":[2]}`, "ops"), ["2"]);
});

test("raw: random values, written with random spaces, come out as they were written", () => {
  for (let seed = 0; seed < 200; seed++) {
    const random = chance(seed);
    const space = (): string => pick(random, ["", "", "", " ", "\n", "\t "]);
    const written = (depth: number): string => {
      const more = (): string[] => Array.from({ length: Math.floor(random() * 4) }, () => written(depth - 1));
      const list = (items: string[]): string => items.map((item) => `${space()}${item}${space()}`).join(",");
      switch (depth === 0 ? 2 : Math.floor(random() * 4)) {
        case 0: return `[${list(more())}]`;
        case 1: return `{${list(more().map((value, i) => `"${i}\\""${space()}:${space()}${value}`))}}`;
        default: return pick(random, ["1", "-2.5e-7", "true", "null", `"\\\\"`, `"]},{\\"["`, `""`, `"\\ud83d\\udeb2"`]);
      }
    };
    const ops = Array.from({ length: 5 }, () => written(4));
    const members = shuffled(random, [`"a":${written(3)}`, `"ops":[${ops.map((op) => `${space()}${op}${space()}`).join(",")}]`, `"z"${space()}:${written(2)}`]);
    const json = `{${space()}${members.join(`${space()},${space()}`)}${space()}}`;
    JSON.parse(json);
    equal(elementsOf(json, "ops"), ops, json);
  }
});

test("raw: a text of a megabyte and deep nesting are walked without a stack", () => {
  const long = JSON.stringify("x\"\\".repeat(400_000));
  const deep = "[".repeat(5000) + "]".repeat(5000);
  equal(elementsOf(`{"ops":[${long},${deep}]}`, "ops").map((text) => text.length), [long.length, deep.length]);
});
