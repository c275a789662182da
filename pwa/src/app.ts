// The app: lends each screen what it needs, and keeps the frame round it up to date.

import type { CalcClient } from "./calc-client.ts";
import { clockWarning, outsideWords, syncWords } from "./book/settings/sync_view.ts";
import type { BookLog } from "./log/book_log.ts";
import type { DraftBox, SaveState } from "./log/db/draft.ts";
import type { SettingsBox } from "./log/db/settings.ts";
import type { Sync } from "./log/sync/sync.ts";
import { listen } from "./ui/part.ts";
import { hintDismissed } from "./ui/install.ts";
import { reloadWanted } from "./ui/offer.ts";
import type { CalcState, Ctx, Saving, Screen, Visit } from "./ui/screen.ts";
import { Shell, type ShellView } from "./ui/shell.ts";
import { showTheme } from "./ui/theme.ts";
import { detailsOf } from "./ui/trouble.ts";
import { facts as sideBySide } from "./words/index.ts";

export interface Means {
  readonly calc: CalcClient;
  readonly drafts: DraftBox;
  readonly settings: SettingsBox;
  readonly book: BookLog;
  readonly sync: Sync;
  readonly takeUpdate: () => Promise<void>;
}

export class App {
  readonly #means: Means;
  readonly #shell = new Shell();
  readonly #onCalc = new Set<(state: CalcState) => void>();
  readonly #onSaving = new Set<(saving: Saving) => void>();
  #view: ShellView;
  #open: { readonly screen: Screen; readonly closing: AbortController } | undefined;

  constructor(means: Means) {
    this.#means = means;
    const settings = means.settings.current;
    this.#view = {
      place: "", heading: "", save: "saved", server: "", calc: means.calc.state, update: false, installHint: settings.installHint,
    };
    means.settings.on((changed) => {
      showTheme(changed.theme);
      this.#change({ installHint: changed.installHint });
    });
    listen(this.#shell, hintDismissed, () => means.settings.change({ installHint: false }));
    listen(this.#shell, reloadWanted, () => void means.takeUpdate());
    means.sync.on(() => this.#tellServer());
  }

  // tellServer brings the status line up to date: what the server has, or why it is not met.
  #tellServer(): void {
    const { state } = this.#means.sync;
    const facts = { ...state, lastMet: state.lastMet ?? 0 };
    this.#change({ server: sideBySide([...syncWords(facts, Date.now()), outsideWords(facts), clockWarning(facts)]) });
  }

  // visit closes the open screen and opens another, or another page of it.
  visit({ screen, path, first }: Visit): void {
    this.#open?.closing.abort();
    this.#open?.screen.close?.();
    this.#shell.voice.say("");
    const closing = new AbortController();
    this.#open = { screen, closing };
    this.#appear();
    const { head, host } = this.#shell.stage();
    this.#change({ place: screen.name, heading: screen.title() });
    try {
      screen.open(host, this.#lend(path, head, closing.signal));
    } catch (error) {
      this.trouble(error);
    }
    if (!first) this.#shell.arrive();
  }

  // appear shows the frame, with the first screen in it or with what went wrong.
  #appear(): void {
    if (!this.#shell.isConnected) document.body.append(this.#shell);
  }

  saved(state: SaveState): void {
    const saving = state.kind === "failed" ? state.trouble.code : state.kind;
    this.#change({ save: saving });
    for (const hear of this.#onSaving) hear(saving);
  }

  calculates(state: CalcState): void {
    this.#change({ calc: state });
    for (const hear of this.#onCalc) hear(state);
  }

  offerUpdate(): void {
    this.#change({ update: true });
  }

  trouble(error: unknown): void {
    this.#appear();
    this.#shell.trouble.view = { details: detailsOf(error) };
  }

  #change(change: Partial<ShellView>): void {
    this.#view = { ...this.#view, ...change };
    this.#shell.view = this.#view;
  }

  #lend(path: readonly string[], head: HTMLElement, closed: AbortSignal): Ctx {
    const { calc, drafts, settings, book, sync } = this.#means;
    const saving = (): Saving => this.#view.save;
    return {
      calc, drafts, book, sync, closed, head, path,
      get settings() {
        return settings.current;
      },
      heading: (words) => {
        if (!closed.aborted) this.#change({ heading: words });
      },
      onSettings: (hear) => closed.addEventListener("abort", settings.on(hear)),
      changeSettings: (change) => settings.change(change),
      get saving() {
        return saving();
      },
      onSaving: (hear) => {
        this.#onSaving.add(hear);
        closed.addEventListener("abort", () => this.#onSaving.delete(hear));
      },
      onCalc: (hear) => {
        this.#onCalc.add(hear);
        closed.addEventListener("abort", () => this.#onCalc.delete(hear));
      },
      say: (words) => this.#shell.voice.say(words),
      trouble: (error) => this.trouble(error),
    };
  }
}
