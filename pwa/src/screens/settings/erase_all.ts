// Erase everything here: this phone's copy of the open book. The one thing that asks first, and wants a word typed.

import { forgetBook } from "../../log/db/forget.ts";
import { StorageTrouble } from "../../log/db/idb.ts";
import { el } from "../../ui/el.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { handCopy } from "./hand_copy.ts";
import { openPage } from "./page.ts";

export function eraseAll(host: HTMLElement, ctx: Ctx): void {
  openPage(ctx, w("erase.title"));
  const holds = el("p");
  const unsent = el("p", { class: "notice care" });
  const copied = el("p", { role: "status" });
  const failed = el("p", { class: "fault", role: "alert" });
  const copy = el("button", { type: "button", class: "button", on: { click: () => void saveCopy() } }, w("erase.copy"));
  const word = el("input", { class: "entry", type: "text", id: "erase-word", autocomplete: "off", spellcheck: "false", enterkeyhint: "done" });
  const button = el("button", { type: "submit", class: "button" }, w("erase.button"));
  const form = el("form", { class: "card stack" },
    el("label", { for: "erase-word" }, w("erase.type", { word: w("erase.word") })), word, failed, el("p", {}, button));

  const saveCopy = async (): Promise<void> => {
    copy.disabled = true;
    let said = "";
    const trouble = await attempt(ctx, async () => {
      const { handed, name } = await handCopy(ctx.book);
      said = handed === "saved" ? w("erase.saved", { name }) : handed === "shared" ? w("erase.shared") : w("erase.kept");
    });
    copy.disabled = false;
    setText(copied, trouble || said);
  };

  const erase = async (): Promise<void> => {
    if (word.value.trim().toLocaleUpperCase() !== w("erase.word")) {
      setText(failed, w("erase.wrong", { word: w("erase.word") }));
      word.focus();
      return;
    }
    button.disabled = true;
    setText(failed, w("erase.busy"));
    try {
      await forgetBook(ctx.book.book, startAfresh);
    } catch (error) {
      button.disabled = false;
      setText(failed, error instanceof StorageTrouble && error.code === "silent" ? w("erase.open") : w("status.cannot.refused"));
    }
  };

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void erase();
  });

  const show = (entries: number): void => {
    const { unsent: waiting, lastMet } = ctx.sync.state;
    setText(holds, entries === 0 ? w("erase.empty") : w("erase.holds", { n: entries }));
    setText(unsent, lastMet === undefined ? w("erase.never") : waiting > 0 ? w("erase.unsent", { n: waiting }) : w("erase.sent"));
    unsent.classList.toggle("care", lastMet === undefined || waiting > 0);
    setHidden(unsent, entries === 0);
  };
  host.append(el("div", { class: "stack" },
    el("section", { class: "card stack" }, el("p", {}, w("erase.intro")), el("p", {}, w("erase.stays")), holds, unsent, el("p", {}, copy), copied),
    form));
  const look = follow(ctx, async () => {
    await ctx.book.ready;
    show(await (await ctx.book.tables).read(["ops"], (tx) => tx.count("ops")));
  }, (words) => setText(failed, words));
  ctx.closed.addEventListener("abort", ctx.sync.on(() => void look()));
}

// startAfresh opens the app as on the first day.
function startAfresh(): void {
  history.replaceState(null, "", "#/pressure");
  location.reload();
}

// eraseCard leads here from the end of Settings.
export function eraseCard(): HTMLElement {
  return el("section", { class: "card stack" }, el("h2", {}, w("erase.title")), el("p", { class: "small quiet" }, w("erase.intro")),
    el("p", {}, el("a", { class: "button quiet flush", href: "#/settings/erase" }, w("erase.title"))));
}
