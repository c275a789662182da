package journey

import (
	"strings"
	"testing"
	"time"
)

var pastOfATyre = []deed{
	{id: "t1", rec: "tyre", kind: "tyre", ago: 40 * time.Hour, by: "Ana", set: members{"name": "Ochre 40s", "measured_mm": 41, "max_kpa": 500}},
	{id: "t2", rec: "tyre", kind: "tyre", ago: 2 * time.Hour, by: "Ben", set: members{"measured_mm": 42}, others: replacing("t1", "measured_mm")},
	{id: "g1", rec: "gauge", kind: "gauge", ago: 40 * time.Hour, by: "Ben", set: members{"name": "Old dial"}},
	{id: "g2", rec: "gauge", kind: "gauge", ago: 30 * time.Hour, by: "Ana", set: members{"deleted": true}, others: knowing("g1")},
	{id: "d1", rec: "Dora", kind: "person", ago: 20 * time.Hour, by: "Ana", set: members{"name": "Dora"}},
	{id: "d2", rec: "Dora", kind: "erase", ago: 10 * time.Hour, by: "Ana", set: members{"kind": "person"}},
}

func TestHistoryTellsWhoWhenAndFromWhatToWhat(t *testing.T) {
	server := TeamServer(StartServer(t), pastOfATyre...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings/history/" + hexOf("tyre"))
	p.Find("heading", "Tyre · Ochre 40s")
	p.See("Measured width: 42 mm before: 41 mm")
	text := p.Text()
	for _, part := range []string{in["history.changed"], in["history.made"], "Ben, on Ben’s phone", "Ana, on Ana’s phone", "Maximum printed on it: 5.00 bar"} {
		if !strings.Contains(text, part) {
			t.Errorf("the history does not say %q: %s", part, text)
		}
	}
	if strings.Index(text, in["history.changed"]) > strings.Index(text, in["history.made"]) {
		t.Error("the oldest stands first")
	}
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("history at " + size.Name)
	})
	p.Shot("history")
	p.Tap("button", fill(in["history.againOf"], "field", in["recField.measured_mm"], "value", "41 mm"))
	p.See(fill(in["history.isSet"], "field", in["recField.measured_mm"], "value", "41 mm"))
	p.Find("button", fill(in["history.againOf"], "field", in["recField.measured_mm"], "value", "42 mm"))
	p.Eventually("it on the server", func() bool { return strings.Count(server.Export(), hexOf("tyre")) == 3 })
}

func TestWhatWasDeletedIsRestoredAndThatTakenBack(t *testing.T) {
	server := TeamServer(StartServer(t), pastOfATyre...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings/history/" + hexOf("gauge"))
	p.See(in["history.isDeleted"])
	p.Axe()
	p.Shot("history-deleted")
	p.Tap("button", in["history.restore"])
	p.See(in["history.isRestored"])
	p.NotSee(in["history.isDeleted"])
	p.Tap("button", in["ground.undo"])
	p.See(in["history.isDeleted"])
	p.Tap("button", in["history.restore"])
	p.See(in["history.isRestored"])
	p.Eventually("it on the server", func() bool { return strings.Count(server.Export(), `"deleted":false`) == 2 })
}

func TestHistoryOfWhatIsGone(t *testing.T) {
	server := TeamServer(StartServer(t), pastOfATyre...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings/history/" + hexOf("Dora"))
	p.See(in["history.isErased"])
	p.NotSee("Dora")
	p.Go("settings/history/" + hexOf("nobody"))
	p.See(in["history.unknown"])
	p.Go("settings/history/else") // no record's id: the way back to Settings
	p.Find("heading", in["book.title"])
}
