// Planning a trip, or changing its plan: days, way, bikes, and the airline's own limits.

import "./packing.css";
import { bikeLines } from "../../book/pressure/bikes.ts";
import { isObject } from "../../book/pressure/answer.ts";
import { bikesOf, flown, legsOf, peopleOf, ways } from "../../book/packing/trip.ts";
import { askedOf } from "../../book/wheels/thing_view.ts";
import { readTyped, typedText } from "../../book/value/typed_value.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { newRec } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { typed } from "../../ui/field.ts";
import { Form } from "../shared/form.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, tellerFor } from "../shared/follow.ts";

const fields = ["name", "from", "arrives", "to", "home_arrives", "way", "limit_kg", "limit_cm"] as const;

export function plan(host: HTMLElement, ctx: Ctx, rec: string): void {
  void open(host, ctx, rec);
}

async function open(host: HTMLElement, ctx: Ctx, rec: string): Promise<void> {
  openPage(ctx, rec === "" ? w("trip.new") : w("trip.change"), rec === "" ? { href: "#/packing", words: w("place.packing") } : { href: `#/packing/${rec}`, words: w("recKind.trip") });
  const form = new Form();
  const us = new Choice();
  const list = el("div", { class: "stack" });
  const folk = el("div", { class: "stack" });
  const folkCard = el("section", { class: "card stack" }, el("h2", {}, w("trip.people")), folk);
  const noBikes = el("p", { class: "notice care" }, w("trip.noBikes"), " ", el("a", { href: "#/wheels/new/bike" }, w("checks.toWheels")));
  const failed = el("p", { class: "fault", role: "alert" });
  const page = el("form", { class: "stack" });
  host.append(page);
  await ctx.book.ready;
  const [trip, bikes, stored] = [rec === "" ? undefined : await ctx.book.get(rec), bikeLines(await ctx.book.all("bike"), undefined), await ctx.drafts.load(`plan/${rec}`)];
  const teller = await tellerFor(ctx, trip === undefined ? [] : [trip]);
  const people = (await ctx.book.all("person")).map(({ rec: person }) => ({ rec: person, name: teller.nameOf(person) }));
  if (ctx.closed.aborted) return;
  const draft = new Draft(trip, bikes.map((bike) => bike.rec), stored);
  page.append(
    el("section", { class: "card stack" }, form, us), el("section", { class: "card stack" }, el("h2", {}, w("trip.bikes")), list, noBikes), folkCard,
    failed, el("p", {}, el("button", { type: "submit", class: "button primary" }, rec === "" ? w("trip.add") : w("trip.save"))));

  const show = (): void => {
    form.view = fields.map((field) => askedOf("trip", field, trip, draft, teller, []));
    us.view = { name: "legs_us", legend: w("trip.us"), options: [{ value: "no", label: w("trip.no") }, { value: "yes", label: w("trip.yes") }], value: draft.us };
    setHidden(us, !flown(draft.texts.get("trip.way") ?? textOf(trip, "way")));
    setHidden(noBikes, bikes.length > 0);
    ticks(list, bikes, draft.bikes, change);
    ticks(folk, people, draft.people, change);
    setHidden(folkCard, people.length === 0);
  };
  const change = (make: () => void): void => {
    make();
    void ctx.drafts.save(`plan/${rec}`, draft.stored());
    show();
  };
  listen(host, typed, ({ id, text }) => change(() => draft.type(id, text)), ctx.closed);
  listen(host, chosen, ({ name, value }) => change(() => (name === "legs_us" ? (draft.us = value) : draft.type(name, value))), ctx.closed);
  show();

  page.addEventListener("submit", (event) => {
    event.preventDefault();
    void save();
  });
  const save = async (): Promise<void> => {
    const set = draft.read(trip, ctx.settings.units);
    show();
    if (set === undefined) return page.querySelector<HTMLElement>("[aria-invalid]")?.focus();
    const made = rec === "" ? newRec() : rec;
    const trouble = await attempt(ctx, () => ctx.book.save([{ rec: made, kind: "trip", set, ...(trip && { shown: trip }) }]));
    setText(failed, trouble);
    if (trouble !== "") return;
    await ctx.drafts.save(`plan/${rec}`, null);
    location.replace(`#/packing/${made}`);
  };
}

