// CO2 and pump at the roadside: what the whole cartridge does to this tyre, and where to stop.

import "./car.css";
import { gasLines, strokesWords } from "../../book/car/gas_view.ts";
import { type Dimension, parse, showKpa } from "../../book/value/quantity.ts";
import type { Co2Answer, PumpAnswer } from "../../contract/contract.ts";
import { co2Fields } from "../../contract/co2_fields.ts";
import { pumpFields } from "../../contract/pump_fields.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";

type Typed = "cartridge" | "bead" | "width" | "c" | "m" | "limit" | "stroke" | "from" | "to";

const usual: Readonly<Record<Typed, string>> = { cartridge: "16", bead: "622", width: "40", c: "15", m: "0", limit: "", stroke: "60", from: "0", to: "" };

class GasPage {
  readonly #ctx: Ctx;
  readonly #fields = new Map<Typed, Field>();
  readonly #start = new Choice();
  readonly #said = el("div", { class: "stack", role: "status" });
  readonly #strokes = el("p", { role: "status" });
  #texts: Record<Typed, string> = { ...usual };
  #before: "flat" | "standing" = "standing";
  #round = 0;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("gas.title"), { href: "#/car", words: w("place.car") });
    for (const id of Object.keys(usual) as Typed[]) this.#fields.set(id, new Field());
    const field = (id: Typed): Field => this.#fields.get(id) ?? new Field();
    const both = (["bead", "width", "m"] as const).map(field);
    host.append(el("div", { class: "stack car" },
      el("section", { class: "card stack" }, el("div", { class: "fields" }, ...both)),
      el("section", { class: "card stack" }, el("h2", {}, w("gas.cartridgeTitle")), el("div", { class: "fields" }, ...(["cartridge", "c", "limit"] as const).map(field)), this.#start, this.#said),
      el("section", { class: "card stack" }, el("h2", {}, w("gas.pumpTitle")), el("div", { class: "fields" }, ...(["stroke", "from", "to"] as const).map(field)), this.#strokes)));
    listen(host, typed, ({ id, text }) => this.#type(id as Typed, text), ctx.closed);
    listen(host, chosen, ({ value }) => this.#choose(value === "flat" ? "flat" : "standing"), ctx.closed);
    ctx.onSettings(() => void this.#ask());
    void this.#ask();
  }

  #type(id: Typed, text: string): void {
    this.#texts = { ...this.#texts, [id]: text };
    void this.#ask();
  }

  #choose(before: "flat" | "standing"): void {
    this.#before = before;
    void this.#ask();
  }

  // read is a typed number in the calculator's unit; undefined while it cannot be read or lies outside the bounds.
  #read(id: Typed): number | undefined {
    const value = this.#value(id);
    const { min, max } = bounds[id];
    return value === undefined || value < min || value > max ? undefined : value;
  }

  #value(id: Typed): number | undefined {
    const { dimension, unit, scale } = quantities[id];
    const parsed = parse(this.#texts[id], dimension, unit ?? this.#ctx.settings.units);
    if (!("si" in parsed)) return undefined;
    return id === "c" ? Math.round((parsed.si - 273.15) * 1e6) / 1e6 : parsed.si * scale;
  }

  async #ask(): Promise<void> {
    const round = ++this.#round;
    this.#showFields();
    const [gas, pump] = await Promise.all([this.#gas(), this.#pump()]);
    if (round !== this.#round || this.#ctx.closed.aborted) return;
    const { units } = this.#ctx.settings;
    const pressure = (kpa: number): string => w("value.with", { value: showKpa(kpa, units), unit: w(`unit.${units}`) });
    const lines = gas === undefined ? [] : gasLines(gas, this.#read("cartridge") ?? 1, pressure);
    this.#said.replaceChildren(...lines.map(({ words, care }) => el("p", { class: care ? "notice care" : "" }, words)));
    this.#strokes.textContent = pump === undefined ? "" : strokesWords(pump.strokes_likely);
    setHidden(this.#strokes, pump === undefined);
  }

  async #gas(): Promise<Co2Answer | undefined> {
    const [cartridge, bead, width, c, m, limit] = (["cartridge", "bead", "width", "c", "m", "limit"] as const).map((id) => this.#read(id));
    if (cartridge === undefined || bead === undefined || width === undefined || c === undefined || m === undefined || limit === undefined) return undefined;
    return (await this.#ctx.calc.ask("co2", { cartridge_g: cartridge, bead_seat_mm: bead, width_mm: width, start: this.#before, c, m, limit_kpa: limit })).answer;
  }

  async #pump(): Promise<PumpAnswer | undefined> {
    const [stroke, bead, width, m, from, to] = (["stroke", "bead", "width", "m", "from", "to"] as const).map((id) => this.#read(id));
    if (stroke === undefined || bead === undefined || width === undefined || m === undefined || from === undefined || to === undefined) return undefined;
    return (await this.#ctx.calc.ask("pump", { stroke_ml: stroke, bead_seat_mm: bead, width_mm: width, from_kpa: from, to_kpa: to, m })).answer;
  }

  #range(id: Typed): string {
    return w("field.range", this.#bounds(id));
  }

  // Bounds are rounded inwards, so that what is promised is also accepted.
  #bounds(id: Typed): { low: string; high: string; unit: string } {
    const { units } = this.#ctx.settings;
    const { min, max } = bounds[id];
    if (quantities[id].dimension === "pressure") return { low: showKpa(min, units, "up"), high: showKpa(max, units, "down"), unit: w(`unit.${units}`) };
    return { low: plain(min), high: plain(max), unit: this.#unit(id) };
  }

  #fault(id: Typed): string {
    if (this.#texts[id].trim() === "" || this.#read(id) !== undefined) return "";
    return this.#value(id) === undefined ? w("gas.unread") : w("fault.bounds", this.#bounds(id));
  }

  #unit(id: Typed): string {
    const { unit } = quantities[id];
    if (unit === undefined) return w(`unit.${this.#ctx.settings.units}`);
    return id === "cartridge" ? w("unit.g") : id === "c" ? w("unit.c") : id === "m" ? w("unit.m") : id === "stroke" ? w("unit.ml") : w("unit.mm");
  }

  #showFields(): void {
    for (const [id, field] of this.#fields) {
      const label = w(`gasField.${id}`);
      field.view = { id, label, spoken: label, text: this.#texts[id], unit: this.#unit(id), range: this.#range(id), fault: this.#fault(id), signed: id === "c" || id === "m", step: 0 };
    }
    this.#start.view = { name: "start", legend: w("gas.start"), value: this.#before, options: [{ value: "standing", label: w("gas.standing") }, { value: "flat", label: w("gas.flat") }] };
  }
}

// Bounds are the calculator's own.
const bounds: Readonly<Record<Typed, { readonly min: number; readonly max: number }>> = {
  cartridge: co2Fields.cartridge_g, bead: co2Fields.bead_seat_mm, width: co2Fields.width_mm, c: co2Fields.c, m: co2Fields.m, limit: co2Fields.limit_kpa,
  stroke: pumpFields.stroke_ml, from: pumpFields.from_kpa, to: pumpFields.to_kpa,
};

// Quantities tell how a field is typed: a pressure without a unit is in the person's own.
const quantities: Readonly<Record<Typed, { readonly dimension: Dimension; readonly unit?: string; readonly scale: number }>> = {
  cartridge: { dimension: "mass", unit: "g", scale: 1e3 }, bead: { dimension: "length", unit: "mm", scale: 1e3 }, width: { dimension: "length", unit: "mm", scale: 1e3 },
  c: { dimension: "temperature", unit: "c", scale: 1 }, m: { dimension: "altitude", unit: "m", scale: 1 }, limit: { dimension: "pressure", scale: 1e-3 },
  stroke: { dimension: "plain", unit: "ml", scale: 1 }, from: { dimension: "pressure", scale: 1e-3 }, to: { dimension: "pressure", scale: 1e-3 },
};

export function gas(host: HTMLElement, ctx: Ctx): void {
  new GasPage(host, ctx);
}
