// The page that adds a thing, in few fields; what is typed stays until it is added.

import { isThing, type ThingKind } from "../../book/wheels/thing_fields.ts";
import { newChanges, newFields } from "../../book/wheels/new_thing.ts";
import { askedOf } from "../../book/wheels/thing_view.ts";
import { readTyped } from "../../book/value/typed_value.ts";
import { newRec } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { typed } from "../../ui/field.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, tellerFor } from "../shared/follow.ts";
import { Form } from "../shared/form.ts";

export function newThing(host: HTMLElement, ctx: Ctx): void {
  const [, kind = ""] = ctx.path;
  void open(host, ctx, isThing(kind) ? kind : "bike");
}

async function open(host: HTMLElement, ctx: Ctx, kind: ThingKind): Promise<void> {
  openPage(ctx, w(`things.addA.${kind}`), { href: "#/wheels", words: w("place.wheels") });
  const draft = `new/${kind}`;
  const texts = new Map<string, string>();
  const faults = new Map<string, string>();
  const form = new Form();
  const failed = el("p", { class: "fault", role: "alert" });
  host.append(el("form", { class: "stack", on: { submit: (event) => {
    event.preventDefault();
    void add();
  } } },
  el("section", { class: "card stack" }, form, failed, el("p", {}, el("button", { type: "submit", class: "button primary" }, w("things.addIt")))),
  el("p", { class: "small quiet" }, w("things.later"))));
  const stored = await ctx.drafts.load(draft);
  for (const [id, text] of Object.entries((stored ?? {}) as Record<string, unknown>)) if (typeof text === "string") texts.set(id, text);
  const teller = await tellerFor(ctx, []);
  const show = (): void => {
    form.view = newFields[kind].map((id) => askedOf(id.slice(0, id.indexOf(".")), id.slice(id.indexOf(".") + 1), undefined, { texts, faults }, teller, []));
  };
  const keep = (id: string, text: string): void => {
    texts.set(id, text);
    faults.delete(id);
    void ctx.drafts.save(draft, Object.fromEntries(texts));
    show();
  };
  listen(host, typed, ({ id, text }) => keep(id, text), ctx.closed);
  listen(host, chosen, ({ name, value }) => keep(name, value), ctx.closed);
  show();

  const values = (): ReadonlyMap<string, Json> => {
    const read = new Map<string, Json>();
    faults.clear();
    newFields[kind].forEach((id, n) => {
      const [part = "", field = ""] = id.split(".");
      const value = readTyped(part, field, texts.get(id) ?? "", ctx.settings.units);
      if ("fault" in value) faults.set(id, value.fault);
      else if (n === 0 && value.value === null) faults.set(id, w("fault.missing"));
      else read.set(id, value.value);
    });
    return read;
  };

  const add = async (): Promise<void> => {
    const read = values();
    show();
    if (faults.size > 0) return toFault(form);
    const { rec, changes } = newChanges(kind, read, newRec);
    const trouble = await attempt(ctx, () => ctx.book.save(changes));
    setText(failed, trouble);
    if (trouble !== "") return;
    texts.clear();
    await ctx.drafts.save(draft, {});
    location.replace(`#/wheels/${rec}`); // the way back leads to the list, not to an empty form
  };
}

function toFault(form: Form): void {
  const field = form.querySelector<HTMLElement>("[aria-invalid]");
  field?.focus();
  field?.scrollIntoView({ block: "center" });
}
