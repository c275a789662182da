// The first page of Settings: how the book stands, what this phone is told once, and what everybody should have read once.

import { languageNames, themeNames, unitNames } from "../../log/db/settings.ts";
import { Choice, type ChoiceView, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { listen } from "../../ui/part.ts";
import type { Ctx, ScreenSettings } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { installCard, versionCard } from "./about.ts";
import { bookCard } from "./book_card.ts";
import { cautions } from "./cautions.ts";
import { copiesCard } from "./copies.ts";
import { eraseCard } from "./erase_all.ts";
import { MeCard } from "./me.ts";
import { sourcesWay } from "./sources.ts";
import { StorageCard } from "./storage.ts";

export function front(host: HTMLElement, ctx: Ctx): void {
  const units = new Choice();
  const theme = new Choice();
  const language = new Choice();
  const show = (settings: ScreenSettings): void => {
    units.view = unitsView(settings);
    theme.view = themeView(settings);
    language.view = languageView(settings);
  };
  show(ctx.settings);
  ctx.onSettings(show);
  listen(host, chosen, ({ name, value }) => change(ctx, name, value), ctx.closed);
  host.append(el("div", { class: "columns" },
    el("div", { class: "stack" },
      bookCard(ctx), copiesCard(ctx), new MeCard(ctx).node,
      el("div", { class: "card" }, units), el("div", { class: "card" }, theme), el("div", { class: "card" }, language),
      versionCard(), new StorageCard(), installCard(ctx.closed)), // what changes while the page opens stands last
    el("div", { class: "stack" }, cautions(), el("div", { class: "card" }, sourcesWay()), eraseCard())));
}

function unitsView(settings: ScreenSettings): ChoiceView {
  const options = unitNames.map((value) => ({ value, label: w(`settings.unit.${value}`) }));
  return { name: "units", legend: w("settings.units"), options, value: settings.units };
}

function themeView(settings: ScreenSettings): ChoiceView {
  const options = themeNames.map((value) => ({ value, label: w(`settings.theme.${value}`) }));
  return { name: "theme", legend: w("settings.theme"), options, value: settings.theme };
}

function languageView(settings: ScreenSettings): ChoiceView {
  const options = languageNames.map((value) => ({ value, label: w(`settings.language.${value}`) }));
  return { name: "language", legend: w("settings.language"), options, value: settings.language };
}

function change(ctx: Ctx, name: string, value: string): void {
  const units = unitNames.find((each) => each === value);
  const theme = themeNames.find((each) => each === value);
  if (name === "units" && units !== undefined) ctx.changeSettings({ units });
  if (name === "theme" && theme !== undefined) ctx.changeSettings({ theme });
  const language = languageNames.find((each) => each === value);
  if (name === "language" && language !== undefined) ctx.changeSettings({ language });
}
