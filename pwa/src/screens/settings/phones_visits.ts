// What was tried at the server's door lately, the newest first.

import type { PhoneView } from "../../book/settings/phones_view.ts";
import { clockWords } from "../../book/value/when.ts";
import type { Visit } from "../../log/sync/pairing.ts";
import { el } from "../../ui/el.ts";
import { setHidden } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

const shown = 10; // visits

export interface VisitsCard {
  readonly node: HTMLElement;
  readonly list: HTMLElement;
}

export function visitsCard(): VisitsCard {
  const list = el("ul", { class: "unmarked stack small" });
  return { node: el("section", { class: "card stack" }, el("h2", {}, w("visits.title")), list), list };
}

export function showVisits({ node, list }: VisitsCard, visits: readonly Visit[], phones: readonly PhoneView[]): void {
  const lines = visits.slice(0, shown).map((visit) => lineOf(visit, phones)).filter((words) => words !== "");
  list.replaceChildren(...lines.map((words) => el("li", {}, words)));
  setHidden(node, lines.length === 0);
}

const whats = ["paired", "guessed", "slowed", "shut_out", "refused"] as const;

function lineOf({ at, what, device, from }: Visit, phones: readonly PhoneView[]): string {
  const known = whats.find((each) => each === what);
  if (known === undefined) return ""; // a newer server's
  const name = phones.find(({ id }) => id === device)?.name ?? w("phones.unnamed");
  return w("visits.line", { when: clockWords(at, Date.now()), what: w(`visits.what.${known}`, { name }), from });
}
