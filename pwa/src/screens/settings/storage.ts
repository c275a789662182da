// Says whether the browser keeps what was typed, and asks it to.

import "./storage.css";
import { askToKeep, isKept, type Kept, space, type Space } from "../../log/db/persist.ts";
import { el } from "../../ui/el.ts";
import { define, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";

interface StorageView {
  readonly kept: Kept | "asking";
  readonly answer: "" | "pending" | "refused"; // asked here: the browser asks the person in turn, or said no
  readonly space: Space | undefined;
}

export class StorageCard extends Part<StorageView> {
  readonly #state = el("p");
  readonly #answer = el("p");
  readonly #used = el("p", { class: "quiet" });
  readonly #ask = el("button", {
    type: "button", class: "button", on: { click: () => void this.#look(true) },
  }, w("storage.ask"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" },
      el("h2", {}, w("storage.title")),
      el("div", { class: "stack", role: "status" }, this.#state, this.#answer),
      this.#used, el("p", {}, this.#ask)));
    this.view = { kept: "asking", answer: "", space: undefined };
    void this.#look(false);
  }

  protected override show(view: StorageView): void {
    setText(this.#state, w(`storage.state.${view.kept}`));
    setHidden(this.#answer, view.answer === "");
    setText(this.#answer, view.answer === "pending" ? w("storage.pending") : view.answer === "refused" ? w("storage.refused") : "");
    setHidden(this.#ask, view.kept !== "evictable");
    const room = view.space;
    setText(this.#used, room === undefined ? "" : w("storage.used", { used: fixed(room.usedMB, 1), quota: fixed(room.quotaMB / 1000, 1) }));
  }

  async #look(ask: boolean): Promise<void> {
    // Gecko asks the person, and answers only when they do, which may be never.
    if (ask) this.view = { kept: "evictable", answer: "pending", space: await space() };
    const kept = await (ask ? askToKeep() : isKept());
    this.view = { kept, answer: ask && kept === "evictable" ? "refused" : "", space: await space() };
  }
}

define("rs-storage", StorageCard);
