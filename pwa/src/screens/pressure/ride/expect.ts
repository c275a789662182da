// Asks the calculator what each wheel should read now.

import { type Side, sides } from "../../../book/pressure/answer.ts";
import type { PressureDraft } from "../../../book/pressure/draft.ts";
import { airQuestion, type BothExpected, type Expected, leakQuestions, type Place, settingsOf, typicalLoss } from "../../../book/pressure/expected.ts";
import type { Answers, Name, Requests } from "../../../contract/contract.ts";
import type { RecordState } from "../../../log/op/merge.ts";
import type { Ctx } from "../../../ui/screen.ts";

export class Expect {
  readonly #calc: Ctx["calc"];
  readonly #answers = new Map<string, number | undefined>(); // by question

  constructor(calc: Ctx["calc"]) {
    this.#calc = calc;
  }

  // both works it out for the open bike; a wheel that was never set is left out.
  async both(draft: PressureDraft, sets: readonly RecordState[], gaugeError: number, here: Place, now: number): Promise<BothExpected> {
    const found: Partial<Record<Side, Expected>> = {};
    for (const side of sides) {
      const expected = await this.#one(draft.links[`${side}.wheel`], sets, gaugeError, here, now);
      if (expected !== undefined) found[side] = expected;
    }
    return found;
  }

  async #one(wheel: string | undefined, sets: readonly RecordState[], gaugeError: number, here: Place, now: number): Promise<Expected | undefined> {
    const settings = settingsOf(sets, wheel, gaugeError);
    const [last] = settings;
    if (last === undefined) return undefined;
    const losses: number[] = [];
    for (const question of leakQuestions(settings)) {
      const loss = await this.#ask("leak", question, ({ loss_per_day }) => loss_per_day);
      if (loss !== undefined) losses.push(loss);
    }
    const loss = typicalLoss(losses);
    const kpa = await this.#ask("air", airQuestion(last, loss, now, here), ({ kpa }) => kpa);
    return kpa === undefined ? undefined : { gauge_kpa: Math.max(0, Number((kpa + gaugeError).toFixed(1))), last, loss, here };
  }

  // ask gives one number of the answer; undefined when the calculator refuses (a tyre that was pumped in between).
  async #ask<N extends Name>(name: N, body: Requests[N], member: (answer: Answers[N]) => number): Promise<number | undefined> {
    const question = `${name} ${JSON.stringify(body)}`;
    if (!this.#answers.has(question)) {
      const { answer } = await this.#calc.ask(name, body);
      this.#answers.set(question, answer === undefined ? undefined : member(answer));
    }
    return this.#answers.get(question);
  }
}
