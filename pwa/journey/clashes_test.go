package journey

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
)

// Two phones that were apart and said different things.
var apart = []deed{
	{id: "t1", rec: "tyre", kind: "tyre", ago: 40 * time.Hour, by: "Ana", set: members{"name": "Ochre 40s", "measured_mm": 41, "max_kpa": 500}},
	{id: "t2", rec: "tyre", kind: "tyre", ago: 3 * time.Minute, by: "Ana", set: members{"measured_mm": 41.5}, others: replacing("t1", "measured_mm")},
	{id: "t3", rec: "tyre", kind: "tyre", ago: 2 * time.Minute, by: "Ben", set: members{"measured_mm": 42}, others: replacing("t1", "measured_mm")},
}

var deletedAndEdited = []deed{
	{id: "u1", rec: "other", kind: "tyre", ago: 40 * time.Hour, by: "Ana", set: members{"name": "Umber 32s"}},
	{id: "u2", rec: "other", kind: "tyre", ago: 3 * time.Minute, by: "Ana", set: members{"deleted": true}, others: knowing("u1")},
	{id: "u3", rec: "other", kind: "tyre", ago: 2 * time.Minute, by: "Ben", set: members{"measured_mm": 33.2}},
}

// button finds the one button whose name begins like this: times stand behind what a test can know.
func (p *Page) button(begin string) Node {
	p.t.Helper()
	var found []Node
	p.Eventually(fmt.Sprintf("one button %q…", begin), func() bool {
		found = slices.DeleteFunc(p.Tree(), func(node Node) bool { return node.Role != "button" || !strings.HasPrefix(node.Name, begin) })
		return len(found) == 1
	})
	return found[0]
}

func TestAClashIsDecidedAndAnotherAnswerMayStillBeGiven(t *testing.T) {
	server := TeamServer(StartServer(t), apart...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings")
	p.Tap("link", fill(in["book.clashes"], "n", "1"))
	p.Find("heading", "Tyre · Ochre 40s")
	p.Find("group", fill(in["clash.which"], "field", in["recField.measured_mm"]))
	shown, other := p.button("42 mm"), p.button("41.5 mm")
	if name := spaced(shown.Name); !strings.Contains(name, "Ben, ") || !strings.HasSuffix(name, in["clash.shown"]) {
		t.Errorf("the value shown now is called %q", name)
	}
	if name := spaced(other.Name); !strings.Contains(name, "Ana, ") || strings.Contains(name, in["clash.shown"]) {
		t.Errorf("the other value is called %q", name)
	}
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a clash at " + size.Name)
	})
	p.Shot("clash")

	p.tap(p.button("41.5 mm"))
	p.See("Measured width: 41.5 mm")
	p.Eventually("the focus on what came of it", func() bool { return Eval[string](p, "document.activeElement.tagName") == "P" })
	p.See(in["clash.done"])
	p.Axe()
	p.Shot("clash-decided")
	p.Tap("button", fill(in["clash.instead"], "label", "42 mm"))
	p.See("Measured width: 42 mm")
	p.Eventually("the choice on the server", func() bool { return strings.Count(server.Export(), hexOf("tyre")) == len(apart)+2 })
	p.Tap("link", fill(in["clash.historyOf"], "name", "Tyre · Ochre 40s"))
	p.Find("heading", "Tyre · Ochre 40s")
	p.NotSee(in["history.clashes"])
	p.Go("settings/clashes")
	p.See(in["clash.none"])
	p.Axe()
}

func TestAnotherAnswerIsOfferedForTenSecondsOnly(t *testing.T) {
	server := TeamServer(StartServer(t), apart...)
	in := words(t)
	// Ten seconds pass in one.
	p := OpenBrowser(t).Open(server.URL()+"#/settings/clashes", `
		const later = setTimeout;
		globalThis.setTimeout = (work, ms, ...rest) => later(work, ms >= 10000 ? 1000 : ms, ...rest);
		const now = Date.now;
		const from = now();
		Date.now = () => from + (now() - from) * 10;`)
	p.tap(p.button("41.5 mm"))
	instead := fill(in["clash.instead"], "label", "42 mm")
	p.See(instead)
	p.NotSee(instead)
	p.See("Measured width: 41.5 mm")
}

