package journey

import (
	"strings"
	"testing"
)

// databases are the names of what this phone holds.
func (p *Page) databases() []string {
	p.t.Helper()
	return Eval[[]string](p, "indexedDB.databases().then((all) => all.map((each) => each.name))")
}

func TestErasingEverythingHere(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	in := words(t)
	p := browser.Open(server.URL())
	p.installed()
	server.Stop()
	p.Allow(offline)
	p.firstAnswers()
	p.See("not yet on the server")
	p.Go("settings")
	p.Tap("radio", in["settings.unit.psi"])
	p.Tap("link", in["erase.title"])
	p.See("Save a copy")
	p.See("This phone holds")
	p.Axe()
	p.fits("erasing")
	p.Shot("erase-all")
	before := p.databases()
	p.Tap("button", in["erase.button"])
	p.See(strings.Split(in["erase.wrong"], "{")[0])
	p.Type(strings.ReplaceAll(in["erase.type"], "{word}", in["erase.word"]), "eras")
	p.Tap("button", in["erase.button"])
	p.See("Nothing was erased")
	if now := p.databases(); len(before) != 1 || strings.Join(now, " ") != before[0] {
		t.Fatalf("without the word %v became %v", before, now)
	}
	p.Type(strings.ReplaceAll(in["erase.type"], "{word}", in["erase.word"]), "erase")
	p.Tap("button", in["erase.button"])
	p.See(in["first.intro"])
	if value := p.Value(in["field.rider"]); value != "" {
		t.Errorf("the rider still weighs %s", value)
	}
	p.Eventually("another book", func() bool { now := p.databases(); return len(now) == 1 && now[0] != before[0] })
	if unit := Eval[string](p, `localStorage.getItem("rimside-settings") ?? ""`); strings.Contains(unit, "psi") {
		t.Errorf("the settings are still %s", unit)
	}
	p.Go("settings") // the app itself is still there, without a server
	p.Find("heading", in["erase.title"])
}

func TestTheServersBookOutlivesErasingAPhone(t *testing.T) {
	server := TeamServer(StartServer(t), bikesOf(2)...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL())
	p.number(in["side.front"])
	p.Go("settings/erase")
	p.See(in["erase.sent"])
	p.Type(strings.ReplaceAll(in["erase.type"], "{word}", in["erase.word"]), in["erase.word"])
	p.Tap("button", in["erase.button"])
	p.number(in["side.front"]) // fetched anew
	if !strings.Contains(server.Export(), "Rider 02") {
		t.Error("the server has lost its book")
	}
}
