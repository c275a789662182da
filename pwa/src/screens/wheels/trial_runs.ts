// The runs that were ridden. One that went wrong is struck out with its reason, and ridden again.

import { counts, mayStrike, type Run, type TrialDraft, whys } from "../../book/wheels/trial.ts";
import { runLines, runWords } from "../../book/wheels/trial_view.ts";
import { Choice } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

// Strike names a run and why it counts no more; "" counts it again.
export interface Strike {
  readonly at: number;
  readonly why: string;
}

export const struck = actName<Strike>("rs-run-struck");

export class TrialRuns extends Part<TrialDraft> {
  readonly #list = el("ul", { class: "unmarked stack" });
  readonly #none = el("p", {}, w("trial.noRuns"));
  readonly #asking = el("div", { class: "notice stack", hidden: true });
  #of: Run | undefined; // which is to be struck out

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, el("h2", {}, w("trial.runs")), this.#asking, this.#none, this.#list, el("p", { class: "small quiet" }, w("trial.strikeHow"))));
  }

  protected override show(draft: TrialDraft): void {
    setHidden(this.#none, draft.runs.length > 0);
    keyed(this.#list, runLines(draft), ({ key }) => key, () => el("li", { class: "row spread" }, el("span"), el("button", { type: "button", class: "button quiet" })), (node, { line, at }) => {
      const run = draft.runs.find((each) => each.at === at);
      const [words, button] = node.children as unknown as [HTMLElement, HTMLButtonElement];
      setText(words, line);
      if (run !== undefined) this.#offer(words, button, run, line, draft);
    });
    if (!draft.runs.some((each) => each.at === this.#of?.at && counts(each))) this.#ask(undefined);
  }

  #offer(words: HTMLElement, button: HTMLButtonElement, run: Run, line: string, draft: TrialDraft): void {
    const out = !counts(run);
    const taken = out && draft.runs.some((each) => each.slot === run.slot && counts(each)); // another run has its place
    words.classList.toggle("struck", out);
    setHidden(button, taken || !mayStrike(draft, run));
    setText(button, out ? w("trial.unstrike") : w("trial.strike"));
    setAttr(button, "aria-label", w(out ? "trial.unstrikeOf" : "trial.strikeOf", { run: line }));
    button.onclick = () => (out ? this.act(struck, { at: run.at, why: "" }) : this.#ask(run));
  }

  #ask(run: Run | undefined): void {
    this.#of = run;
    setHidden(this.#asking, run === undefined);
    if (run === undefined || this.view === undefined) return this.#asking.replaceChildren();
    const why = new Choice();
    why.view = { name: "why", legend: w("trial.why"), value: "", options: whys.map((value) => ({ value, label: w(`trial.whyOf.${value}`) })) };
    this.#asking.replaceChildren(el("p", {}, runWords(run, this.view.runs.indexOf(run) + 1, this.view.better)), why);
    why.querySelector("input")?.focus();
  }

  // because takes the reason that was chosen.
  because(why: string): void {
    const run = this.#of;
    this.#ask(undefined);
    if (run !== undefined) this.act(struck, { at: run.at, why });
  }
}

define("rs-trial-runs", TrialRuns);
