// Says plainly that something broke, and lets a person copy the details for whoever can mend it.

import "./trouble.css";
import { w } from "../words/index.ts";
import { el } from "./el.ts";
import { define, Part, setText } from "./part.ts";

export interface TroubleView {
  readonly details: string;
}

export class Trouble extends Part<TroubleView> {
  readonly #details = el("pre", { tabindex: 0 });
  readonly #copied = el("p", { role: "status" });
  readonly #dialog = el("dialog", { "aria-labelledby": "trouble-title" });

  protected override build(): void {
    const button = (words: string, click: () => void, kind = ""): HTMLElement =>
      el("button", { type: "button", class: `button ${kind}`, on: { click } }, words);
    this.#dialog.append(
      el("h2", { id: "trouble-title" }, w("trouble.title")),
      el("p", {}, w("trouble.text")),
      el("details", {}, el("summary", {}, w("trouble.details")), this.#details),
      this.#copied,
      el("div", { class: "row" },
        button(w("trouble.close"), () => this.#dialog.close(), "primary"),
        button(w("trouble.copy"), () => void this.#copy()),
        button(w("trouble.reload"), () => location.reload(), "quiet")));
    this.append(this.#dialog);
  }

  protected override show(view: TroubleView): void {
    // A second fault while the first is open is often its consequence: keep both, the first on top.
    const open = this.#dialog.open;
    setText(this.#details, open ? `${this.#details.textContent}\n\n${view.details}` : view.details);
    if (open) return;
    setText(this.#copied, "");
    this.#dialog.showModal();
  }

  async #copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.#details.textContent);
      setText(this.#copied, w("trouble.copied"));
    } catch {
      this.#details.parentElement?.setAttribute("open", "");
      getSelection()?.selectAllChildren(this.#details);
      setText(this.#copied, w("trouble.marked"));
    }
  }
}

// detailsOf writes down what is known of an error, for people who mend programs.
export function detailsOf(error: unknown): string {
  const version = document.documentElement.dataset["version"] ?? "";
  const what = error instanceof Error ? `${error.name}: ${error.message}\n${error.stack ?? ""}` : String(error);
  return `${what}\nversion ${version}\n${location.hash}\n${navigator.userAgent}`;
}

define("rs-trouble", Trouble);