// ticks lets some of many be chosen.
function ticks(list: HTMLElement, all: readonly { readonly rec: string; readonly name: string }[], picked: Set<string>, change: (make: () => void) => void): void {
  const toggle = (rec: string): void => change(() => void (picked.delete(rec) || picked.add(rec)));
  keyed(list, all, ({ rec }) => rec, ({ rec }) => el("label", { class: "step" }, el("input", { type: "checkbox", on: { change: () => toggle(rec) } }), el("span")), (node, { rec, name }) => {
    const [box, words] = node.children;
    if (box instanceof HTMLInputElement) box.checked = picked.has(rec);
    if (words !== undefined) setText(words, name);
  });
}

// Draft is what is typed of a plan.
class Draft {
  readonly texts = new Map<string, string>();
  readonly faults = new Map<string, string>();
  readonly bikes: Set<string>;
  readonly people: Set<string>;
  us: string;

  constructor(trip: RecordState | undefined, bikes: readonly string[], stored: unknown) {
    const legs = legsOf(trip);
    this.us = legs === null ? "" : legs ? "yes" : "no"; // nobody said: asked, and taken for a yes until then
    this.bikes = new Set(trip === undefined ? (bikes.length === 1 ? bikes : []) : bikesOf(trip));
    this.people = new Set(peopleOf(trip));
    if (!isObject(stored)) return;
    if (isObject(stored["texts"])) for (const [id, text] of Object.entries(stored["texts"])) if (typeof text === "string") this.texts.set(id, text);
    if (typeof stored["us"] === "string") this.us = stored["us"];
    for (const [name, picked] of [["bikes", this.bikes], ["people", this.people]] as const) {
      const kept: readonly unknown[] | undefined = Array.isArray(stored[name]) ? stored[name] : undefined;
      if (kept === undefined) continue;
      picked.clear();
      for (const each of kept) if (typeof each === "string") picked.add(each);
    }
  }

  stored(): object {
    return { texts: Object.fromEntries(this.texts), us: this.us, bikes: [...this.bikes], people: [...this.people] };
  }

  type(id: string, text: string): void {
    this.texts.set(id, text);
    this.faults.delete(id);
  }

  // read gives the fields to set; undefined while something cannot be.
  read(trip: RecordState | undefined, unit: Ctx["settings"]["units"]): Record<string, Json> | undefined {
    this.faults.clear();
    const set: Record<string, Json> = { legs_us: this.us === "" ? null : this.us === "yes", bikes: [...this.bikes], people: [...this.people] };
    const now = (field: string): string => this.texts.get(`trip.${field}`) ?? typedText("trip", field, valueOf(trip, field), unit);
    for (const field of fields) {
      const value = readTyped("trip", field, now(field), unit);
      if ("fault" in value) this.faults.set(`trip.${field}`, value.fault);
      else if (value.value !== null || valueOf(trip, field) != null) set[field] = value.value;
    }
    if (now("name").trim() === "") this.faults.set("trip.name", w("fault.missing"));
    const before = (one: string, other: string): boolean => now(one) !== "" && now(other) !== "" && now(one) < now(other);
    if (before("to", "from")) this.faults.set("trip.to", w("trip.order"));
    if (before("arrives", "from")) this.faults.set("trip.arrives", w("trip.arrivalDay"));
    if (before("home_arrives", "to")) this.faults.set("trip.home_arrives", w("trip.arrivalDay"));
    if (!ways.some((way) => way === set["way"])) set["way"] = "air_bag";
    return this.faults.size > 0 ? undefined : set;
  }
}
