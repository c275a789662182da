import { equal, test } from "../../../ui/testing.ts";
import { csvRows, csvText, fileText, guard, type Separator, unguard } from "./csv.ts";

const rows = (text: string, separator: Separator = ","): unknown => [...csvRows(text, separator)];

test("csv: lines end with CR, LF or both, and are counted within quotes too", () => {
  equal(rows('a,b\r\n"1\r\n2","x\ry"\n\n3,4\r5,6'), [
    { line: 1, cells: ["a", "b"] }, { line: 2, cells: ["1\r\n2", "x\ry"] }, { line: 6, cells: ["3", "4"] }, { line: 7, cells: ["5", "6"] },
  ]);
  equal(rows(""), []);
  equal(rows(","), [{ line: 1, cells: ["", ""] }]);
});

test("csv: quotes are doubled within quotes, and stand for themselves elsewhere", () => {
  equal(rows('"a ""b""",5" rim'), [{ line: 1, cells: ['a "b"', '5" rim'] }]);
  equal(rows('"","x;y"', ";"), [{ line: 1, cells: [',"x', 'y"'], fault: "after" }]);
  equal(rows('"a"b,c'), [{ line: 1, cells: ["ab", "c"], fault: "after" }]);
});

test("csv: a quote that is never closed is told, with the line where it was opened", () => {
  equal(rows('a\nb,"c\nd\n'), [{ line: 1, cells: ["a"] }, { line: 2, cells: ["b", "c\nd\n"], fault: "open" }]);
  equal(rows('"'), [{ line: 1, cells: [""], fault: "open" }].slice(1), "a lone quote is an empty line");
});

test("csv: what was written is read back", () => {
  const cells = [["", " lead", "a,b", "c;d", "e\tf", 'g"h', "i\r\nj", "🚲", "trail "], ["'", "x"]];
  for (const separator of [",", ";", "\t"] as const) {
    const bytes = new TextEncoder().encode(csvText(cells, separator));
    equal([...bytes.slice(0, 3)], [0xef, 0xbb, 0xbf], "the mark by which spreadsheets know UTF-8");
    equal([...csvRows(fileText(bytes) ?? "", separator)].map((row) => row.cells), cells);
  }
});

test("csv: other encodings are told from UTF-8", () => {
  equal(fileText(new Uint8Array([0x4d, 0xfc, 0x6c])), undefined, "Latin-1");
  equal(fileText(new Uint8Array([0xff, 0xfe, 0x4d, 0x00])), undefined, "UTF-16");
});

test("csv: what looks like a formula is made safe, and comes back as it was", () => {
  for (const text of ["=1+1", "+1", "-", "-x", "@sum", "\tx", "\rx", "\nx", "＝1", "'=1", "''-"]) {
    equal(guard(text), `'${text}`);
    equal(unguard(guard(text)), text);
  }
  for (const text of ["", "a", "'tis", "''", "1-2", "'", " =1"]) {
    equal(guard(text), text);
    equal(unguard(text), text);
  }
});