func TestDeletedHereEditedThere(t *testing.T) {
	for _, answer := range []string{"clash.restore", "clash.delete"} {
		t.Run(answer, func(t *testing.T) {
			server := TeamServer(StartServer(t), deletedAndEdited...)
			in := words(t)
			p := OpenBrowser(t).Open(server.URL() + "#/settings/clashes")
			p.Find("group", in["clash.keep"])
			text := p.Text()
			for _, part := range []string{"Removed by Ana, ", "Edited by Ben, ", "Measured width: 33.2 mm"} {
				if !strings.Contains(text, part) {
					t.Errorf("the page does not say %q: %s", part, text)
				}
			}
			p.Axe()
			p.Shot("clash-deleted")
			p.tap(p.button(in[answer]))
			p.See(in[map[string]string{"clash.restore": "clash.isKept", "clash.delete": "clash.isDeleted"}[answer]])
			p.Go("settings/records")
			p.Find("link", map[string]string{"clash.restore": "Umber 32s", "clash.delete": "Umber 32s " + in["records.deleted"]}[answer])
		})
	}
}

// Two phones and a server that is away while both write; then one of them decides.
func TestAClashIsDecidedOnceForBothPhones(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	one := OpenBrowser(t).Open(server.URL() + "#/settings")
	one.Type(in["me.name"], "Ana")
	one.Tap("heading", in["me.title"]) // leaves the field
	one.Eventually("the name on the server", func() bool { return strings.Contains(server.Export(), `"Ana"`) })
	two := OpenBrowser(t).Open(server.URL() + "#/settings")
	two.Eventually("the first phone's person on the second", func() bool { return slices.Contains(two.options(in["me.who"]), "Ana") })
	two.Choose(in["me.who"], "Ana")
	two.Eventually("her name", func() bool { return two.Value(in["me.name"]) == "Ana" })

	server.Stop()
	for _, p := range []*Page{one, two} {
		p.Allow("ERR_CONNECTION_REFUSED")
	}
	waiting := strings.TrimPrefix(in["sync.unsent"], "{n} ")
	rename := func(p *Page, name string) {
		p.Type(in["me.name"], name)
		p.Tap("heading", in["me.title"])
		p.See(in["me.saved"])
		p.See(waiting)
	}
	rename(one, "Anna")
	rename(two, "Anne")
	server.Start()
	for _, p := range []*Page{one, two, one} { // the second time, the first hears of the second
		p.Online()
		p.NotSee(waiting)
	}
	question := fill(in["clash.which"], "field", in["recField.name"])
	for _, p := range []*Page{one, two} {
		p.Tap("link", fill(in["book.clashes"], "n", "1"))
		p.Find("group", question)
		p.button("Anna")
		p.button("Anne")
	}
	one.tap(one.button("Anna"))
	one.See("Name: Anna")
	one.Eventually("the choice on the server", func() bool { return strings.Count(server.Export(), `"Anna"`) == 2 })
	two.Online()
	two.See("Name: Anna")
	for _, p := range []*Page{one, two} {
		if left := p.matching("group", question); len(left) != 0 {
			t.Error("the question is still asked")
		}
		p.Go("settings")
		p.Find("link", fill(in["book.clashes"], "n", "0"))
	}
}

// options are the lines of a list.
func (p *Page) options(label string) []string {
	p.t.Helper()
	return callOn[[]string](p, p.Find("combobox", label), "function() { return [...this.options].map((each) => each.label); }")
}

// fill puts values in the place of {names}.
func fill(text string, pairs ...string) string {
	for i := 0; i+1 < len(pairs); i += 2 {
		text = strings.ReplaceAll(text, "{"+pairs[i]+"}", pairs[i+1])
	}
	return text
}
