// Ops are kept as the text that came, and JSON.parse does not tell it: this finds the texts of a list's elements in an
// answer that JSON.parse has already taken.

// elementsOf gives the text of each element of the list that stands as a member of the answer's top level.
export function elementsOf(json: string, name: string): readonly string[] {
  let found: readonly string[] = [];
  let at = skipSpace(json, skipSpace(json, 0) + 1); // after the {
  while (json[at] !== "}") {
    const keyEnd = stringEnd(json, at);
    const key = JSON.parse(json.slice(at, keyEnd)) as string;
    const from = skipSpace(json, skipSpace(json, keyEnd) + 1); // after the :
    const end = valueEnd(json, from);
    if (key === name) found = elements(json, from); // of two, the last counts, as for JSON.parse
    at = skipSpace(json, end);
    if (json[at] === ",") at = skipSpace(json, at + 1);
  }
  return found;
}

function elements(json: string, list: number): string[] {
  const found: string[] = [];
  if (json[list] !== "[") return found;
  for (let at = skipSpace(json, list + 1); json[at] !== "]"; ) {
    const end = valueEnd(json, at);
    found.push(json.slice(at, end));
    at = skipSpace(json, end);
    if (json[at] === ",") at = skipSpace(json, at + 1);
  }
  return found;
}

const [quote, backslash, comma, space] = [0x22, 0x5c, 0x2c, 0x20];
const opens = (code: number): boolean => code === 0x7b || code === 0x5b; // { [
const closes = (code: number): boolean => code === 0x7d || code === 0x5d; // } ]

// valueEnd is the place after the value that starts here. The text is known to be JSON, so counting brackets is enough.
function valueEnd(json: string, from: number): number {
  let depth = 0;
  for (let at = from; at < json.length; ) {
    const code = json.charCodeAt(at);
    if (code === quote) {
      at = stringEnd(json, at);
      if (depth === 0) return at;
      continue;
    }
    if (opens(code)) depth++;
    else if (closes(code)) {
      if (depth === 0) return at; // after a number, true, false or null
      if (--depth === 0) return at + 1;
    } else if (depth === 0 && (code === comma || code <= space)) return at;
    at++;
  }
  throw new SyntaxError("the answer ends within a value");
}

function stringEnd(json: string, from: number): number {
  for (let at = from + 1; at < json.length; at++) {
    const code = json.charCodeAt(at);
    if (code === quote) return at + 1;
    if (code === backslash) at++;
  }
  throw new SyntaxError("the answer ends within a text");
}

function skipSpace(json: string, from: number): number {
  let at = from;
  while (at < json.length && json.charCodeAt(at) <= space) at++;
  return at;
}
