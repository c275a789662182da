// Day or night: from the phone unless a person chose. The bar of the browser takes the paper's colour too.

const paper = { day: "#fbf8f1", night: "#11110e" };

export function showTheme(theme: "system" | "day" | "night"): void {
  const root = document.documentElement;
  if (theme === "system") delete root.dataset["theme"];
  else root.dataset["theme"] = theme;
  for (const meta of document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')) {
    const own = meta.media.includes("dark") ? "night" : "day";
    meta.content = paper[theme === "system" ? own : theme];
  }
}
