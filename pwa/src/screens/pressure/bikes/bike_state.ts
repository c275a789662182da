// The open bike's state in words, from what was found on it and not closed yet.

import { w } from "../../../words/index.ts";
import type { OpenFinding } from "./open_findings.ts";

export interface BikeState {
  readonly state: string;
  readonly severity: "stop" | "care" | "fine";
  readonly href: string;
}

// bikeState never says that no fault was found: that takes a look, and looks are not kept here.
export function bikeState(open: readonly OpenFinding[]): BikeState {
  const grave = open.filter(({ severity }) => severity !== "note");
  const severity = grave.some((each) => each.severity === "stop") ? "stop" : grave.length > 0 ? "care" : "fine";
  const words = severity === "fine" ? w("bikeState.fine") : w(`bikeState.${severity}`, { n: grave.length });
  return { state: words, severity, href: "#/checks" };
}
