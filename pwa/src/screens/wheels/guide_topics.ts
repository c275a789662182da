// The topics of the measuring guide, and what each is about.

import type { What } from "../../book/wheels/measure.ts";

export const topics = ["width", "inner", "load", "gauge", "rotor", "runout"] as const;
export type Topic = (typeof topics)[number];

// measures: of which kind of record, and what.
export const measures: Readonly<Record<Topic, { readonly kind: string; readonly whats: readonly What[] }>> = {
  width: { kind: "tyre", whats: ["width"] },
  inner: { kind: "wheel", whats: ["inner"] },
  load: { kind: "bike", whats: ["load"] },
  gauge: { kind: "gauge", whats: ["gauge_error"] },
  rotor: { kind: "wheel", whats: ["rotor_thickness"] },
  runout: { kind: "wheel", whats: ["rotor_runout", "rim_runout"] },
};

export function topicOf(what: What): Topic | undefined {
  return topics.find((topic) => measures[topic].whats.includes(what));
}
