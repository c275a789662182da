package journey

import (
	"fmt"
	"testing"
	"time"
)

func TestEverythingInTheBook(t *testing.T) {
	deeds := pastOfATyre
	for i := range 12 {
		day := fmt.Sprintf("2026-07-%02d", i+1)
		deeds = append(deeds, deed{id: fmt.Sprint("s", i), rec: fmt.Sprint("ride", i), kind: "ride", ago: time.Duration(20-i) * time.Hour, by: "Ben", set: members{"day": day, "km": 40 + i}})
	}
	deeds = append(deeds, deed{id: "l1", rec: "lamp", kind: "lamp", ago: time.Hour, by: "Ben", set: members{"name": "Head lamp", "glow": []int{1, 2}}})
	server := TeamServer(StartServer(t), deeds...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings")
	p.Tap("link", in["book.records"])
	p.Find("heading", in["records.title"])
	count := func(kind string, n int) string { return fill(in["records.kind"], "kind", kind, "n", fmt.Sprint(n)) }
	p.Find("heading", count(in["recKind.ride"], 12))
	p.Find("heading", count(fill(in["recKind.other"], "kind", "lamp"), 1))
	p.Find("link", "Old dial "+in["records.deleted"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the records at " + size.Name)
	})
	p.Shot("records")

	p.Find("link", "Jul 12")
	if older := p.matching("link", "Jul 1"); len(older) != 0 {
		t.Error("a long list is shown whole at once")
	}
	p.Tap("button", fill(in["records.moreOf"], "kind", in["recKind.ride"]))
	p.Tap("link", "Jul 1")
	p.Find("heading", "Ride · Jul 1")
	Eval[bool](p, "history.back() ?? true") // as the phone's own button does
	p.Find("heading", in["records.title"])

	p.Tap("button", fill(in["records.restoreOf"], "name", "Gauge · Old dial"))
	p.See(fill(in["records.restored"], "name", "Gauge · Old dial"))
	p.Find("link", "Old dial")
	p.Tap("button", in["ground.undo"])
	p.Find("link", "Old dial "+in["records.deleted"])
}

func TestAnEmptyBookSaysSo(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.Go("settings/records")
	p.See(in["records.none"])
	p.Axe()
	p.Go("settings/clashes")
	p.See(in["clash.none"])
	p.Axe()
	p.Go("settings/refused")
	p.See(in["refused.none"])
	p.Axe()
}
