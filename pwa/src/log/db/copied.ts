// When a copy of the book last left this phone. Kept with the book, in the store "meta".

import type { Tables } from "./tables.ts";

const name = "copied";

export async function noteCopied(tables: Tables, now: number): Promise<void> {
  await tables.write(["meta"], async (tx) => tx.put("meta", [{ name, value: now }]));
}

// looked is how many ops are looked at for the first entry. Their ids are drawn, so these are any of them: in a large book
// some are nearly as old as the first.
const looked = 500;

// copiedAt gives the time of the last copy, or of the first entry when there was never one.
export async function copiedAt(tables: Tables): Promise<{ readonly at: number; readonly never: boolean } | undefined> {
  return tables.read(["meta", "ops"], async (tx) => {
    const [row] = await tx.get("meta", [name]);
    const some = await tx.page("ops", "", looked);
    if (some.length === 0) return undefined;
    if (typeof row?.value === "number") return { at: row.value, never: false };
    return { at: Math.min(...some.map((op) => op.at)), never: true };
  });
}
