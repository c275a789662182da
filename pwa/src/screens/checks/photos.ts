// Photos of a finding: taken here, or shown from the book.

import { PickedFile } from "../../ui/picked_file.ts";
import type { Picture } from "../../book/checks/walk.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export interface PhotosView {
  readonly photos: readonly Picture[];
  readonly picture: (sha256: string) => Promise<Blob | undefined>;
  readonly away: boolean; // may be taken away, and others taken
}

export const photoTaken = actName<File>("rs-photo-taken");
export const photoAway = actName<string>("rs-photo-away");

export class Photos extends Part<PhotosView> {
  readonly #list = el("ul", { class: "unmarked photos" });
  readonly #take = new PickedFile();

  protected override build(): void {
    this.#take.view = { label: w("checks.photo"), accept: "image/*", picked: (file) => this.act(photoTaken, file) };
    this.append(el("div", { class: "stack" }, this.#list, this.#take));
  }

  protected override show({ photos, picture, away }: PhotosView): void {
    setHidden(this.#take, !away);
    setHidden(this.#list, photos.length === 0);
    keyed(this.#list, photos, ({ rec }) => rec, () => new PhotoItem(), (item, photo, n) => (item.view = { photo, n: n + 1, picture, away }));
  }
}

interface ItemView {
  readonly photo: Picture;
  readonly n: number;
  readonly picture: PhotosView["picture"];
  readonly away: boolean;
}

class PhotoItem extends Part<ItemView> {
  readonly #image = el("img");
  readonly #gone = el("p", { class: "small quiet" }, w("checks.photoGone"));
  readonly #away = el("button", { type: "button", class: "button", on: { click: () => this.act(photoAway, this.view?.photo.rec ?? "") } }, "✕");
  #shown = "";
  #url = "";

  protected override build(): void {
    setAttr(this, "role", "listitem");
    setHidden(this.#gone, true);
    this.append(this.#image, this.#gone, this.#away);
  }

  protected override show({ photo, n, picture, away }: ItemView): void {
    setAttr(this.#image, "alt", w("checks.photoAlt", { n }));
    setAttr(this.#image, "width", photo.width);
    setAttr(this.#image, "height", photo.height);
    setAttr(this.#away, "aria-label", w("checks.photoAway", { n }));
    setHidden(this.#away, !away);
    if (this.#shown !== photo.sha256) void this.#load(photo.sha256, picture);
  }

  async #load(sha256: string, picture: PhotosView["picture"]): Promise<void> {
    this.#shown = sha256;
    const blob = await picture(sha256).catch(() => undefined);
    setHidden(this.#gone, blob !== undefined);
    setHidden(this.#image, blob === undefined);
    if (blob === undefined) return;
    URL.revokeObjectURL(this.#url);
    this.#url = URL.createObjectURL(blob);
    this.#image.src = this.#url;
  }

  disconnectedCallback(): void {
    URL.revokeObjectURL(this.#url);
    this.#shown = "";
  }
}

define("rs-photo-item", PhotoItem);
define("rs-photos", Photos);
