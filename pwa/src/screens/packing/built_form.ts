// Writing down what a bike is like before it comes apart: figures, run-out, photos. What is typed stays on the phone at once; it
// belongs to the measurements of the bike and of its wheels.

import { photosOf } from "../../book/packing/as_built.ts";
import type { Step } from "../../book/packing/pack_view.ts";
import { sides, type Side } from "../../book/pressure/answer.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { readSlot, type Slot, slotRange, slotsOf, slotUnit } from "../../book/wheels/measure_slots.ts";
import { type Typed as Texts, typedFrom } from "../../book/wheels/measure_form.ts";
import { type Change, newRec } from "../../log/book_log.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { define, listen, Part } from "../../ui/part.ts";
import { PickedFile } from "../../ui/picked_file.ts";
import type { Ctx } from "../../ui/screen.ts";
import { shrunk } from "../../ui/shrink.ts";
import { listed, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { attempt } from "../shared/follow.ts";
import type { PackedBike } from "./packed.ts";
import { PhotoStrip } from "./photo_strip.ts";

export interface BuiltView {
  readonly ctx: Ctx;
  readonly trip: string;
  readonly bike: PackedBike;
  readonly step: Step;
}

// Line is one figure to type.
interface Line {
  readonly id: string;
  readonly label: string;
  readonly slot: Slot;
  readonly set: Readonly<Record<string, string>>; // what its entry says besides
}

const lengths = { saddle_height: "saddle", saddle_setback: "setback", reach: "reach", spacer_stack: "stack", bar_angle: "bar" } as const;

function linesOf({ bike, step }: BuiltView): readonly Line[] {
  const slots = slotsOf("as_built");
  const figures = Object.entries(lengths).flatMap(([key, id]): Line[] => {
    const slot = slots.find((each) => each.id === id);
    if (slot === undefined || !(step.as_built ?? []).some((each) => each === key)) return [];
    return [{ id, label: w(`measureSlot.${id}`), slot, set: { of: bike.rec, what: "as_built", ...(slot.place !== undefined && { place: slot.place }) } }];
  });
  const [runout] = slotsOf("rotor_runout");
  const ends = step.id === "as_built" ? sides : sides.filter((side) => step.id.startsWith(side));
  if (runout === undefined || !(step.as_built ?? []).includes("rotor_runout")) return figures;
  return [...figures, ...ends.flatMap((side): Line[] => {
    const wheel = bike.wheels[side]?.rec;
    if (wheel === undefined) return [];
    return [{ id: `runout ${side}`, label: step.id === "as_built" ? runoutLabel(side) : w("trip.runoutNow"), slot: runout, set: { of: wheel, wheel, what: "rotor_runout", side } }];
  })];
}

function runoutLabel(side: Side): string {
  return w("trip.asBuiltRunout", { side: w(`side.${side}`) });
}

export class BuiltForm extends Part<BuiltView> {
  readonly #fields = el("div", { class: "fields" });
  readonly #outcome = new Outcome();
  readonly #strip = new PhotoStrip();
  readonly #take = new PickedFile();
  #texts: Texts = {};
  #faults: Readonly<Record<string, string>> = {};
  #loaded = "";

  protected override build(): void {
    this.append(el("div", { class: "stack" }, this.#fields,
      el("p", {}, el("button", { type: "button", class: "button", on: { click: () => void this.#save() } }, w("trip.asBuiltSave"))), this.#outcome, this.#strip, this.#take));
    listen(this, typed, ({ id, text }, event) => {
      event.stopPropagation();
      this.#texts = { ...this.#texts, [id]: text };
      this.#faults = {};
      void this.view?.ctx.drafts.save(this.#draft, this.#texts);
      if (this.view !== undefined) this.show(this.view);
    });
  }

  get #draft(): string {
    return `built/${this.view?.trip ?? ""}/${this.view?.bike.rec ?? ""}/${this.view?.step.id ?? ""}`;
  }

  protected override show(view: BuiltView): void {
    const { ctx, bike, step } = view;
    if (this.#loaded !== this.#draft) void this.#load(this.#draft);
    const unit = ctx.settings.units;
    keyed(this.#fields, linesOf(view), ({ id }) => id, () => new Field(), (field, { id, label, slot }) => {
      field.view = { id, label, spoken: label, text: this.#texts[id] ?? "", unit: slotUnit(slot, unit), range: slotRange(slot, unit), fault: this.#faults[id] ?? "", signed: slot.field === "degrees", step: 0 };
    });
    const takes = step.as_built?.includes("photos") === true;
    this.#strip.hidden = this.#take.hidden = !takes;
    if (!takes) return;
    this.#take.view = { label: w("trip.photo"), accept: "image/*", picked: (file) => void this.#photo(file) };
    this.#strip.view = { photos: photosOf(bike.built), picture: (sha256) => ctx.sync.getPhoto(sha256) };
  }

  async #load(draft: string): Promise<void> {
    this.#loaded = draft;
    this.#texts = {};
    const stored = typedFrom(await this.view?.ctx.drafts.load(draft));
    if (this.#loaded !== draft || this.view === undefined) return;
    this.#texts = { ...stored, ...this.#texts };
    this.show(this.view);
  }

  async #save(): Promise<void> {
    const view = this.view;
    if (view === undefined) return;
    const { ctx, bike } = view;
    const faults: Record<string, string> = {};
    const [changes, told]: [Change[], string[]] = [[], []];
    for (const { id, label, slot, set } of linesOf(view)) {
      const read = readSlot(slot, this.#texts[id] ?? "", ctx.settings.units);
      if ("fault" in read) faults[id] = read.fault;
      else if (typeof read.value === "number" && slot.as !== undefined) {
        changes.push({ rec: newRec(), kind: "measure", set: { ...set, bike: bike.rec, day: dayOf(Date.now()), [slot.as]: read.value } });
        told.push(w("trip.builtOf", { what: label, value: plain(read.value), unit: slotUnit(slot, ctx.settings.units) }));
      }
    }
    this.#faults = faults;
    this.show(view);
    if (Object.keys(faults).length > 0) return this.querySelector<HTMLElement>("[aria-invalid]")?.focus();
    if (changes.length === 0) return void (this.#outcome.view = { words: w("trip.asBuiltEmpty") });
    const failed = await attempt(ctx, () => ctx.book.save(changes, { name: this.#draft, value: {} }));
    if (failed === "") this.#texts = {};
    this.show(this.view ?? view);
    this.#outcome.view = { words: failed || w("trip.asBuiltKept", { values: listed(told) }), failed: failed !== "" };
  }

  async #photo(file: File): Promise<void> {
    const view = this.view;
    if (view === undefined) return;
    const { ctx, bike, trip } = view;
    let failed = "";
    try {
      const { blob, width, height } = await shrunk(file);
      const sha256 = await ctx.sync.putPhoto(blob);
      failed = await attempt(ctx, () => ctx.book.save([{ rec: newRec(), kind: "photo", set: { of: trip, bike: bike.rec, day: dayOf(Date.now()), sha256, width, height } }]));
    } catch {
      failed = w("trip.photoFault");
    }
    this.#outcome.view = { words: failed, failed: failed !== "" };
  }
}

define("rs-built-form", BuiltForm);
