// The form that lets this phone in. What is typed stays until it is right; the code is kept nowhere.

import { type Fault, longestLabel, readCode, saidFault, typedFault } from "../../book/settings/phones_view.ts";
import { StorageTrouble } from "../../log/db/idb.ts";
import { el } from "../../ui/el.ts";
import { setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { entry } from "./phones_entry.ts";

export interface PairForm {
  readonly node: HTMLElement;
  readonly name: (label: string) => void; // what this phone is called, unless something else was typed
}

export function pairForm(ctx: Ctx, paired: () => Promise<void>): PairForm {
  const code = entry(w("pair.code"), { inputmode: "numeric" });
  const label = entry(w("pair.label"), { maxlength: longestLabel });
  const button = el("button", { type: "submit", class: "button primary" }, w("pair.title"));
  const busyLine = el("p", { role: "status" });
  const said = el("p", { class: "fault", role: "alert" });
  const node = el("form", { class: "card stack" }, el("h2", {}, w("pair.title")), el("p", {}, w("pair.intro")), code.node, label.node, busyLine, said, el("p", {}, button));
  let busy = false;

  const show = (fault: Fault | undefined): void => {
    code.fault(fault?.field === "code" ? fault.words : "");
    label.fault(fault?.field === "label" ? fault.words : "");
    setText(said, fault?.field === "" ? fault.words : "");
    if (fault?.field === "code") code.input.focus();
    if (fault?.field === "label") label.input.focus();
  };

  const send = async (): Promise<void> => {
    const wrong = typedFault(code.input.value, label.input.value);
    show(wrong);
    if (wrong !== undefined) return;
    busy = true;
    setText(busyLine, w("pair.busy"));
    try {
      await ctx.sync.pairing.pair(readCode(code.input.value), label.input.value.trim());
    } catch (error) {
      show(saidFault(error));
      if (error instanceof StorageTrouble) setText(said, w(`status.cannot.${error.code}`));
      return;
    } finally {
      busy = false;
      setText(busyLine, "");
    }
    code.input.value = "";
    show(undefined);
    await paired();
  };

  node.addEventListener("submit", (event) => {
    event.preventDefault();
    if (!busy) void send();
  });
  const name = (words: string): void => {
    if (label.input.value === "" && document.activeElement !== label.input) label.input.value = words;
  };
  return { node, name };
}
