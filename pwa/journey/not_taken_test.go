package journey

import (
	"strings"
	"testing"
	"time"
)

// A phone and the server hold different things under one id: neither takes the other's, and a person is told.
func TestWhatTheServerDoesNotTakeIsToldUntilSeen(t *testing.T) {
	server := TeamServer(StartServer(t))
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/settings", `
		Clipboard.prototype.writeText = async (text) => void (globalThis.copied = text);`)
	p.See(in["sync.phase.even"])
	server.Stop()
	p.Allow("ERR_CONNECTION_REFUSED")
	here := deed{id: "x", rec: "tyre", kind: "tyre", ago: time.Hour, by: "Ana", set: members{"name": "Ochre 40s", "measured_mm": 41.5}}
	p.bringIn(members{"rimside": 1, "book": teamBook}, here.op())
	p.See(fill(in["copies.read"], "fresh", "1", "known", "0", "bad", "0"))
	server.Start()
	there := here
	there.set = members{"name": "Umber 32s"}
	server.Push(there)
	p.Online()
	p.Tap("link", fill(in["book.refused"], "n", "1"))
	p.Find("heading", "Tyre · Ochre 40s")
	p.See("Code: other_content")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("what was refused at " + size.Name)
	})
	p.Shot("refused")
	p.Tap("button", fill(in["refused.copyOf"], "name", "Tyre · Ochre 40s"))
	p.See(in["refused.copied"])
	if copied := Eval[string](p, "globalThis.copied"); !strings.Contains(copied, hexOf("x")) || !strings.Contains(copied, "other_content") {
		t.Errorf("copied was %s", copied)
	}
	p.Tap("button", fill(in["refused.seenOf"], "name", "Tyre · Ochre 40s"))
	p.See(in["refused.none"])
	p.Go("settings")
	p.Find("link", fill(in["book.refused"], "n", "0"))
	p.Reload()
	p.See(in["sync.phase.even"])
	p.Find("link", fill(in["book.refused"], "n", "0"))
}
