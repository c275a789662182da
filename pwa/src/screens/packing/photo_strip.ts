// The photos of a bike as it was, side by side.

import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part, setAttr, setText } from "../../ui/part.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";

export interface StripView {
  readonly photos: readonly RecordState[];
  readonly picture: (sha256: string) => Promise<Blob | undefined>;
}

export class PhotoStrip extends Part<StripView> {
  readonly #count = el("p", { class: "small" });
  readonly #list = el("ul", { class: "unmarked row" });

  protected override build(): void {
    this.append(el("div", { class: "stack tight" }, this.#count, this.#list));
  }

  protected override show({ photos, picture }: StripView): void {
    setText(this.#count, photos.length === 0 ? "" : w("trip.photos", { n: photos.length }));
    keyed(this.#list, photos, ({ rec }) => rec, () => new StripItem(), (item, photo, n) => (item.view = { sha256: String(valueOf(photo, "sha256") ?? ""), n: n + 1, picture }));
  }
}

interface ItemView {
  readonly sha256: string;
  readonly n: number;
  readonly picture: StripView["picture"];
}

class StripItem extends Part<ItemView> {
  readonly #image = el("img", { class: "strip" });
  #shown = "";
  #url = "";

  protected override build(): void {
    this.setAttribute("role", "listitem");
    this.append(this.#image);
  }

  protected override show({ sha256, n, picture }: ItemView): void {
    setAttr(this.#image, "alt", w("trip.photoAlt", { n }));
    if (this.#shown !== sha256) void this.#load(sha256, picture);
  }

  async #load(sha256: string, picture: StripView["picture"]): Promise<void> {
    this.#shown = sha256;
    const blob = await picture(sha256).catch(() => undefined);
    if (blob === undefined) return;
    URL.revokeObjectURL(this.#url);
    this.#image.src = this.#url = URL.createObjectURL(blob);
  }

  disconnectedCallback(): void {
    URL.revokeObjectURL(this.#url);
    this.#shown = "";
  }
}

define("rs-strip-item", StripItem);
define("rs-photo-strip", PhotoStrip);
