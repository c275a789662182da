// A button that opens the phone's own chooser of files; where pictures are asked for, it offers the camera too.

import "./pick.css";
import { el, setAttr } from "./el.ts";
import { define, Part, setText } from "./part.ts";

export interface PickedFileView {
  readonly label: string;
  readonly accept: string;
  readonly picked: (file: File) => void;
}

export class PickedFile extends Part<PickedFileView> {
  readonly #words = el("span");
  readonly #input = el("input", { type: "file" });

  protected override build(): void {
    this.append(el("label", { class: "button pick" }, this.#words, this.#input));
    this.#input.addEventListener("change", () => {
      const [file] = this.#input.files ?? [];
      this.#input.value = ""; // the same file may be chosen again
      if (file !== undefined) this.view?.picked(file);
    });
  }

  protected override show({ label, accept }: PickedFileView): void {
    setText(this.#words, label);
    setAttr(this.#input, "accept", accept);
  }
}

define("rs-picked-file", PickedFile);
