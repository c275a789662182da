package journey

import (
	"slices"
	"strings"
	"testing"
)

// settingsPages are the pages below Settings, with something on each of them.
var settingsPages = []string{
	"settings/clashes", "settings/records", "settings/refused", "settings/books", "settings/history/" + hexOf("tyre"), "settings/history/" + hexOf("gauge"),
}

func TestPagesOfSettingsFitSmallScreensAndLargeText(t *testing.T) {
	server := TeamServer(StartServer(t), slices.Concat(pastOfATyre, apartAgain, deletedAndEdited)...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings")
	p.See(in["sync.phase.even"])
	for _, page := range settingsPages {
		p.Go(page)
		p.Find("navigation", in["book.back"])
		p.fits(page)
	}
}

// apartAgain has a text that no screen is wide enough for.
var apartAgain = []deed{
	{id: "w1", rec: "pump", kind: "pump", by: "Ana", set: members{"name": "Pump", "note": "one" + longWord}},
	{id: "w2", rec: "pump", kind: "pump", by: "Ben", set: members{"name": "Pump", "note": "two" + longWord}},
}

const longWord = "abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz"

func TestNothingJumpsWhileAPageOfSettingsOpens(t *testing.T) {
	server := TeamServer(StartServer(t), slices.Concat(pastOfATyre, apartAgain, deletedAndEdited)...)
	in := words(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL() + "#/settings")
	p.See(in["sync.phase.even"])
	p.installed()
	p.Close()
	for _, page := range settingsPages {
		p := browser.Open(server.URL()+"#/"+page, shifts)
		p.Find("navigation", in["book.back"])
		Eval[bool](p, "new Promise((resolve) => setTimeout(() => resolve(true), 1000))")
		// Of a short page the status line at its very end may move once.
		if jumped := Eval[float64](p, "globalThis.jumped"); jumped > 0.01 {
			t.Errorf("%s jumps by %v while it opens: %v", page, jumped, Eval[[]string](p, "globalThis.jumps"))
		}
		p.Close()
	}
}

func TestWithoutStorageThePagesOfSettingsSayWhyTheyAreEmpty(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL(), `Object.defineProperty(globalThis, "indexedDB", {
		get() { throw new DOMException("storage is off", "SecurityError"); }})`)
	for _, page := range settingsPages {
		p.Go(page)
		p.Eventually("the reason on "+page, func() bool {
			return strings.Contains(Eval[string](p, `document.querySelector("main").innerText`), in["status.cannot.refused"])
		})
	}
	p.Go("settings")
	p.Resize(Desk)
	if says := Eval[string](p, `document.querySelector("rs-book-card").innerText`); strings.Contains(says, in["status.saved"]) || !strings.Contains(says, in["status.cannot.refused"]) {
		t.Errorf("the book is said to be saved: %s", says)
	}
	p.nameMeInVain("Ana")
	p.Tap("button", in["copies.save"])
	p.Eventually("that there is no copy", func() bool {
		return strings.Contains(Eval[string](p, `document.querySelector("rs-copies").innerText`), in["status.cannot.refused"])
	})
	p.NotSee(in["trouble.title"])
}

func (p *Page) nameMeInVain(name string) {
	p.t.Helper()
	in := words(p.t)
	p.Type(in["me.name"], name)
	p.Tap("heading", in["me.title"])
	p.Eventually("that the name is not saved", func() bool {
		return strings.Contains(Eval[string](p, `document.querySelector(".me").innerText`), in["status.cannot.refused"])
	})
}

func TestTheWayBackFromPagesOfSettings(t *testing.T) {
	server := TeamServer(StartServer(t), pastOfATyre...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings/history/" + hexOf("tyre")) // opened from a bookmark
	p.Find("heading", "Tyre · Ochre 40s")
	p.at("settings")
	p.Tap("link", in["records.title"])
	p.Find("heading", in["records.title"])
	p.Eventually("the focus on the heading", func() bool { return p.Focused().Role == "heading" })
	p.Tap("link", "Ochre 40s")
	p.Find("heading", "Tyre · Ochre 40s")
	for _, heading := range []string{in["records.title"], "Tyre · Ochre 40s"} {
		Eval[bool](p, "history.back() ?? true") // as the phone's own button does
		p.Find("heading", heading)
	}
	// Settings has two links of its name here: the gear, and the way back with its words.
	p.tap(p.inside("navigation", in["book.back"], "link", in["place.settings"]))
	p.Find("heading", in["book.title"])
}

// inside finds what lies within something else.
func (p *Page) inside(outerRole, outerName, role, name string) Node {
	p.t.Helper()
	outer := p.Find(outerRole, outerName)
	nodes := p.Tree()
	for _, node := range nodes {
		if node.Role == role && node.Name == name && within(nodes, node, outer) {
			return node
		}
	}
	p.t.Fatalf("no %s %q in %q", role, name, outerName)
	return Node{}
}
