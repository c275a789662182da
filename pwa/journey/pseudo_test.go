package journey

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

// inPseudo makes the app speak the language for tests, in which every word of the catalogue is marked and accented.
const inPseudo = `Object.defineProperty(Navigator.prototype, "languages", {get: () => ["en-XA"]})`

// pseudoBook has something on every page; its names have no vowel without an accent, as the language itself.
var pseudoBook = slices.Concat([]deed{
	{id: "x1", rec: "ÄB", kind: "person", ago: 9 * time.Hour, by: "ÄB", set: members{"name": "ÄB", "mass_kg": 72}},
	{id: "x2", rec: "tyre", kind: "tyre", ago: 9 * time.Hour, by: "ÄB", set: members{"name": "ÖC 40", "label_mm": 40, "measured_mm": 41.5}},
	{id: "x3", rec: "wheel", kind: "wheel", ago: 9 * time.Hour, by: "ÄB", set: members{
		"name": "WF", "tyre": hexOf("tyre"), "setup": "tubeless", "profile": "hookless", "inner_mm": 25, "brake": "disc", "rotor_mm": 160, "rotor_min_mm": 1.5}},
	{id: "x4", rec: "wheel2", kind: "wheel", ago: 9 * time.Hour, by: "ÄB", set: members{"name": "WR", "tyre": hexOf("tyre"), "setup": "tube"}},
	{id: "x5", rec: "bike", kind: "bike", ago: 9 * time.Hour, by: "ÄB", set: members{
		"name": "ÖC", "number": "17", "rider": hexOf("ÄB"), "front": hexOf("wheel"), "rear": hexOf("wheel2"), "brake": "disc", "spacing": "11-34"}},
	{id: "x6", rec: "gauge", kind: "gauge", ago: 9 * time.Hour, by: "ÄB", set: members{"name": "GG", "error_kpa": 10}},
	{id: "x7", rec: "rotor", kind: "measure", ago: 8 * time.Hour, by: "ÄB", set: members{"what": "rotor_thickness", "of": hexOf("wheel"), "day": "2026-05-01", "values": []float64{1.7}}},
	{id: "x8", rec: "tyre", kind: "tyre", ago: 3 * time.Hour, by: "ÇD", set: members{"measured_mm": 42}, others: replacing("x2", "measured_mm")},
	{id: "x9", rec: "tyre", kind: "tyre", ago: 2 * time.Hour, by: "ÄB", set: members{"measured_mm": 41}, others: replacing("x2", "measured_mm")},
	{id: "xa", rec: "pump", kind: "pump", ago: 2 * time.Hour, by: "ÄB", set: members{"name": "PP", "stroke_ml": 120}},
	{id: "xb", rec: "pump", kind: "pump", ago: time.Hour, by: "ÄB", set: members{"deleted": true}, others: knowing("xa")},
})

// pseudoPages are the places and their pages that a book fills.
var pseudoPages = []string{
	"settings", "settings/clashes", "settings/records", "settings/refused", "settings/books", "settings/phones", "settings/erase", "settings/history/" + hexOf("tyre"),
	"settings/history/" + hexOf("pump"), "wheels", "wheels/new/bike", "wheels/new/gauge", "wheels/lists", "wheels/guide", "wheels/guide/width", "wheels/guide/rotor",
	"wheels/" + hexOf("bike"), "wheels/" + hexOf("wheel"), "wheels/" + hexOf("tyre"), "wheels/" + hexOf("gauge"),
	"wheels/measure/" + hexOf("tyre") + "/width", "wheels/measure/" + hexOf("wheel") + "/rotor_thickness", "wheels/measure/" + hexOf("bike") + "/as_built",
	"pressure", "checks", "packing", "car",
}

