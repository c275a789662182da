// Passes one set-up on as a file, and takes one in.

import type { PressureDraft } from "../../../book/pressure/draft.ts";
import { setupChanges, setupText } from "../../../book/pressure/setup_file.ts";
import { newRec } from "../../../log/book_log.ts";
import type { RecordState } from "../../../log/op/merge.ts";
import { handOver } from "../../../ui/hand_over.ts";
import type { Ctx } from "../../../ui/screen.ts";

const kinds = ["bike", "wheel", "tyre", "gauge", "pump"] as const;

export class Setups {
  readonly #book: Ctx["book"];

  constructor(book: Ctx["book"]) {
    this.#book = book;
  }

  async share(draft: PressureDraft): Promise<void> {
    const known = new Map<string, RecordState>();
    for (const kind of kinds) for (const state of await this.#book.all(kind)) known.set(state.rec, state);
    const text = setupText(draft.links, (rec) => known.get(rec));
    await handOver(new File([text], "rimside-setup.json", { type: "application/json" }));
  }

  // bring makes records of a file and gives the bike; undefined when it is no such file or the phone refuses.
  async bring(file: File): Promise<string | undefined> {
    const read = setupChanges(await file.text(), newRec);
    if (read === undefined) return undefined;
    try {
      await this.#book.save(read.changes);
      return read.bike;
    } catch {
      return undefined; // the status line tells
    }
  }
}
