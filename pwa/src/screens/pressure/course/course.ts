// A course from a file: its profile is drawn, ground is painted onto it, and it becomes the day's.

import "./course.css";
import { GpxError } from "../../../book/course/gpx.ts";
import { mostStretches, paint, type Painted } from "../../../book/course/paint.ts";
import { type Profile, profileOf, smoothing } from "../../../book/course/profile.ts";
import { readCourse } from "../../../book/course/read_file.ts";
import type { PressureDraft } from "../../../book/pressure/draft.ts";
import { type GroundKind, groundKinds } from "../../../book/pressure/fields.ts";
import { parse } from "../../../book/value/quantity.ts";
import { chosen } from "../../../ui/choice.ts";
import { el } from "../../../ui/el.ts";
import { listen, setText } from "../../../ui/part.ts";
import { Picker } from "../../../ui/picker.ts";
import { PickedFile } from "../../../ui/picked_file.ts";
import { fixed, plain } from "../../../words/number.ts";
import { w } from "../../../words/index.ts";
import type { FurtherMeans } from "../ground/ground_desk.ts";
import { ProfilePicture } from "./profile_picture.ts";

// begin puts the reading of a course into its place.
export function begin(host: HTMLElement, means: FurtherMeans): void {
  host.replaceChildren(new Course(means).node);
}

const km = (value: number): string => plain(Math.round(value * 10) / 10);

class Course {
  readonly node = el("section", { class: "card stack course" });
  readonly #means: FurtherMeans;
  readonly #said = el("p", { role: "status" });
  readonly #stage = el("div", { class: "stack" });
  readonly #brush = new Picker();
  readonly #picture = new ProfilePicture();
  readonly #list = el("ul", { class: "small" });
  readonly #from = entry();
  readonly #to = entry();
  #kind: GroundKind = "pea";
  #painted: readonly Painted[] = [];
  #profile: Profile | undefined;

  constructor(means: FurtherMeans) {
    this.#means = means;
    const file = new PickedFile();
    file.view = { label: w("course.pick"), accept: ".gpx,application/gpx+xml", picked: (picked) => void this.#read(picked) };
    // What is chosen here is no part of the day's draft.
    listen(this.node, chosen, ({ value }, event) => {
      event.stopPropagation();
      this.#kind = groundKinds.find((kind) => kind === value) ?? "pea";
      this.#show();
    });
    this.#picture.dragged = (from, to) => this.#paint(from, to);
    this.node.append(el("h3", {}, w("course.title")), el("p", { class: "small" }, w("course.why")), file, this.#said, this.#stage);
  }

  async #read(file: Blob): Promise<void> {
    this.#stage.replaceChildren();
    try {
      const points = await readCourse(file, (share) => setText(this.#said, w("course.reading", { part: Math.floor(share * 100) })), this.#means.closed);
      const profile = profileOf(points);
      this.#profile = profile;
      this.#painted = [{ kind: this.#first(), from: 0, to: profile.km }];
      setText(this.#said, w("course.read", { km: km(profile.km), points: points.count }));
      this.#open(profile);
    } catch (error) {
      if (!this.#means.closed.aborted) setText(this.#said, w(`course.no.${error instanceof GpxError ? error.fault : "unread"}`));
    }
  }

  // first is the ground that today began with.
  #first(): GroundKind {
    return groundKinds.find((kind) => kind === this.#means.draft().ground[0]?.kind) ?? "pea";
  }

  #open({ highest, lowest }: Profile): void {
    const heights = highest === undefined || lowest === undefined ? w("course.noHeights")
      : w("course.heights", { m: smoothing, high: fixed(highest.m, 0), highAt: km(highest.km), low: fixed(lowest.m, 0), lowAt: km(lowest.km) });
    this.#stage.replaceChildren(
      this.#picture, el("p", { class: "small quiet" }, heights), this.#brush, el("p", { class: "small" }, w("course.how")),
      el("div", { class: "fields" }, el("label", { class: "named" }, w("course.from"), this.#from), el("label", { class: "named" }, w("course.to"), this.#to)),
      el("button", { type: "button", class: "button", on: { click: () => this.#paintTyped() } }, w("course.paint")), this.#list,
      el("button", { type: "button", class: "button", on: { click: () => this.#use() } }, w("course.use")));
    this.#show();
  }

  #show(): void {
    if (this.#profile === undefined) return;
    this.#brush.view = { name: "course.brush", label: w("course.brush"), spoken: w("course.brush"), value: this.#kind, options: groundKinds.map((value) => ({ value, label: w(`kind.${value}`) })) };
    const lines = this.#painted.map(({ kind, from, to }) => w("course.stretch", { kind: w(`short.${kind as GroundKind}`), from: km(from), to: km(to) }));
    this.#picture.view = { profile: this.#profile, painted: this.#painted, spoken: this.#profile.heights.length === 0 ? w("course.flat", { km: km(this.#profile.km) }) : w("course.profile", { list: lines.join(", ") }) };
    this.#list.replaceChildren(...lines.map((line) => el("li", {}, line)));
  }

  #paintTyped(): void {
    const [from, to] = [this.#from, this.#to].map(({ value }) => {
      const parsed = parse(value, "distance", "km");
      return "si" in parsed ? parsed.si / 1000 : undefined;
    });
    if (from === undefined) return this.#from.focus();
    if (to === undefined) return this.#to.focus();
    this.#paint(from, to);
  }

  #paint(from: number, to: number): void {
    const next = paint(this.#painted, this.#kind, from, to);
    if (next.length > mostStretches) return setText(this.#said, w("course.many", { n: mostStretches }));
    this.#painted = next;
    this.#show();
  }

  // use makes the painted stretches today's, and the start's altitude the course's.
  #use(): void {
    const { texts } = this.#means.draft();
    const { start, highest, lowest } = this.#profile ?? {};
    const tens = (m: number | undefined): string => (m === undefined ? "" : String(Math.round(m / 10) * 10));
    const ground = this.#painted.map(({ kind, from, to }, n) => ({ id: `course${n}`, kind, km: plain(Math.round((to - from) * 100) / 100), kmh: "", gd0: "", washboard: false }));
    const edit: Partial<PressureDraft> = { ground, groundBy: "km", ...(start !== undefined && { texts: { ...texts, "ride.m": tens(start), "high.m": tens(highest?.m), "high.c": "", "low.m": tens(lowest?.m), "low.c": "" }, weatherAt: Date.now() }) };
    this.#means.day(edit, w("course.used"));
    setText(this.#said, w("course.used"));
  }
}

function entry(): HTMLInputElement {
  return el("input", { class: "entry", type: "text", inputmode: "decimal", autocomplete: "off" });
}
