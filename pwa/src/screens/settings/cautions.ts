// All cautions in full. Each also stands, shorter, where the act is.

import { el } from "../../ui/el.ts";
import { w } from "../../words/index.ts";

const subjects = [
  "seating", "hookless", "co2", "brakes", "held", "carbon", "torque", "spinning", "flying", "roadside", "tool",
] as const;

export function cautions(): HTMLElement {
  return el("section", { class: "card stack" },
    el("h2", {}, w("cautions.title")),
    el("p", {}, w("cautions.intro")),
    ...subjects.map((subject) => el("div", {},
      el("h3", {}, w(`cautions.${subject}.title`)),
      el("p", {}, w(`cautions.${subject}.text`)))));
}
