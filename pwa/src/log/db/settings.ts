// What a person chose for this phone. Kept in the draft "settings".

export const unitNames = ["bar", "psi", "kpa"] as const;
export const themeNames = ["system", "day", "night"] as const;

export const languageNames = ["phone", "en", "de"] as const;

export type Units = (typeof unitNames)[number];
export type Theme = (typeof themeNames)[number];

export type Language = (typeof languageNames)[number];

export interface Settings {
  readonly units: Units;
  readonly theme: Theme;
  readonly language: Language; // of the words
  readonly installHint: boolean; // still to be shown
}

export const defaultSettings: Settings = { units: "bar", theme: "system", language: "phone", installHint: true };

// readSettings takes what was stored, from whatever version, and fills what is missing or not understood.
export function readSettings(stored: unknown): Settings {
  const from: Record<string, unknown> = typeof stored === "object" && stored !== null ? { ...stored } : {};
  return {
    units: oneOf(unitNames, from["units"]) ?? defaultSettings.units,
    theme: oneOf(themeNames, from["theme"]) ?? defaultSettings.theme,
    language: oneOf(languageNames, from["language"]) ?? defaultSettings.language,
    installHint: typeof from["installHint"] === "boolean" ? from["installHint"] : defaultSettings.installHint,
  };
}

function oneOf<T>(names: readonly T[], value: unknown): T | undefined {
  return names.find((name) => name === value);
}

export const mirrored = "rimside-settings";

interface Store {
  save(name: string, value: unknown): Promise<boolean>;
  load(name: string): Promise<unknown>;
  follow(name: string, hear: (value: unknown) => void): () => void;
}

// SettingsBox holds the current settings. The draft is what counts; a copy in localStorage can be read at once, so that
// the first picture of the app has the right look already.
export class SettingsBox {
  #current: Settings;
  readonly #store: Store;
  readonly #heard = new Set<(settings: Settings) => void>();

  constructor(store: Store) {
    this.#store = store;
    this.#current = rememberedSettings();
    store.follow("settings", (value) => this.#take(readSettings(value)));
  }

  get current(): Settings {
    return this.#current;
  }

  // load reads the draft; it ends the time in which the copy was shown.
  async load(): Promise<void> {
    const before = this.#current;
    const stored = await this.#store.load("settings");
    if (stored !== undefined && this.#current === before) this.#take(readSettings(stored));
  }

  change(change: Partial<Settings>): void {
    this.#take({ ...this.#current, ...change });
    void this.#store.save("settings", this.#current);
  }

  // on hears of every change, also from other tabs. The result ends it.
  on(hear: (settings: Settings) => void): () => void {
    this.#heard.add(hear);
    return () => this.#heard.delete(hear);
  }

  #take(settings: Settings): void {
    this.#current = settings;
    try {
      localStorage.setItem(mirrored, JSON.stringify(settings));
    } catch {
      // only the first picture suffers
    }
    for (const hear of this.#heard) hear(settings);
  }
}

// rememberedSettings are those of the copy in localStorage, which can be read at once.
export function rememberedSettings(): Settings {
  try {
    return readSettings(JSON.parse(localStorage.getItem(mirrored) ?? "null"));
  } catch {
    return defaultSettings;
  }
}
