import { equal, test } from "../ui/testing.ts";
import { choose } from "./locale.ts";
import { useLocale, w } from "./index.ts";
import { fixed, plain } from "./number.ts";

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

test("words: placeholders are filled, numbers by locale", () => {
  inLocale(["en"], () => equal(w("app.titled", { screen: "Checks" }), "Checks · Rimside"));
  inLocale(["de"], () => equal(w("recover.done", { caches: 1.5, workers: 1 }).includes("1,5"), true));
});

test("words: the first language with a catalogue, and the first usable number habit", () => {
  equal(choose(["de-AT", "en-US"]), { words: "en", numbers: "de-AT" });
  equal(choose([]), { words: "en", numbers: "en" });
  equal(choose(["not a tag", "fr"]), { words: "en", numbers: "fr" });
});
