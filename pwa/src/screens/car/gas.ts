// CO2 and pump at the roadside: what the whole cartridge does to this tyre, and where to stop.

import "./car.css";
import { type Gas, gasLines, strokesWords } from "../../book/car/gas_view.ts";
import { parse, showKpa } from "../../book/value/quantity.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

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

  // read is a typed number in the calculator's unit; undefined while it cannot be read.
  #read(id: Typed): number | undefined {
    const { units } = this.#ctx.settings;
    const pressure = ["limit", "from", "to"].includes(id);
    const [dimension, unit, scale] = pressure ? (["pressure", units, 1e-3] as const)
      : id === "bead" || id === "width" ? (["length", "mm", 1e3] as const)
      : id === "c" ? (["temperature", "c", 1] as const) : id === "m" ? (["altitude", "m", 1] as const)
      : id === "stroke" ? (["plain", "ml", 1] as const) : (["mass", "g", 1e3] as const);
    const parsed = parse(this.#texts[id], dimension, unit);
    if (!("si" in parsed)) return undefined;
    return id === "c" ? Math.round((parsed.si - 273.15) * 1e6) / 1e6 : parsed.si * scale;
  }

  async #ask(): Promise<void> {
    const round = ++this.#round;
    const read = (id: Typed): number | undefined => this.#read(id);
    const faults = new Map<Typed, string>();
    const tyre = { bead_seat_mm: read("bead"), width_mm: read("width"), m: read("m") };
    const cartridge = read("cartridge");
    const [gas, pump] = await Promise.all([
      this.#said1("co2", { cartridge_g: cartridge, ...tyre, start: this.#before, c: read("c"), limit_kpa: read("limit") }, faults),
      this.#said1("pump", { stroke_ml: read("stroke"), ...tyre, from_kpa: read("from"), to_kpa: read("to") }, faults),
    ]);
    if (round !== this.#round || this.#ctx.closed.aborted) return;
    this.#showFields(faults);
    const { units } = this.#ctx.settings;
    const pressure = (kpa: number): string => w("value.with", { value: showKpa(kpa, units), unit: w(`unit.${units}`) });
    this.#said.replaceChildren(...(gas === undefined ? [] : gasLines(gas as Gas, cartridge ?? 1, pressure)).map(({ words, care }) => el("p", { class: care ? "notice care" : "" }, words)));
    this.#strokes.textContent = pump === undefined ? "" : strokesWords((pump as { strokes_likely: [number, number] }).strokes_likely);
    setHidden(this.#strokes, pump === undefined);
  }

  // said1 is one answer; a field that the calculator refuses is told of under it. A question that is not whole is not asked.
  async #said1(name: "co2" | "pump", request: Readonly<Record<string, string | number | undefined>>, faults: Map<Typed, string>): Promise<unknown> {
    if (Object.values(request).some((value) => value === undefined)) return undefined;
    const answer = await this.#ctx.calc.ask(name, request);
    const body = JSON.parse(answer.body) as { error?: { field?: string; message?: string } };
    if (answer.status === 200) return body;
    const at = fieldOf[body.error?.field ?? ""];
    if (at !== undefined) faults.set(at, body.error?.message ?? "");
    return undefined;
  }

  #showFields(faults: ReadonlyMap<Typed, string>): void {
    const { units } = this.#ctx.settings;
    const unit: Readonly<Record<Typed, string>> = {
      cartridge: w("unit.g"), bead: w("unit.mm"), width: w("unit.mm"), c: w("unit.c"), m: w("unit.m"), limit: w(`unit.${units}`), stroke: w("unit.ml"), from: w(`unit.${units}`), to: w(`unit.${units}`),
    };
    for (const [id, field] of this.#fields) {
      const label = w(`gasField.${id}`);
      const wrong = this.#texts[id].trim() !== "" && this.#read(id) === undefined ? w("gas.unread") : "";
      field.view = { id, label, spoken: label, text: this.#texts[id], unit: unit[id], range: null, fault: wrong || (faults.get(id) ?? ""), signed: id === "c" || id === "m", step: 0 };
    }
    this.#start.view = { name: "start", legend: w("gas.start"), value: this.#before, options: [{ value: "standing", label: w("gas.standing") }, { value: "flat", label: w("gas.flat") }] };
  }
}

const fieldOf: Readonly<Record<string, Typed>> = {
  cartridge_g: "cartridge", bead_seat_mm: "bead", width_mm: "width", c: "c", m: "m", limit_kpa: "limit", stroke_ml: "stroke", from_kpa: "from", to_kpa: "to",
};

export function gas(host: HTMLElement, ctx: Ctx): void {
  new GasPage(host, ctx);
}
