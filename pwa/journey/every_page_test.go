package journey

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"rimside/store/record"
)

var thingKinds = []string{"bike", "wheel", "tyre", "person", "gauge", "pump"}

// wholeRecord fills every field of a kind with a value that it takes; references lead to the full record of their kind.
func wholeRecord(kind string) members {
	set := members{}
	for name, f := range record.Kinds()[kind].Fields {
		switch f.Type {
		case "text":
			set[name] = "A " + name
		case "number":
			set[name] = *f.Min
		case "choice":
			set[name] = f.Options[0]
		case "flag":
			set[name] = false
		case "day":
			set[name] = "2026-07-14"
		case "time":
			set[name] = 1784000000000
		case "ref":
			if len(f.Kinds) > 0 && f.Kinds[0] != "*" {
				set[name] = hexOf("full " + f.Kinds[0])
			}
		}
	}
	return set
}

// Every page of every kind of thing, with nothing known and with all known, and every entry of every menu that leads on from there
// opens without breaking. Actions are left to their own tests: only ways are followed.
func TestEveryPageOpens(t *testing.T) {
	var all []deed
	for _, kind := range thingKinds {
		all = append(all, deed{id: "empty op " + kind, rec: "empty " + kind, kind: kind, ago: time.Hour, by: "Ana", set: members{"note": ""}},
			deed{id: "full op " + kind, rec: "full " + kind, kind: kind, ago: time.Hour, by: "Ana", set: wholeRecord(kind)})
	}
	server := TeamServer(StartServer(t), all...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/wheels")
	p.See("A name")
	p.installed()
	p.Allow(offline)
	server.Stop()
	queue := []string{"pressure", "checks", "packing", "wheels", "settings"}
	for _, kind := range thingKinds {
		queue = append(queue, "wheels/"+hexOf("empty "+kind), "wheels/"+hexOf("full "+kind), "wheels/new/"+kind)
	}
	seen := map[string]bool{}
	for n := 0; n < len(queue) && n < 250; n++ {
		page := queue[n]
		if seen[page] {
			continue
		}
		seen[page] = true
		p.Go(page)
		p.Eventually(fmt.Sprintf("%s to stand", page), func() bool {
			return Eval[bool](p, `document.querySelector(".opening") === null && [...document.querySelectorAll(".looking")].every((each) => each.querySelector("a.button.primary") !== null) && document.querySelector("h1") !== null`)
		})
		if text := p.Text(); strings.Contains(text, in["trouble.title"]) {
			t.Fatalf("%s: %s", page, text)
		}
		for _, href := range Eval[[]string](p, `[...document.querySelectorAll('a[href^="#/"]')].map((each) => each.getAttribute("href").slice(2))`) {
			if !seen[href] && !slices.Contains(queue, href) {
				queue = append(queue, href)
			}
		}
	}
	p.NotSee(in["trouble.title"]) // what broke late stays on the page
	t.Logf("%d pages", len(seen))
	if len(seen) < 60 {
		t.Errorf("only %d pages were opened: %v", len(seen), slices.Sorted(maps.Keys(seen)))
	}
}
