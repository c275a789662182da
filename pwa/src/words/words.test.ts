import { equal, test } from "../ui/testing.ts";
import { first as firstGerman } from "./de/first.ts";
import { later as laterGerman } from "./de/later.ts";
import { en } from "./en/index.ts";
import { type Entry, say } from "./entry.ts";
import { all, either, facts, listed, sentences, useLocale, w } from "./index.ts";
import { learn } from "./locale.ts";
import { fixed, plain } from "./number.ts";
import { pseudo, pseudoText } from "./pseudo.ts";
import { choose } from "./wanted.ts";

function inLocale(tags: readonly string[], work: () => void): void {
  useLocale(tags);
  try {
    work();
  } finally {
    useLocale(["en"]);
  }
}

test("number: fixed decimals as the locale writes them", () => {
  inLocale(["en-GB"], () => equal([fixed(2.145, 1), fixed(2, 2), fixed(1100, 0)], ["2.1", "2.00", "1100"]));
  inLocale(["de-DE"], () => equal([fixed(2.15, 2), fixed(1234.5, 1), plain(0.25)], ["2,15", "1234,5", "0,25"]));
});

test("number: no minus before a zero", () => {
  inLocale(["en"], () => equal([fixed(-0.04, 1), fixed(-0.06, 1), fixed(-0, 0)], ["0.0", "-0.1", "0"]));
});

test("words: values are filled in, numbers by locale", () => {
  inLocale(["en"], () => equal(w("app.titled", { screen: "Checks" }), "Checks · Rimside"));
  inLocale(["de"], () => equal(say("{n} mm", { n: 1.5 }, "en"), "1,5 mm"));
  equal(say("{a} {b}", { a: "{b}", b: "$&" }, "en"), "{b} $&"); // what a person typed is no pattern
});

test("words: the number chooses the form, by the language of the words", () => {
  const strokes: Entry = { by: "n", one: "{n} stroke", other: "{n} strokes" };
  equal([0, 1, 1.5, 2, 21].map((n) => say(strokes, { n }, "en")), ["0 strokes", "1 stroke", "1.5 strokes", "2 strokes", "21 strokes"]);
  const polish: Entry = { by: "n", one: "{n} koło", few: "{n} koła", many: "{n} kół", other: "{n} koła" };
  equal([1, 2, 5, 22, 1.5].map((n) => say(polish, { n }, "pl")), ["1 koło", "2 koła", "5 kół", "22 koła", "1.5 koła"]);
});

test("words: the first language with a catalogue, and the first usable number habit", () => {
  equal(choose(["de-AT", "en-US"]), { words: "de", numbers: "de-AT" });
  equal(choose(["nl-BE", "en-US"]), { words: "en", numbers: "nl-BE" });
  equal(choose([]), { words: "en", numbers: "en" });
  equal(choose(["not a tag", "fr"]), { words: "en", numbers: "fr" });
  equal(choose(["en-XA", "en"]), { words: "en-XA", numbers: "en-XA" });
});

test("words: several things are separated as the language does it", () => {
  equal(all(["a", "", "b", "c"]), "a, b and c");
  equal([all(["a"]), all([])], ["a", ""]);
  equal(either(["a", "b"]), "a or b");
  equal([listed(["a", "b", "c"]), facts(["a", "", "b"]), sentences(["A.", "B."])], ["a, b, c", "a · b", "A. B."]);
  inLocale(["en-XA"], () => equal(listed(["[$&]", "[b]"]), "[[$&], [b]]"));
});

test("pseudo: longer by a third, accented, marked at both ends, its values kept", async () => {
  equal(pseudoText("Saved: {field}."), "[Šååvééð: {field}.]");
  equal(pseudoText("One.\nTwo."), "[ÖÖñéé.]\n[Ťwöö.]");
  equal([pseudoText(" · "), pseudoText("2.1")], [" · ", "2.1"]);
  const wanted = Object.values(en).flatMap(formsOf).join("").length;
  const longer = Object.values(pseudo(en)).flatMap(formsOf).join("").length / wanted;
  equal(longer > 1.25 && longer < 1.5, true);
  useLocale(["en-XA"]);
  await learn("first").finally(() => useLocale(["en"]));
  inLocale(["en-XA"], () => equal(w("app.titled", { screen: w("place.checks") }), "[[Çhééçkš] · Řîîmšîîðéé]"));
});

function formsOf(entry: Entry): readonly string[] {
  if (typeof entry === "string") return [entry];
  const { by: _, ...forms } = entry;
  return Object.values(forms);
}

const holes = (text: string): string => [...new Set(text.match(/\{\w+\}/g) ?? [])].sort().join();

// disagreements are the faults of a catalogue against the English one: values that nothing fills, forms that lack, marks
// that the language for tests needs for itself.
function disagreements(catalogue: Readonly<Record<string, Entry>>, language: string): readonly string[] {
  const categories = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
  return Object.entries(catalogue).flatMap(([key, entry]) => {
    const english = (en as Readonly<Record<string, Entry>>)[key];
    if (english === undefined) return [`${key} is not in the English catalogue`];
    const known = holes(formsOf(english).join()) + (typeof english === "string" ? "" : `{${english.by}}`);
    const faults = formsOf(entry).flatMap((text) => (text.match(/\{\w+\}/g) ?? []).filter((hole) => !known.includes(hole)).map((hole) => `${key} knows no ${hole}`));
    if (formsOf(entry).some((text) => text === "" || /[[\]]/.test(text))) faults.push(`${key} is empty or has a bracket`);
    if (typeof entry === "string") return faults;
    if (!known.includes(`{${entry.by}}`)) faults.push(`${key} counts by ${entry.by}, which nobody gives`);
    return [...faults, ...categories.filter((each) => entry[each] === undefined).map((each) => `${key} has no form for ${each}`)];
  });
}

test("words: what a catalogue fills in is given, and no plural form lacks", () => {
  equal(disagreements(en, "en"), []);
  const broken = { "no.such": "a", "place.checks": "{n} Checks", "app.titled": { by: "n", other: "{screen}" }, "place.packing": "" };
  equal(disagreements(broken, "en"), ["no.such is not in the English catalogue", "place.checks knows no {n}",
    "app.titled counts by n, which nobody gives", "app.titled has no form for one", "place.packing is empty or has a bracket"]);
});

test("words: German lacks nothing, fills in what English does, and has all plural forms", () => {
  const german = { ...firstGerman, ...laterGerman };
  equal(disagreements(german, "de"), []);
  equal(Object.keys(en).filter((key) => !Object.hasOwn(german, key)), []);
});
