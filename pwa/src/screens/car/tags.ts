// Tags for wheels: to print, and to open a wheel by: its code typed, or read by the camera.

import "./car.css";
import "./tags.css";
import { tagged, tagOf } from "../../book/car/tags.ts";
import { textIn } from "../../book/car/known.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import { qrPicture } from "../../ui/qr_picture.ts";
import type { Ctx } from "../../ui/screen.ts";
import { showWay, way } from "../../ui/way.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { printButton } from "../shared/paper.ts";
import { fleetNow } from "./car_book.ts";
import { canSee, watch } from "./tag_eye.ts";

interface Tag {
  readonly wheel: RecordState;
  readonly name: string;
  readonly place: string;
  readonly spare: boolean;
}

class Tags {
  readonly #ctx: Ctx;
  readonly #code = el("input", { class: "entry", type: "text", id: "tag-code", maxlength: 200, autocomplete: "off", autocapitalize: "characters", spellcheck: "false", enterkeyhint: "go" } as never);
  readonly #said = el("p", { role: "status" });
  readonly #several = el("ul", { class: "unmarked ways" });
  readonly #see = el("button", { type: "button", class: "button", on: { click: () => void this.#look() } }, w("tags.camera"));
  readonly #blind = el("button", { type: "button", class: "button", on: { click: () => this.#stop() } }, w("tags.stop"));
  readonly #video = el("video", { class: "tag-video" });
  readonly #only = el("input", { type: "checkbox", on: { change: () => void this.#again() } });
  readonly #list = el("ul", { class: "unmarked tags" });
  readonly #none = el("p", {}, w("tags.none"));
  readonly #again: () => Promise<void>;
  #wheels: readonly RecordState[] = [];
  #watching: AbortController | undefined;
  #asked: string; // the code in the address

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    this.#asked = ctx.path[1] ?? "";
    openPage(ctx, w("tags.title"), { href: "#/car", words: w("place.car") });
    const form = el("form", { class: "card stack noprint" }, el("label", { for: "tag-code" }, w("tags.code")), this.#code,
      el("div", { class: "row" }, el("button", { type: "submit", class: "button primary" }, w("tags.open")), this.#see, this.#blind), this.#video, this.#said, this.#several);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#open(this.#code.value);
    });
    this.#video.muted = this.#video.playsInline = true;
    this.#only.checked = true;
    setHidden(this.#see, !canSee());
    this.#stop();
    host.append(el("div", { class: "stack car" }, form, el("div", { class: "row noprint" }, printButton(), el("label", { class: "row" }, this.#only, w("tags.only"))),
      el("p", { class: "small quiet noprint" }, w("tags.print")), this.#none, this.#list));
    ctx.closed.addEventListener("abort", () => this.#stop());
    this.#again = follow(ctx, () => this.#read(), (words) => setText(this.#said, words));
  }

  async #read(): Promise<void> {
    const fleet = await fleetNow(this.#ctx);
    this.#wheels = (await this.#ctx.book.all("wheel")).filter((wheel) => wheel.fields["retired"]?.shown.value !== true);
    if (this.#ctx.closed.aborted) return;
    if (this.#asked !== "") {
      const code = this.#asked;
      this.#asked = "";
      this.#code.value = code;
      this.#open(code);
    }
    const spares = new Map(fleet.spares.map((spare) => [spare.wheel?.rec, spare]));
    const tags = this.#wheels.map((wheel): Tag => {
      const spare = spares.get(wheel.rec);
      return { wheel, name: spare?.name || textIn(wheel, "name") || w("recKind.wheel"), place: spare?.place ?? "", spare: spare !== undefined };
    });
    const some = this.#only.checked && tags.some(({ spare }) => spare) ? tags.filter(({ spare }) => spare) : tags;
    setHidden(this.#none, tags.length > 0);
    keyed(this.#list, some, ({ wheel }) => wheel.rec, (tag) => this.#tag(tag), (node, { name, place }) => {
      const [, , called, hung] = node.children;
      if (called !== undefined) setText(called, name);
      if (hung !== undefined) setText(hung, place);
    });
  }

  #tag({ wheel, name }: Tag): HTMLLIElement {
    const square = el("div", { class: "tag-square" });
    void this.#draw(square, wheel.rec, name);
    return el("li", {}, square, el("strong", { class: "tag-code" }, tagOf(wheel.rec)), el("span", { class: "named" }), el("span", { class: "small" }));
  }

  // draw leaves the square empty where the app's address is too long for one: the code is enough.
  async #draw(square: HTMLElement, rec: string, name: string): Promise<void> {
    const text = `${location.origin}${location.pathname}#/car/tags/${tagOf(rec)}`;
    const { answer } = await this.#ctx.calc.ask("qr", { text }).catch(() => ({ answer: undefined }));
    if (answer !== undefined) square.replaceChildren(qrPicture(answer.rows, answer.quiet, w("tags.spoken", { name })));
  }

  #open(typed: string): void {
    const found = tagged(this.#wheels, typed);
    const [only] = found;
    if (found.length === 1 && only !== undefined) {
      this.#stop();
      location.hash = `#/wheels/${only.rec}`;
      return;
    }
    setText(this.#said, found.length > 1 ? w("tags.several") : w("tags.unknown", { code: typed.trim() }));
    keyed(this.#several, found, ({ rec }) => rec, () => way(), (node, wheel) => showWay(node, `#/wheels/${wheel.rec}`, textIn(wheel, "name") || w("recKind.wheel"), ""));
  }

  async #look(): Promise<void> {
    this.#stop();
    const watching = new AbortController();
    this.#watching = watching;
    setHidden(this.#video, false);
    setHidden(this.#blind, false);
    await watch(this.#video, watching.signal, (text) => this.#open(text)).catch(() => {
      setText(this.#said, w("tags.cameraNone"));
      this.#stop();
    });
  }

  #stop(): void {
    this.#watching?.abort();
    this.#watching = undefined;
    setHidden(this.#video, true);
    setHidden(this.#blind, true);
  }
}

export function tags(host: HTMLElement, ctx: Ctx): void {
  new Tags(host, ctx);
}
