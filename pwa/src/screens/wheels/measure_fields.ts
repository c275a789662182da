// The fields of the form for one measurement.

import type { Form } from "../../book/wheels/measure_form.ts";
import type { What } from "../../book/wheels/measure.ts";
import { type Slot, slotRange, slotsOf, slotUnit } from "../../book/wheels/measure_slots.ts";
import { placeWords } from "../../book/wheels/measure_words.ts";
import type { PressureUnit } from "../../book/value/quantity.ts";
import { Choice } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { DayEntry } from "../../ui/entry.ts";
import { Field } from "../../ui/field.ts";
import { define, Part } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import { w } from "../../words/index.ts";

export interface FieldsView {
  readonly what: What;
  readonly form: Form;
  readonly unit: PressureUnit;
  readonly gauges: readonly { readonly value: string; readonly label: string }[];
}

export class MeasureFields extends Part<FieldsView> {
  readonly #fields = new Map<string, Field>();
  readonly #day = new DayEntry();
  readonly #way = new Choice();
  readonly #place = new Field();
  readonly #gauge = new Picker();
  readonly #list = el("div", { class: "fields" });

  protected override build(): void {
    this.append(this.#list);
  }

  protected override show(view: FieldsView): void {
    const { what, form, unit, gauges } = view;
    if (this.#fields.size === 0) this.#make(what);
    for (const slot of slotsOf(what)) fill(this.#fields.get(slot.id), slot, form, unit);
    const [day = "", place = "", gauge = ""] = [form.texts["day"], form.texts["place"], form.texts["gauge"]];
    this.#day.view = { id: "day", label: w("measure.day"), text: day, fault: form.faults["day"] ?? "" };
    if (what === "rim_runout") {
      const options = ["sideways", "radial"].map((value) => ({ value, label: placeWords(value) }));
      this.#way.view = { name: "way", legend: w("measure.way"), options, value: form.texts["way"] ?? "sideways" };
    }
    const label = w("measure.place");
    if (what === "as_built") this.#place.view = { id: "place", label, spoken: label, text: place, unit: "", range: w("measure.placeHint"), fault: form.faults["place"] ?? "", signed: true, step: 0 };
    if (what === "gauge_error") {
      const options = [{ value: "", label: w("measure.gaugeNone") }, ...gauges];
      this.#gauge.view = { name: "gauge", label: w("measure.gauge"), spoken: w("measure.gauge"), options, value: gauge };
    }
  }

  #make(what: What): void {
    for (const { id } of slotsOf(what)) {
      const field = new Field();
      if (id === "other") this.#list.append(this.#place);
      this.#list.append(field);
      this.#fields.set(id, field);
    }
    if (what === "rim_runout") this.#list.append(this.#way);
    if (what === "gauge_error") this.#list.append(this.#gauge);
    this.#list.append(this.#day);
  }

  // go takes the person to a field.
  go(id: string): void {
    (id === "day" ? this.#day : id === "place" ? this.#place : this.#fields.get(id))?.focus();
  }
}

function fill(field: Field | undefined, slot: Slot, { texts, faults }: Form, unit: PressureUnit): void {
  if (field === undefined) return;
  const label = w(`measureSlot.${slot.id}`);
  const range = slot.id === "min" ? w("measure.minHint") : slotRange(slot, unit);
  field.view = {
    id: slot.id, label, spoken: label, text: texts[slot.id] ?? "", unit: slotUnit(slot, unit), range,
    fault: faults[slot.id] ?? "", signed: slot.field === "degrees", step: 0,
  };
}

define("rs-measure-fields", MeasureFields);
