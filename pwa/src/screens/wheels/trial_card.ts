// The card of a bike's page that leads to its trials.

import { readTrialDraft } from "../../book/wheels/trial.ts";
import { el } from "../../ui/el.ts";
import { setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

export function trialCard(ctx: Ctx, rec: string): HTMLElement {
  const link = el("a", { class: "button", href: `#/wheels/trial/${rec}` }, w("trial.open"));
  void ctx.drafts.load(`trial/${rec}`).then((stored) => {
    if (readTrialDraft(stored).order.length > 0) setText(link, w("trial.openOn"));
  });
  return el("section", { class: "card stack" }, el("h2", {}, w("trial.card")), el("p", {}, w("trial.cardText")), link);
}
