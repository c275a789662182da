// Works out the other widths, one question at a time so that the answer itself never waits long.

import type { RequestBody } from "../../../book/pressure/request.ts";
import { type Json, sameValue } from "../../../log/op/json.ts";
import { labelsRound, type Room, widthCautions, widthQuestion, type WidthRow, widthRow } from "../../../book/pressure/widths.ts";
import { valueOf } from "../../../log/op/merge.ts";
import { listen } from "../../../ui/part.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import type { Lender, Lent } from "../lent.ts";
import { widthsOpened, type WidthsView } from "./widths.ts";

const rest = 400; // ms without a change, so that nothing is worked out between two keys

export class WidthDesk {
  readonly #ctx: Pick<Ctx, "calc" | "closed">;
  readonly #from: Lender;
  #open = false;
  #asked: Json = ""; // what the rows answer, or will
  #rows: readonly WidthRow[] = [];
  #cautions: readonly string[] = [];
  #state = "";
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(host: HTMLElement, ctx: Pick<Ctx, "calc" | "closed">, from: Lender) {
    this.#ctx = ctx;
    this.#from = from;
    listen(host, widthsOpened, (open) => {
      this.#open = open;
      if (this.#rows.length === 0) this.#asked = ""; // what failed is tried again
      from.show();
    }, ctx.closed);
    ctx.closed.addEventListener("abort", () => clearTimeout(this.#timer));
  }

  view(lent: Lent): WidthsView {
    if (this.#open) this.#look(lent);
    return { rows: this.#rows, unit: w(`unit.${lent.unit}`), state: this.#state, cautions: this.#cautions };
  }

  // look starts anew when the question is another one.
  #look({ reading, unit, bike }: Lent): void {
    const body = reading.body;
    const room = roomOf(bike);
    const key: Json = body === undefined ? "" : [{ ...body, now: null } as unknown as Json, unit, { ...room }];
    if (this.#asked !== "" && sameValue(key, this.#asked)) return;
    this.#asked = key;
    clearTimeout(this.#timer);
    this.#rows = [];
    this.#state = body === undefined ? w("widths.waiting") : w("widths.working");
    if (body !== undefined) this.#timer = setTimeout(() => void this.#work(key, body, room), rest);
  }

  async #work(key: Json, body: RequestBody, room: Room): Promise<void> {
    const { unit, tables } = this.#from.lend();
    const rows: WidthRow[] = [];
    try {
      for (const mm of labelsRound(body.front.tyre.label_mm)) {
        const question = widthQuestion(body, mm);
        const { answer } = await this.#ctx.calc.ask("pressure", question);
        if (key !== this.#asked || this.#ctx.closed.aborted) return; // something was changed meanwhile
        if (answer !== undefined) rows.push(widthRow({ mm, question, answer }, unit, room, tables, body));
      }
      this.#rows = rows;
      this.#cautions = widthCautions(body, room);
      this.#state = "";
    } catch {
      if (key !== this.#asked) return;
      this.#state = w("widths.noCalc");
    }
    this.#from.show();
  }
}

function roomOf(bike: Lent["bike"]): Room {
  const [front, rear] = [valueOf(bike, "room_front_mm"), valueOf(bike, "room_rear_mm")];
  return { ...(typeof front === "number" && { front }), ...(typeof rear === "number" && { rear }) };
}
