// Reads a course out of a GPX file, 1.0 or 1.1, piece by piece as it comes: tracks, or routes where there are no tracks. What is not a
// point of these is passed over. Nothing of a file is believed: entities, depth, size and numbers are refused by name.

import { Points } from "./points.ts";

export type GpxFault = "entities" | "depth" | "points" | "size" | "not_gpx" | "numbers" | "broken" | "cut" | "empty";

export const mostBytes = 50 * 1024 * 1024;
export const mostPoints = 500_000;
const mostDepth = 32;
const longestTag = 64 * 1024; // characters; no honest tag or text of ours comes near

export class GpxError extends Error {
  constructor(readonly fault: GpxFault) {
    super(fault);
  }
}

function refuse(fault: GpxFault): never {
  throw new GpxError(fault);
}

export class GpxReader {
  readonly tracks = new Points();
  readonly routes = new Points();
  #rest = "";
  #path: string[] = [];
  #text = ""; // of an elevation that is being read
  #into: Points | undefined; // where the open point belongs
  #lat = 0;
  #lon = 0;
  #height = NaN;
  #rooted = false;

  // feed takes the next piece of the file.
  feed(piece: string): void {
    const text = this.#rest + piece;
    let at = 0;
    for (;;) {
      const open = text.indexOf("<", at);
      if (open < 0) break;
      if (open > at) this.#took(text, at, open);
      const end = this.#mark(text, open);
      if (end < 0) {
        at = open;
        break;
      }
      at = end;
    }
    const open = text.indexOf("<", at);
    if (open < 0) { // plain text to the end: nothing of it is needed again
      this.#took(text, at, text.length);
      at = text.length;
    }
    this.#rest = text.slice(at);
    if (this.#rest.length > longestTag) refuse("broken");
  }

  // end gives the points, once the file is through.
  end(): Points {
    if (!this.#rooted) refuse("not_gpx");
    if (this.#path.length > 0 || this.#rest.trim() !== "") refuse("cut");
    const points = this.tracks.count > 1 ? this.tracks : this.routes;
    if (points.count < 2) refuse("empty");
    return points;
  }

  #took(text: string, from: number, to: number): void {
    if (this.#path.length === 0) {
      if (text.slice(from, to).replace(/^\uFEFF/, "").trim() !== "") refuse(this.#rooted ? "broken" : "not_gpx");
    } else if (this.#into !== undefined && this.#path[this.#path.length - 1] === "ele") {
      this.#text += text.slice(from, to);
      if (this.#text.length > 64) refuse("numbers");
    }
  }

  // mark takes what begins with "<" at this place and gives where it ends, or -1 where the piece ends before.
  #mark(text: string, open: number): number {
    const next = text.charCodeAt(open + 1);
    if (Number.isNaN(next)) return -1;
    if (next === 0x21) return this.#declaration(text, open); // !
    if (next === 0x3f) return past(text, "?>", open); // ?
    if (next === 0x2f) { // /
      const close = text.indexOf(">", open);
      if (close < 0) return -1;
      this.#closed(nameAt(text, open + 2, close, true));
      return close + 1;
    }
    const close = tagEnd(text, open);
    if (close < 0) return -1;
    const alone = text.charCodeAt(close - 1) === 0x2f;
    const end = alone ? close - 1 : close;
    const name = nameAt(text, open + 1, end, false);
    this.#opened(name, text, open, end);
    if (alone) this.#closed(name);
    return close + 1;
  }

  #declaration(text: string, open: number): number {
    if (text.startsWith("<!--", open)) return past(text, "-->", open + 4);
    if (text.startsWith("<![CDATA[", open)) {
      if (this.#path.length === 0) refuse("broken");
      const end = past(text, "]]>", open + 9);
      if (end >= 0) this.#took(text, open + 9, end - 3);
      return end;
    }
    if (text.length - open < 9 && "<![CDATA[".startsWith(text.slice(open)) || "<!--".startsWith(text.slice(open))) return -1;
    return refuse("entities"); // a document type, and with it entities
  }

  #opened(local: string, text: string, open: number, close: number): void {
    if (local === "") refuse("broken");
    if (this.#path.length === 0) {
      if (this.#rooted || local !== "gpx") refuse(this.#rooted ? "broken" : "not_gpx");
      this.#rooted = true;
    }
    const parent = this.#path[this.#path.length - 1];
    this.#path.push(local);
    if (this.#path.length > mostDepth) refuse("depth");
    if (local === "trkpt" && parent === "trkseg") this.#point(text, open, close, this.tracks);
    else if (local === "rtept" && parent === "rte") this.#point(text, open, close, this.routes);
    else if (local === "trkseg") this.tracks.part();
    else if (local === "rte") this.routes.part();
    else if (local === "ele") this.#text = "";
  }

  #point(text: string, open: number, close: number, into: Points): void {
    const tag = text.slice(open, close);
    this.#into = into;
    this.#lat = attribute(tag, latitude, 90);
    this.#lon = attribute(tag, longitude, 180);
    this.#height = NaN;
  }

  #closed(local: string): void {
    if (this.#path.pop() !== local) refuse("broken");
    if (this.#into === undefined) return;
    if (local === "ele" && this.#path.length > 0) this.#height = heightOf(this.#text);
    else if (local === "trkpt" || local === "rtept") {
      this.#into.add(this.#lat, this.#lon, this.#height);
      this.#into = undefined;
      if (this.tracks.count + this.routes.count > mostPoints) refuse("points");
    }
  }
}

// Usual names are known by their length and first letter, so that half a million points make no new text each.
const usual = new Map(["trkpt", "ele", "time", "rtept", "trkseg", "rte", "trk"].map((name) => [keyOf(name.charCodeAt(0), name.length), name]));

function keyOf(first: number, length: number): number {
  return first * 16 + length;
}

// nameAt is the name that begins at this place, without its prefix. The end of an element may have spaces about it.
function nameAt(text: string, from: number, end: number, ending: boolean): string {
  let to = from;
  while (to < end && !isGap(text.charCodeAt(to))) to++;
  if (to - from < 16 && (to === end || !ending)) {
    const name = usual.get(keyOf(text.charCodeAt(from), to - from));
    if (name !== undefined && text.startsWith(name, from)) return name;
  }
  const name = ending ? text.slice(from, end).trim() : (/^[^\s/]*/.exec(text.slice(from, end))?.[0] ?? "");
  return name.slice(name.indexOf(":") + 1);
}

function isGap(c: number): boolean {
  return c === 0x20 || c === 0x0a || c === 0x0d || c === 0x09 || c === 0x2f;
}

function past(text: string, end: string, from: number): number {
  const at = text.indexOf(end, from);
  return at < 0 ? -1 : at + end.length;
}

// tagEnd is the ">" that ends a tag: one within quotes does not.
function tagEnd(text: string, open: number): number {
  for (let from = open + 1; ; ) {
    const close = text.indexOf(">", from);
    if (close < 0) return -1;
    const quote = openQuote(text, from, close);
    if (quote === 0) return close;
    from = text.indexOf(quote === 0x22 ? '"' : "'", close) + 1;
    if (from === 0) return -1;
  }
}

// openQuote is the quote that is open at the end, 0 for none.
function openQuote(text: string, from: number, end: number): number {
  let quote = 0;
  for (let i = from; i < end; i++) {
    const c = text.charCodeAt(i);
    if (c !== 0x22 && c !== 0x27) continue;
    if (quote === 0) quote = c;
    else if (c === quote) quote = 0;
  }
  return quote;
}

const decimal = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,2})?$/;

const exactDigits = 15; // so many and the power of ten below are whole numbers that a double holds, so that their quotient is the nearest one
const tens = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

// numberOf is a decimal number, NaN for anything else. What is short and plain, as nearly all are, is read digit by digit.
function numberOf(text: string): number {
  const negative = text.charCodeAt(0) === 0x2d;
  let [whole, point] = [0, -1];
  let i = negative ? 1 : 0;
  const first = i;
  for (; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c >= 0x30 && c <= 0x39) whole = whole * 10 + (c - 0x30);
    else if (c === 0x2e && point < 0) point = i;
    else break;
  }
  const digits = i - first - (point < 0 ? 0 : 1);
  if (i < text.length || digits < 1 || digits > exactDigits) return decimal.test(text) ? Number(text) : NaN;
  const value = whole / (tens[point < 0 ? 0 : i - point - 1] ?? NaN);
  return negative ? -value : value;
}

interface Attribute {
  readonly plain: string; // as it is nearly always written
  readonly any: RegExp;
}

const latitude: Attribute = { plain: ' lat="', any: /\slat\s*=\s*(?:"([^"]*)"|'([^']*)')/ };
const longitude: Attribute = { plain: ' lon="', any: /\slon\s*=\s*(?:"([^"]*)"|'([^']*)')/ };

// attribute is a number of at most this size, either way.
function attribute(tag: string, { plain, any }: Attribute, most: number): number {
  const from = tag.indexOf(plain) + plain.length;
  const to = from < plain.length ? -1 : tag.indexOf('"', from);
  const found = to < 0 ? any.exec(tag) : undefined;
  const value = numberOf(to < 0 ? (found?.[1] ?? found?.[2] ?? "").trim() : tag.slice(from, to).trim());
  if (!(Math.abs(value) <= most)) refuse("numbers");
  return value;
}

const lowestHeight = -500;
const highestHeight = 9000; // m: no road leads beyond either

function heightOf(text: string): number {
  const trimmed = text.trim();
  if (trimmed === "") return NaN;
  const value = numberOf(trimmed);
  if (!(value >= lowestHeight && value <= highestHeight)) refuse("numbers");
  return value;
}
