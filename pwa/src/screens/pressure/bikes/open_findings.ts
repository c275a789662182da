// What was found on the open bike and not closed yet stands above its pressures: air does not mend it.

import type { Severity } from "../../../book/checks/walk.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { define, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export interface OpenFinding {
  readonly rec: string;
  readonly words: string;
  readonly severity: Severity;
}

export class OpenFindings extends Part<readonly OpenFinding[]> {
  readonly #list = el("div", { class: "stack" });

  protected override build(): void {
    this.append(this.#list);
  }

  protected override show(open: readonly OpenFinding[]): void {
    setHidden(this, open.length === 0);
    keyed(this.#list, open, ({ rec }) => rec, () => el("p", {}, el("strong"), " ", el("a")), (node, { rec, words, severity }) => {
      node.className = severity === "note" ? "notice" : `notice ${severity}`;
      const [mark, link] = node.children;
      if (mark === undefined || link === undefined) return;
      setText(mark, `${w(`checks.bad.${severity}`)}:`);
      setText(link, words);
      setAttr(link, "href", `#/checks/finding/${rec}`);
    });
  }
}

define("rs-open-findings", OpenFindings);
