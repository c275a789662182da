// Large keys for a gauge's reading, for gloves: digits, a point, the unit, clear. They write what a keyboard would.

import { pressureUnits } from "../../../book/value/quantity.ts";
import { el } from "../../../ui/el.ts";
import { actName, define, Part } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const keyed = actName<string>("rs-keyed"); // the whole text
export const keysDone = actName<undefined>("rs-keys-done");
export const setOne = actName<undefined>("rs-set-one");

const rows = [["7", "8", "9"], ["4", "5", "6"], ["1", "2", "3"], [".", "0"]] as const;

export interface KeysView {
  readonly text: string;
  readonly side: "front" | "rear";
}

export class Keys extends Part<KeysView> {
  readonly #setOne = this.#key("", () => this.act(setOne, undefined), "wide");

  protected override build(): void {
    const digits = rows.flatMap((row, n) => [
      ...row.map((sign) => this.#key(sign, () => this.#write((text) => text + sign))),
      ...(n === 3 ? [this.#key("⌫", () => this.#write(shorter), "", w("keys.back"))] : []),
      n < 3 ? this.#unit(pressureUnits[n] ?? "bar") : this.#key(w("keys.clear"), () => this.#write(() => "")),
    ]);
    this.append(el("div", { class: "keys" }, ...digits, this.#setOne, this.#key(w("sheet.done"), () => this.act(keysDone, undefined), "wide")));
  }

  protected override show({ side }: KeysView): void {
    this.#setOne.textContent = w("set.one", { side: w(`ride.side.${side}`) });
  }

  #key(sign: string, press: () => void, kind = "", name = sign): HTMLButtonElement {
    return el("button", { type: "button", class: `button key ${kind}`, "aria-label": name === sign ? null : name, on: { click: press } }, sign);
  }

  // A keypad without letters can still give psi.
  #unit(unit: (typeof pressureUnits)[number]): HTMLButtonElement {
    return this.#key(w(`unit.${unit}`), () => this.#write((text) => `${bare(text)} ${unit}`.trim()));
  }

  #write(change: (text: string) => string): void {
    this.act(keyed, change(this.view?.text ?? "").slice(0, 16));
  }
}

function bare(text: string): string {
  return text.replace(/[\sa-z]+$/i, "");
}

// shorter takes a unit away whole.
function shorter(text: string): string {
  return /[a-z]$/i.test(text) ? bare(text) : text.slice(0, -1);
}

define("rs-keys", Keys);
