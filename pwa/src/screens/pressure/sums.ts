// Asks the calculator: what the gauges should read, what the notes speak for, and the pressures; and keeps the newest answers.

import type { PressureAnswer } from "../../book/pressure/answer.ts";
import type { PressureDraft } from "../../book/pressure/draft.ts";
import { type BothExpected, expectedOf, expectedQuestion, type Place, settingsOf } from "../../book/pressure/expected.ts";
import { readingsOf } from "../../book/pressure/expected_view.ts";
import type { Kept } from "../../book/pressure/kept.ts";
import { type Learned, learnedQuestion, shifted } from "../../book/pressure/learned.ts";
import { refusedWords } from "../../book/pressure/refused.ts";
import { read, type Reading } from "../../book/pressure/request.ts";
import { placeOf } from "../../book/pressure/sets.ts";
import { tables } from "../../book/pressure/tables.ts";
import type { PressureUnit } from "../../book/value/quantity.ts";
import type { Requests } from "../../contract/contract.ts";
import { type Json, sameValue } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

// Source is what the questions are made from.
export interface Source {
  readonly draft: PressureDraft;
  readonly unit: PressureUnit;
  readonly sets: readonly RecordState[];
  readonly notes: readonly RecordState[]; // and trials
}

export class Sums {
  kept: Kept | undefined;
  broken = ""; // why no answer comes
  expected: BothExpected = {};
  learned: Learned | undefined;
  readonly #ctx: Pick<Ctx, "calc" | "closed">;
  #expectedFor: Requests["expected"] | undefined;
  #learnedFor: Requests["shift"] | undefined;
  #read: { readonly of: readonly unknown[]; readonly reading: Reading } | undefined;
  #turn = 0;

  constructor(ctx: Pick<Ctx, "calc" | "closed">) {
    this.#ctx = ctx;
  }

  // reading reads the form once for each state of it.
  reading({ draft, unit }: Source): Reading {
    const of = [draft, unit, this.expected, this.learned];
    if (this.#read === undefined || of.some((each, n) => each !== this.#read?.of[n])) {
      const reading = shifted(read(draft, unit, tables, readingsOf(this.expected)), draft.plain ? undefined : this.learned);
      this.#read = { of, reading };
    }
    return this.#read.reading;
  }

  // ahead works out what the pressures rest on besides the form; true when that has changed.
  async ahead(source: Source): Promise<boolean> {
    const turn = ++this.#turn;
    const { body } = this.reading(source);
    if (body === undefined) return false;
    const [[expected, expectedFor], [learned, learnedFor]] = [await this.#expect(source, placeOf(body)), await this.#learn(source, body)];
    if (turn !== this.#turn || this.#ctx.closed.aborted) return false;
    const changed = expected !== this.expected || learned !== this.learned;
    [this.expected, this.#expectedFor, this.learned, this.#learnedFor] = [expected, expectedFor, learned, learnedFor];
    return changed;
  }

  async #expect(source: Source, here: Place): Promise<[BothExpected, Requests["expected"] | undefined]> {
    const { draft, sets } = source;
    const error = this.reading(source).values.get("gaugeError") ?? 0;
    const settings = { front: settingsOf(sets, draft.links["front.wheel"], error), rear: settingsOf(sets, draft.links["rear.wheel"], error) };
    const question = expectedQuestion(settings, error, here, Date.now());
    if (question === undefined) return [Object.keys(this.expected).length === 0 ? this.expected : {}, undefined];
    if (same(question, this.#expectedFor)) return [this.expected, question];
    const { answer } = await this.#ctx.calc.ask("expected", question);
    const [front, rear] = [expectedOf("front", settings.front, here, answer), expectedOf("rear", settings.rear, here, answer)];
    return [{ ...(front && { front }), ...(rear && { rear }) }, question];
  }

  async #learn({ draft, notes }: Source, body: Requests["pressure"]): Promise<[Learned | undefined, Requests["shift"] | undefined]> {
    const question = learnedQuestion(notes, draft.links["bike"], body);
    if (question === undefined) return [undefined, undefined];
    return [same(question, this.#learnedFor) ? this.learned : (await this.#ctx.calc.ask("shift", question)).answer, question];
  }

  // ask gives true when there is something new to show. The last answer stands until all is known that the next one needs.
  async ask(source: () => Source): Promise<boolean> {
    const { body } = this.reading(source());
    if (body === undefined || (same(body, this.kept?.question) && this.broken === "")) return false;
    try {
      const result = await this.#ctx.calc.latest("pressure", body);
      if (result === undefined || this.#ctx.closed.aborted || this.reading(source()).body === undefined) return false; // a newer question is on its way, or what was asked is gone
      if (result.answer === undefined) this.broken = refusedWords(result.errors);
      else this.#take(body, result.answer);
    } catch {
      this.broken = w("wheel.oldCalc");
    }
    return true;
  }

  #take(question: Requests["pressure"], answer: PressureAnswer): void {
    this.kept = { question, answer };
    this.broken = "";
  }

  // forget drops what was worked out from the bike that was open.
  forget(): void {
    this.expected = {};
    this.learned = undefined;
    this.#expectedFor = undefined;
    this.#learnedFor = undefined;
  }
}

function same(a: object, b: object | undefined): boolean {
  return a === b || (b !== undefined && sameValue(a as Json, b as Json));
}