// unmarked lists what a person reads or hears on the page and is no word of the catalogue: a vowel that has no accent, a
// letter outside the marks, or texts glued with a comma or a colon. Months, addresses, the version, the team's names and what a list's cells may hold are
// not the catalogue's.
const unmarked = `(() => {
	const given = /\b(January|February|March|April|May|June|July|August|September|October|November|December|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sep|Oct|Nov|Dec|AM|PM)\b|https?:\S+|\b(Ana|Ben)(’s phone)?\b|\b[0-9a-f]{12}\b/g;
	const wrong = (text) => {
		if (/[aeiou]/i.test(text)) return true;
		let depth = 0, outside = "", marks = 0;
		for (const letter of text) {
			if (letter === "[" && depth++ === 0) marks++;
			else if (letter === "]") depth--;
			else if (depth === 0) outside += letter;
		}
		return /\p{Ll}/u.test(outside) || (marks > 1 && /[,;:]/.test(outside));
	};
	const texts = [];
	const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
		const shown = node.parentElement?.checkVisibility() && node.parentElement.closest("script, style, code, pre, input, textarea") === null;
		if (shown && node.data.trim() !== "") texts.push(node.data);
	}
	for (const name of ["aria-label", "aria-description", "placeholder", "title", "alt"]) {
		for (const each of document.querySelectorAll("[" + name + "]")) if (each.checkVisibility()) texts.push(each.getAttribute(name));
	}
	texts.push(document.title);
	return [...new Set(texts.filter((text) => wrong(text.replace(given, ""))))];
})()`

// cellValues: the help of a list names what its cells may hold, which is the same in every language.
var cellValues = regexp.MustCompile(`^\[\[\P{Ll}*[^\]]*\]: \[[a-z]+(, [a-z]+)*,? or [a-z]+\]\]$`)

// cut lists what is wider than its box, which hides the rest.
const cut = `[...document.querySelectorAll("body *")].filter((each) => each.checkVisibility() && each.scrollWidth > each.clientWidth + 1
	&& ["hidden", "clip"].includes(getComputedStyle(each).overflowX) && each.clientWidth > 8 && each.textContent.trim() !== "")
	.map((each) => each.tagName + "." + each.className + ": " + each.textContent.slice(0, 60) + " is " + each.scrollWidth + " in " + each.clientWidth)`

func TestEveryPlaceInAnotherLanguage(t *testing.T) {
	server := TeamServer(StartServer(t), pseudoBook...)
	p := OpenBrowser(t).Open(server.URL()+"#/settings", inPseudo)
	p.See("lååšť šýñçééð")
	for _, page := range pseudoPages {
		p.Go(page)
		p.Eventually("the heading of "+page, func() bool {
			return strings.HasPrefix(Eval[string](p, "document.querySelector('h1')?.textContent ?? ''"), "[")
		})
		p.Eventually("something on "+page, func() bool { return Eval[int](p, "document.querySelector('main').innerText.length") > 20 })
		Eval[bool](p, `[...document.querySelectorAll("details")].every((each) => each.open = true)`)
		for _, text := range Eval[[]string](p, unmarked) {
			if page == "wheels/lists" && cellValues.MatchString(text) {
				continue
			}
			t.Errorf("%s: came past the catalogue, or was glued: %q", page, text)
		}
		p.fitsAnother(page)
		p.ShotNow("pseudo-" + strings.ReplaceAll(page, "/", "-"))
	}
}

// fitsAnother looks whether a page of another language is wider than the phone, or cut off.
func (p *Page) fitsAnother(page string) {
	p.t.Helper()
	for _, size := range []Size{{"320x640", 320, 640, 2, true}, Phone} {
		p.Resize(size)
		p.wide(fmt.Sprintf("%s at %s in another language", page, size.Name))
		for _, each := range Eval[[]string](p, cut) {
			p.t.Errorf("%s at %s: cut off in another language: %s", page, size.Name, each)
		}
	}
}

// German is chosen in Settings, stays with no signal, and fits every place; the numbers have their comma.
func TestEveryPlaceInGerman(t *testing.T) {
	server := TeamServer(StartServer(t), pseudoBook...)
	in, de := words(t), wordsIn(t, "de")
	p := OpenBrowser(t).Open(server.URL() + "#/settings")
	p.See("last synced")
	p.installed()
	p.Choose(in["settings.language"], in["settings.language.de"])
	p.Find("heading", de["place.settings"])
	p.Allow(offline)
	server.Stop()
	p.Reload()
	p.Find("heading", de["place.settings"])
	if language := Eval[string](p, "document.documentElement.lang"); language != "de" {
		t.Errorf("the page says that its language is %q", language)
	}
	for _, page := range pseudoPages {
		p.Go(page)
		p.Eventually("something on "+page, func() bool { return Eval[int](p, "document.querySelector('main').innerText.length") > 20 })
		if place, known := de["place."+page]; known {
			p.Find("link", place)
		}
		p.fitsAnother(page)
		p.Axe()
		p.ShotNow("german-" + strings.ReplaceAll(page, "/", "-"))
	}
	p.Go("wheels/" + hexOf("tyre"))
	p.See("0,5 bis 15 bar")
}
