// A sheet over the page: closed by its button, by Escape, or by the phone's way back. What lies below stays as it was.

import "./sheet.css";
import { w } from "../words/index.ts";
import { el } from "./el.ts";
import { setText } from "./part.ts";

let made = 0;

export class Sheet {
  readonly node: HTMLDialogElement;
  readonly #title = el("h2");
  readonly #body = el("div", { class: "stack" });
  readonly #fill: () => readonly Node[];
  #filled = false;

  // fill makes the content when the sheet is opened for the first time.
  constructor(name: string, fill: () => readonly Node[]) {
    this.#fill = fill;
    this.#title.id = `sheet-${++made}`;
    const done = el("button", { type: "button", class: "button", on: { click: () => this.close() } }, w("sheet.done"));
    this.node = el("dialog", { class: `sheet ${name}`, "aria-labelledby": this.#title.id }, el("div", { class: "sheet-head" }, this.#title, done), this.#body);
  }

  // seen is called before each opening's first show: the content exists from here on.
  open(title: string): void {
    this.prepare();
    setText(this.#title, title);
    if (!this.node.open) this.node.showModal();
    this.node.scrollTop = 0;
  }

  prepare(): void {
    if (this.#filled) return;
    this.#filled = true;
    this.#body.append(...this.#fill());
  }

  close(): void {
    this.node.close();
  }

  get isOpen(): boolean {
    return this.node.open;
  }
}
