// What a person chose for this phone. Kept in the draft "settings".

export const unitNames = ["bar", "psi", "kpa"] as const;
export const themeNames = ["system", "day", "night"] as const;

export type Units = (typeof unitNames)[number];
export type Theme = (typeof themeNames)[number];

export interface Settings {
  readonly units: Units;
  readonly theme: Theme;
  readonly installHint: boolean; // still to be shown
}

export const defaultSettings: Settings = { units: "bar", theme: "system", installHint: true };

// readSettings takes what was stored, from whatever version, and fills what is missing or not understood.
export function readSettings(stored: unknown): Settings {
  const from: Record<string, unknown> = typeof stored === "object" && stored !== null ? { ...stored } : {};
  return {
    units: oneOf(unitNames, from["units"]) ?? defaultSettings.units,
    theme: oneOf(themeNames, from["theme"]) ?? defaultSettings.theme,
    installHint: typeof from["installHint"] === "boolean" ? from["installHint"] : defaultSettings.installHint,
  };
}

function oneOf<T>(names: readonly T[], value: unknown): T | undefined {
  return names.find((name) => name === value);
}
