package journey

import (
	"strings"
	"testing"
)

// offline are the complaints of a browser whose server is gone; the app goes on without a word.
const offline = "net::ERR_CONNECTION_REFUSED"

// installed waits until the app can be opened without the server.
func (p *Page) installed() {
	p.t.Helper()
	p.Eventually("the app to be kept for use without signal", func() bool {
		return Eval[bool](p, "navigator.serviceWorker.controller !== null")
	})
}

func TestColdStartOfflineAfterOneVisit(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	browser.Open(server.URL()).installed()
	server.Stop()
	browser.Restart()

	p := browser.Open(server.URL())
	p.Allow(offline)
	p.at("pressure")
	if answers := Eval[bool](p, "fetch('version.json').then(() => true, () => false)"); answers {
		t.Fatal("the server still answers, so this proves nothing")
	}
	p.Tap("link", words(t)["place.settings"])
	p.See(words(t)["cautions.title"])
	p.Reload()
	p.See(words(t)["cautions.title"])
	p.Go("pressure/team") // a page with a script of its own, also as the first that is opened
	p.See(words(t)["print.none"])
	p.Reload()
	p.See(words(t)["print.none"])
}

func TestTypedTextOutlivesAKilledBrowser(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL())
	p.installed()
	p.Allow(offline)
	label := words(t)["field.rider"]
	p.Type(label, "81.5")
	p.See(words(t)["status.saved"])
	p.saved("pressure")
	browser.Kill()
	server.Stop()
	browser.Restart()

	p = browser.Open(server.URL())
	p.Allow(offline)
	p.Eventually("the typed weight", func() bool { return p.Value(label) == "81.5" })
}

// allSaved waits until the status line says that everything is saved, and nothing is being written.
func (p *Page) allSaved() {
	p.t.Helper()
	said := words(p.t)["status.saved"]
	p.Eventually("the status line to say "+said, func() bool {
		return Eval[string](p, `document.querySelector("rs-status:not([aria-busy])")?.innerText ?? ""`) != "" && strings.Contains(p.Text(), said)
	})
}

// saved waits until a draft is on the disk, with all that was typed into it.
func (p *Page) saved(draft string) {
	p.t.Helper()
	p.allSaved()
	p.Eventually("the draft "+draft+" on the disk", func() bool { return p.stored(draft) != "null" })
}
