import { equal, test } from "../../ui/testing.ts";
import { type Breaks, History } from "../sync/history_play.test.ts";
import type { LogRow, Tables, Tx } from "../db/tables.ts";
import { minAt, type StoredOp } from "./op.ts";

const histories = 120;

test("history: whatever happened, everybody ends with the same, and nothing is lost", async () => {
  for (let seed = 0; seed < histories; seed++) equal(await new History(seed).play(), "", `seed ${seed}`);
});

// found plays histories with broken phones until one of them is found out.
async function found(breaks: () => Breaks): Promise<string> {
  for (let seed = 0; seed < histories; seed++) {
    const wrong = await new History(seed, breaks()).play();
    if (wrong !== "") return wrong;
  }
  return "";
}

// changed alters what one method of every transaction gives or takes.
function changed(tables: Tables, alter: (tx: Tx) => Partial<Tx>): Tables {
  const broken = (tx: Tx): Tx => new Proxy(tx, {
    get: (target, name) => {
      const method: unknown = Reflect.get(alter(target), name) ?? Reflect.get(target, name);
      return typeof method === "function" ? method.bind(target) : method;
    },
  });
  return {
    name: tables.name,
    read: (stores, work) => tables.read(stores, (tx) => work(broken(tx))),
    write: (stores, work) => tables.write(stores, (tx) => work(broken(tx))),
  };
}

const rewritten = async (answer: Response, change: (text: string) => string): Promise<Response> =>
  new Response(change(await answer.text()), { status: answer.status });

const broken: Readonly<Record<string, () => Breaks>> = {
  "one cursor and one list for all logs": () => ({
    fetch: (fetch) => async (path, init) => rewritten(await fetch(path.replace(/&log=[0-9a-f]*/, "&log="), init), (text) =>
      text.replace(/"log":"[0-9a-f]*"/, `"log":"${"0".repeat(32)}"`)),
  }),
  "no bump above what is known": () => ({
    tables: (tables) => changed(tables, (tx) => ({
      opsOf: async (recs) => (await tx.opsOf(recs)).map((rows) => rows.map((row) => ({ ...row, at: 0 }))),
    })),
  }),
  "cursor moved before the answer": () => ({
    fetch: (fetch, tables) => async (path, init) => {
      if (!path.startsWith("api/ops?")) return fetch(path, init);
      const query = new URLSearchParams(path.split("?")[1]);
      const ahead = Number(query.get("since")) + 1;
      await tables.write(["logs"], async (tx) => {
        const [row] = await tx.get("logs", [query.get("log") ?? ""]);
        if (row !== undefined) tx.put("logs", [{ ...row, cursor: ahead } satisfies LogRow]);
      });
      return fetch(path, init);
    },
  }),
  "the value that arrived last wins": () => ({ tables: byArrival }),
  "a pull that skips one": () => ({
    fetch: (fetch) => async (path, init) => {
      const answer = await fetch(path, init);
      return path.startsWith("api/ops?") ? rewritten(answer, skipping) : answer;
    },
  }),
};

function skipping(text: string): string {
  const page = JSON.parse(text) as { ops: { id: string }[]; via: object[] };
  const at = page.ops.findIndex((op) => op.id.startsWith("7"));
  if (at >= 0) {
    page.ops.splice(at, 1);
    page.via.splice(at, 1);
  }
  return JSON.stringify(page);
}

// byArrival takes the order in which ops came to this phone for their times.
function byArrival(tables: Tables): Tables {
  const arrived = new Map<string, number>();
  const timed = (row: StoredOp): StoredOp => ({ ...row, bytes: row.bytes.replace(/"at":\d+/, `"at":${minAt + (arrived.get(row.id) ?? 0)}`) });
  return changed(tables, (tx) => ({
    opsOf: async (recs) => (await tx.opsOf(recs)).map((rows) => rows.map(timed)),
    put: (store, rows) => {
      if (store === "ops") for (const { id } of rows as readonly StoredOp[]) if (!arrived.has(id)) arrived.set(id, arrived.size);
      tx.put(store, rows);
    },
  }));
}

for (const [what, breaks] of Object.entries(broken)) {
  test(`history: found out: ${what}`, async () => {
    equal((await found(breaks)) !== "", true, `${histories} histories`);
  });
}

test("history: the means to break a phone break nothing by themselves", async () => {
  const whole: Breaks = { tables: (tables) => changed(tables, () => ({})), fetch: (fetch) => async (path, init) => rewritten(await fetch(path, init), (text) => text) };
  for (let seed = 0; seed < 20; seed++) equal(await new History(seed, whole).play(), "", `seed ${seed}`);
});
