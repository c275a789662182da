// The page of sources: every constant and formula in use, where it comes from and how well it is founded.

import "./sources.css";
import { sources as all } from "../../contract/sources.ts";
import { type SourceGroup, type SourceLine, sourcesView, type SourcesView } from "../../book/settings/sources_view.ts";
import { el } from "../../ui/el.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { openPage } from "./page.ts";

export function sources(host: HTMLElement, ctx: Ctx): void {
  openPage(ctx, w("sources.title"));
  const view = sourcesView(all);
  host.append(el("div", { class: "stack sources" }, el("p", {}, w("sources.intro")), legend(view), ...view.groups.map(groupNode)));
}

// sourcesWay stands beside the cautions.
export function sourcesWay(): HTMLElement {
  return el("p", {}, el("a", { class: "button", href: "#/settings/sources" }, w("sources.way")));
}

function legend({ counts, total }: SourcesView): HTMLElement {
  return el("dl", { class: "card legend" }, ...counts.map(({ mark, n }) => el("div", {},
    el("dt", {}, w(`sources.mark.${mark}`)), el("dd", {}, w(`sources.means.${mark}`), el("span", { class: "quiet" }, " · ", w("sources.count", { n, total }))))));
}

function groupNode({ title, lines }: SourceGroup): HTMLElement {
  return el("section", { class: "card stack" }, el("h2", {}, title), ...lines.map(lineNode));
}

function lineNode({ words, formula, values, from, mark, usedBy }: SourceLine): HTMLElement {
  const lone = values.length === 1 && values[0]?.words === "" ? values[0].text : "";
  return el("div", { class: "source" },
    el("h3", {}, lone === "" ? words : `${words}: ${lone}`),
    formula === "" ? undefined : el("p", { class: "formula" }, formula),
    lone !== "" || values.length === 0 ? undefined
      : el("dl", { class: "values" }, ...values.map((value) => el("div", {}, el("dt", {}, value.words), el("dd", {}, value.text)))),
    el("p", { class: "small" }, el("strong", {}, w(`sources.mark.${mark}`)), `: ${from}`, el("span", { class: "quiet" }, " · ", w("sources.usedBy", { list: usedBy }))));
}
