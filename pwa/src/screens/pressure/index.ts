import { el } from "../../ui/el.ts";
import type { Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

export const screen: Screen = {
  name: "pressure",
  title: () => w("place.pressure"),
  open(host, ctx) {
    const save = (): void => void ctx.drafts.save("pressure", input.value);
    const input = el("input", { class: "entry", inputmode: "decimal", on: { input: save } });
    const fill = (value: unknown): void => {
      if (typeof value === "string") input.value = value;
    };
    void ctx.drafts.load("pressure").then(fill);
    const follow = ctx.drafts.follow("pressure", fill, () => document.hasFocus() && document.activeElement === input);
    ctx.closed.addEventListener("abort", follow);
    host.append(el("label", { class: "stack" }, w("pressure.weight"), input));
  },
};
