// The inputs of the screen: typed fields, choices and lists made once, and shown anew whenever the draft changes.

import type { PressureDraft } from "../../../book/pressure/draft.ts";
import { fieldView } from "../../../book/pressure/field_view.ts";
import { veiledWords } from "../../../book/value/veil.ts";
import { allFields } from "../../../book/pressure/fields.ts";
import type { PressureUnit } from "../../../book/value/quantity.ts";
import type { Reading } from "../../../book/pressure/request.ts";
import type { Tables } from "../../../book/pressure/tables.ts";
import type { Ages } from "../../../book/pressure/screen_view.ts";
import { Choice } from "../../../ui/choice.ts";
import { Field } from "../../../ui/field.ts";

export interface InputState {
  readonly draft: PressureDraft;
  readonly reading: Reading;
  readonly unit: PressureUnit;
  readonly tables: Tables;
  readonly ages: Ages;
  readonly quiet: boolean; // do not complain about what is not filled in yet
}

type Show = (state: InputState) => void;

export interface Option {
  readonly value: string;
  readonly label: string;
}

export class Inputs {
  readonly #shows: Show[] = [];
  readonly #fields = new Map<string, Field>();

  show(state: InputState): void {
    for (const show of this.#shows) show(state);
  }

  // also runs with every show: for what hangs on the draft besides fields and choices.
  also(show: Show): void {
    this.#shows.push(show);
  }

  focus(id: string): void {
    const field = this.#fields.get(id) ?? this.#fields.get(id.replace(/^rear\./, "front."));
    for (let fold = field?.closest("details"); fold; fold = fold.parentElement?.closest("details")) fold.open = true;
    field?.focus();
  }

  field(id: string, stepper = false): Field {
    const spec = allFields.find((each) => each.id === id);
    if (spec === undefined) throw new Error(`no field ${id}`);
    const field = new Field();
    this.#fields.set(id, field);
    this.#shows.push(({ draft, reading, unit, tables, ages, quiet }) => {
      const fault = reading.faults.get(id);
      const early = fault?.why === "missing" || (fault?.why === "measure" && (draft.picks["front.profile"] ?? "") === "");
      const shown = quiet && early ? undefined : fault;
      field.view = fieldView(spec, id, draft.texts[id] ?? "", shown, unit, tables, { stepper, sided: !draft.rearSame, note: noteOf(id, draft, ages) });
    });
    return field;
  }

  // choice is a group of radio buttons; group keeps the names of the first-run form apart from the others.
  choice(name: string, legend: string, options: readonly Option[], value: (draft: PressureDraft) => string, group = ""): Choice {
    const choice = new Choice();
    this.#shows.push(({ draft }) => (choice.view = { name: `${group}${name}`, legend, options, value: value(draft) }));
    return choice;
  }
}

// noteOf stands in place of a field's range: what is known of the value that is worth more than its bounds.
function noteOf(id: string, draft: PressureDraft, ages: Ages): string {
  if (id === "rider") return veiledWords(draft);
  return id === "front.measured" ? ages.front : id === "rear.measured" ? ages.rear : "";
}
