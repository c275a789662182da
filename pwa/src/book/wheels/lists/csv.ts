// The text of a list as a file: RFC 4180, and what spreadsheets make of it. Nothing here knows what the cells mean.

export const separators = [",", ";", "\t"] as const;
export type Separator = (typeof separators)[number];

export interface CsvRow {
  readonly line: number; // where it begins, from 1, as an editor counts
  readonly cells: readonly string[];
  readonly fault?: "open" | "after"; // a quote that is never closed, or one that is followed by something
}

const byteOrderMark = "\uFEFF"; // without it spreadsheets take the text for something older than UTF-8

// csvText writes rows so that spreadsheets read them.
export function csvText(rows: readonly (readonly string[])[], separator: Separator): string {
  return byteOrderMark + rows.map((cells) => `${cells.map((cell) => quoted(cell, separator)).join(separator)}\r\n`).join("");
}

function quoted(cell: string, separator: Separator): string {
  return cell.includes(separator) || /["\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

// fileText is a file's text; undefined when it is not UTF-8.
export function fileText(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes); // which takes the mark off
  } catch {
    return undefined;
  }
}

// csvRows reads row by row, whatever ends the lines. Empty lines are no rows.
export function* csvRows(text: string, separator: Separator): Generator<CsvRow, void, undefined> {
  const reader = new Reader(text, separator);
  for (let row = reader.row(); row !== undefined; row = reader.row()) {
    if (row.cells.length > 1 || row.cells[0] !== "") yield row;
  }
}

class Reader {
  readonly #text: string;
  readonly #separator: Separator;
  readonly #plain: RegExp; // what needs no quotes
  #at = 0;
  #line = 1;
  #fault: CsvRow["fault"];

  constructor(text: string, separator: Separator) {
    this.#text = text;
    this.#separator = separator;
    this.#plain = new RegExp(`[^${separator}\\r\\n]*`, "y");
  }

  row(): CsvRow | undefined {
    if (this.#at >= this.#text.length) return undefined;
    const line = this.#line;
    const cells: string[] = [];
    this.#fault = undefined;
    do cells.push(this.#cell());
    while (this.#skips(this.#separator));
    this.#endLine();
    const fault = this.#fault as CsvRow["fault"];
    return { line, cells, ...(fault !== undefined && { fault }) };
  }

  #skips(text: string): boolean {
    if (!this.#text.startsWith(text, this.#at)) return false;
    this.#at += text.length;
    return true;
  }

  #endLine(): void {
    if (this.#skips("\r\n") || this.#skips("\r") || this.#skips("\n")) this.#line++;
  }

  #cell(): string {
    if (!this.#skips('"')) return this.#unquoted();
    let cell = "";
    do {
      const end = this.#text.indexOf('"', this.#at);
      const part = this.#text.slice(this.#at, end < 0 ? undefined : end);
      this.#line += part.match(/\r\n|\r|\n/g)?.length ?? 0;
      this.#at += part.length + 1;
      cell += part;
      if (end < 0) this.#fault = "open";
      else if (this.#text[this.#at] === '"') cell += '"';
    } while (this.#fault !== "open" && this.#skips('"'));
    const rest = this.#unquoted();
    if (rest !== "") this.#fault ??= "after";
    return cell + rest;
  }

  #unquoted(): string {
    this.#plain.lastIndex = this.#at;
    const [cell = ""] = this.#plain.exec(this.#text) ?? [];
    this.#at += cell.length;
    return cell;
  }
}

// What a spreadsheet would take for a formula, or for the key that leads to the next cell; also in the wide letters of
// East Asian keyboards. A dash between spaces would be read as "not known".
const formula = /^'*(?:[=+\-@\t\r\n＝＋－＠]|\s+-\s*$)/;
const guarded = /^'+(?:[=+\-@\t\r\n＝＋－＠]|\s+-\s*$)/;

// guard makes a text safe with an apostrophe before it, and unguard takes that off again.
export function guard(text: string): string {
  return formula.test(text) ? `'${text}` : text;
}

export function unguard(cell: string): string {
  return guarded.test(cell) ? cell.slice(1) : cell;
}
