// The page of all books on this phone. Opening another one starts the app anew; nothing is copied or lost.

import { valueOf } from "../../log/op/merge.ts";
import { knownBooks } from "../../log/book.ts";
import { Database } from "../../log/db/idb.ts";
import { IdbTables } from "../../log/db/idb_tables.ts";
import { recordsOf } from "../../log/db/states.ts";
import { el } from "../../ui/el.ts";
import type { Ctx } from "../../ui/screen.ts";
import { listed, w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "./page.ts";

interface BookLine {
  readonly book: string;
  readonly name: string;
  readonly holds: string;
  readonly open: boolean;
}

export function books(host: HTMLElement, ctx: Ctx): void {
  openPage(ctx, w("books.title"));
  const outcome = new Outcome();
  const list = el("ul", { class: "unmarked stack" });
  host.append(el("div", { class: "stack" }, el("p", {}, w("books.intro")), outcome, list));
  const tell = (failed: string): void => {
    if (failed !== "") outcome.view = { words: failed, failed: true };
  };
  const take = async (book: string): Promise<void> => {
    const failed = await attempt(ctx, () => ctx.book.takeBook(book));
    if (failed === "") location.reload();
    else tell(failed);
  };
  const look = async (): Promise<void> => {
    const all = await lines(ctx);
    if (!ctx.closed.aborted) list.replaceChildren(...all.map((line) => lineNode(line, (book) => void take(book))));
  };
  void attempt(ctx, look).then(tell);
}

function lineNode({ book, name, holds, open }: BookLine, take: (book: string) => void): HTMLElement {
  const button = el("button", { type: "button", class: "button", "aria-label": w("books.takeOf", { name }), on: { click: () => take(book) } }, w("books.take"));
  return el("li", { class: "card row spread" },
    el("p", {}, el("strong", {}, name), el("span", { class: "quiet small block" }, holds)),
    open ? el("strong", {}, w("books.open")) : button);
}

// lines lists the open book first.
async function lines({ book }: Ctx): Promise<readonly BookLine[]> {
  await book.ready;
  const others = (await knownBooks()).filter((each) => each !== book.book);
  return Promise.all([book.book, ...others].map(async (each) => ({
    book: each, name: w("books.name", { mark: each.slice(0, 4) }), holds: await contents(each), open: each === book.book,
  })));
}

const named = 3; // bikes and people that a book is known by

async function contents(book: string): Promise<string> {
  const db = new Database(`rimside-${book}`);
  const [n, states] = await new IdbTables(db).read(["ops", "records"], async (tx) =>
    [await tx.count("ops"), [...(await recordsOf(tx, "bike")), ...(await recordsOf(tx, "person"))]] as const);
  db.drop(await db.handle());
  const names = states.filter((state) => !state.deleted && !state.erased).map((state) => valueOf(state, "name"));
  const known = names.filter((name): name is string => typeof name === "string" && name !== "").slice(0, named);
  if (n === 0) return w("books.empty");
  return known.length === 0 ? w("books.holds", { n }) : w("books.holdsWith", { names: listed(known), n });
}
