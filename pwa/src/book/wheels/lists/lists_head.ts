// The first line of a list that comes in: what parts its cells, and which columns it names.

import { csvRows, type CsvRow, type Separator, separators } from "./csv.ts";
import { type Column, columnsOf, idColumn, type Shelf } from "./lists.ts";
import { short } from "./lists_names.ts";

// Head is what the first line says.
export interface Head {
  readonly separator: Separator;
  readonly columns: readonly (Column | typeof idColumn | undefined)[]; // undefined: left out
  readonly unknown: readonly string[];
  readonly width: number;
}

// headOf reads the first line. The separator is the one that finds most columns.
export function headOf(text: string, { kind }: Shelf): Head | undefined {
  const known = new Map<string, Column | typeof idColumn>(columnsOf(kind).map((column) => [column.name, column]));
  known.set(idColumn, idColumn);
  let best: Head | undefined;
  for (const separator of separators) {
    const [first] = csvRows(text, separator);
    const head = first === undefined || first.fault !== undefined ? undefined : columnsIn(first, separator, known);
    if (head !== undefined && count(head) > (best === undefined ? 0 : count(best))) best = head;
  }
  return best;
}

function columnsIn({ cells }: CsvRow, separator: Separator, known: ReadonlyMap<string, Column | typeof idColumn>): Head {
  const met = new Set<string>();
  const unknown: string[] = [];
  const columns = cells.map((cell) => {
    const name = cell.trim().toLowerCase();
    const column = met.has(name) ? undefined : known.get(name); // of two columns with one name the first counts
    if (column === undefined && name !== "") unknown.push(short(cell));
    met.add(name);
    return column;
  });
  return { separator, columns, unknown, width: cells.length };
}

function count({ columns }: Head): number {
  return columns.filter((column) => column !== undefined).length;
}
