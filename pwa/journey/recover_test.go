package journey

import "testing"

func TestRecoverClearsTheProgramAndKeepsTheData(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	in := words(t)
	p := browser.Open(server.URL())
	p.installed()
	p.Type(in["field.rider"], "77")
	p.saved("pressure")
	p.Tap("link", in["place.settings"])
	p.Tap("link", in["version.recover"])
	p.Find("heading", in["recover.title"])
	p.Axe()
	p.Shot("recover")
	if kept := Eval[int](p, "caches.keys().then((names) => names.length)"); kept == 0 {
		t.Fatal("there is nothing to clear, so this proves nothing")
	}
	p.Tap("button", in["recover.go"])
	p.Eventually("no program files", func() bool { return Eval[int](p, "caches.keys().then((names) => names.length)") == 0 })
	p.Eventually("no worker", func() bool {
		return Eval[int](p, "navigator.serviceWorker.getRegistrations().then((all) => all.length)") == 0
	})
	p.Tap("link", in["recover.back"])
	p.Eventually("the typed weight", func() bool { return p.Value(in["field.rider"]) == "77" })
	p.installed()
}
