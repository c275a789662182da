import { equal, test } from "../ui/testing.ts";
import { type Breaks, History } from "./history_play.test.ts";
import type { LogRow, Tables, Tx } from "./tables.ts";
import type { FieldState, RecordState } from "./merge.ts";

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
      get: async (store, keys) => (await tx.get(store, keys)).map((row) => (store === "records" && row !== undefined ? { ...row, newest: 0 } : row)),
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

// byArrival shows of several values the one whose op came last to this phone.
function byArrival(tables: Tables): Tables {
  const arrived = new Map<string, number>();
  const shuffled = (field: FieldState): FieldState => {
    const [shown, ...others] = [field.shown, ...field.others].sort((a, b) => (arrived.get(b.op) ?? 0) - (arrived.get(a.op) ?? 0));
    return shown === undefined ? field : { shown, others };
  };
  const state = (row: RecordState): RecordState => ({ ...row, fields: Object.fromEntries(Object.entries(row.fields).map(([name, field]) => [name, shuffled(field)])) });
  return changed(tables, (tx) => ({
    put: (store, rows) => {
      if (store === "ops") for (const row of rows) arrived.set((row as { id: string }).id, arrived.size);
      tx.put(store, store === "records" ? (rows as readonly RecordState[]).map(state) as never : rows);
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
