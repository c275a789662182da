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
      this.#closed(text.slice(open + 2, close).trim());
      return close + 1;
    }
    const close = tagEnd(text, open);
    if (close < 0) return -1;
    const alone = text.charCodeAt(close - 1) === 0x2f;
    const tag = text.slice(open + 1, alone ? close - 1 : close);
    const name = this.#opened(tag);
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

  #opened(tag: string): string {
    const end = tag.search(/[\s/]/);
    const name = end < 0 ? tag : tag.slice(0, end);
    if (name === "") refuse("broken");
    const local = name.slice(name.indexOf(":") + 1);
    if (this.#path.length === 0) {
      if (this.#rooted || local !== "gpx") refuse(this.#rooted ? "broken" : "not_gpx");
      this.#rooted = true;
    }
    const parent = this.#path[this.#path.length - 1];
    this.#path.push(local);
    if (this.#path.length > mostDepth) refuse("depth");
    if (local === "trkpt" && parent === "trkseg") this.#point(tag, this.tracks);
    else if (local === "rtept" && parent === "rte") this.#point(tag, this.routes);
    else if (local === "trkseg") this.tracks.part();
    else if (local === "rte") this.routes.part();
    else if (local === "ele") this.#text = "";
    return name;
  }

  #point(tag: string, into: Points): void {
    this.#into = into;
    this.#lat = attribute(tag, latitude, 90);
    this.#lon = attribute(tag, longitude, 180);
    this.#height = NaN;
  }

  #closed(name: string): void {
    const local = name.slice(name.indexOf(":") + 1);
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

function past(text: string, end: string, from: number): number {
  const at = text.indexOf(end, from);
  return at < 0 ? -1 : at + end.length;
}

// tagEnd is the ">" that ends a tag: one within quotes does not.
function tagEnd(text: string, open: number): number {
  let quote = 0;
  for (let i = open + 1; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (quote !== 0) {
      if (c === quote) quote = 0;
    } else if (c === 0x3e) return i;
    else if (c === 0x22 || c === 0x27) quote = c;
  }
  return -1;
}

const decimal = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,2})?$/;

const latitude = /\slat\s*=\s*(?:"([^"]*)"|'([^']*)')/;
const longitude = /\slon\s*=\s*(?:"([^"]*)"|'([^']*)')/;

// attribute is a number of at most this size, either way.
function attribute(tag: string, name: RegExp, most: number): number {
  const found = name.exec(tag);
  const text = (found?.[1] ?? found?.[2] ?? "").trim();
  const value = Number(text);
  if (!decimal.test(text) || !(Math.abs(value) <= most)) refuse("numbers");
  return value;
}

const lowestHeight = -500;
const highestHeight = 9000; // m: no road leads beyond either

function heightOf(text: string): number {
  const trimmed = text.trim();
  if (trimmed === "") return NaN;
  const value = Number(trimmed);
  if (!decimal.test(trimmed) || !(value >= lowestHeight && value <= highestHeight)) refuse("numbers");
  return value;
}
