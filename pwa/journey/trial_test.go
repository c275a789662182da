package journey

import (
	"regexp"
	"strings"
	"testing"
	"time"
)

// rollDown is a bike with all that a trial needs: two wheels with the same tyre, and a rider.
func rollDown() []deed {
	old := 40 * 24 * time.Hour
	wheel := members{"name": "Alloy", "tyre": hexOf("roller"), "setup": "tubeless", "inner_mm": 25, "profile": "hooked", "max_kpa": 500}
	return []deed{
		{id: "t1", rec: "roller", kind: "tyre", ago: old, by: "Ana", set: members{"name": "Ochre 40s", "label_mm": 40, "measured_mm": 40, "sidewall": "glove", "max_kpa": 500, "hookless_ok": "yes"}},
		{id: "t2", rec: "roll front", kind: "wheel", ago: old, by: "Ana", set: wheel},
		{id: "t3", rec: "roll rear", kind: "wheel", ago: old, by: "Ana", set: wheel},
		{id: "t4", rec: "roll", kind: "bike", ago: old, by: "Ana", set: members{"name": "Grey one", "rider": hexOf("Ana"), "front": hexOf("roll front"), "rear": hexOf("roll rear"), "mass_kg": 11}},
		{id: "t5", rec: "Ana", kind: "person", ago: old, by: "Ana", set: members{"mass_kg": 72}},
	}
}

// ordered reads which arm comes next.
var nextArm = regexp.MustCompile(`Run \d+ of \d+: ([AB])`)

// rides types a run's time for whatever arm comes next: so much for A, 1.2 s more for B, with a little scatter.
func (p *Page) rides(n int, faster string) {
	p.t.Helper()
	in := words(p.t)
	found := nextArm.FindStringSubmatch(p.Text())
	if found == nil {
		p.t.Fatalf("no run comes next: %s", p.Text())
	}
	times := map[bool][]string{true: {"61.1", "61.4", "61.2", "61.5", "61.3", "61.2", "61.4", "61.3"}, false: {"62.4", "1:02.6", "62,3", "62.7", "62.5", "62.4", "62.6", "62.3"}}
	p.Type(in["trial.value.less"], times[found[1] == faster][n%8])
	p.Tap("button", in["trial.keep"])
}

// A trial of two pressures from the deal to the shift, with no signal: limits are kept, the order is dealt, a run is timed by the app, one
// is struck out with its reason and ridden again, nothing is told before the last dealt run, and what was shown moves Pressure's number.
func TestATrialTeachesTheShift(t *testing.T) {
	in := words(t)
	server := TeamServer(StartServer(t), rollDown()...)
	p := OpenBrowser(t).Open(server.URL() + "#/wheels/" + hexOf("roll"))
	p.installed()
	p.See(in["trial.cardText"])
	p.Allow(offline)
	server.Stop()
	p.Tap("link", in["trial.open"])
	p.See("for this wheel today")
	p.Tap("radio", in["trial.end.front"])
	p.Type(fill(in["trial.arm"], "arm", "A", "side", "front"), "9")
	p.Tap("button", in["trial.deal"])
	p.See("Above the limit of this wheel") // nobody is sent past a limit
	p.Type(fill(in["trial.arm"], "arm", "A", "side", "front"), "2.1")
	p.Type(fill(in["trial.arm"], "arm", "B", "side", "front"), "2.4")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("comparing at " + size.Name)
	})
	p.Shot("trial-deal")
	p.Tap("button", in["trial.deal"])
	p.See("Order drawn: ")
	p.NotSee(in["trial.none.shown"])

	// The first run is timed by the app, over a reload, and struck out: it is ridden again.
	p.Tap("button", in["trial.start"])
	p.Find("button", in["trial.stop"])
	p.saved("trial/" + hexOf("roll"))
	p.Reload()
	p.Tap("button", in["trial.stop"])
	p.See("1 · ")
	p.Tap("button", "Strike out: "+p.line("1 · "))
	p.Tap("radio", in["trial.whyOf.braked"])
	p.See("struck out: " + in["trial.whyOf.braked"])
	p.See("Run 1 of 8")
	p.Tap("radio", in["trial.windOf.light"])
	p.Type(in["trial.temperature"], "14")
	for n := range 8 {
		p.See(fill(in["trial.wait"], "n", "8"))
		p.rides(n, "A")
	}
	p.See(in["trial.ready"])
	p.NotSee("is better, by")
	p.Tap("button", in["trial.lookAt"])
	p.See("A · front 2.10 bar is better, by 1.")
	p.See("97.8 % sure")
	p.See(fill(in["trial.lookOf"], "n", "1", "all", "3"))
	p.See("light · 14 °C")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the result at " + size.Name)
	})
	p.Shot("trial-result")
	p.Tap("button", in["trial.save"])
	p.See(in["trial.savedShift"])
	p.See("A better by 1.")

	// The same bike on Pressure: the trial has moved its number, and is named.
	p.Tap("link", in["measure.record"])
	p.Go("pressure")
	p.See("your trial: front ")
	p.Go("wheels/trial/" + hexOf("roll"))
	p.See("A better by 1.")
	p.See("for this wheel today") // the limits are known again
	p.Tap("button", "Remove: "+p.line("A better by"))
	p.See(in["trial.removed"])
	p.Go("pressure")
	p.NotSee("your trial")

	server.Start()
	p.Online()
	p.onServer(server, `"kind":"trial"`)
	if text := server.Export(); !strings.Contains(text, `"why":"braked"`) || !strings.Contains(text, `"best":"A"`) || !strings.Contains(text, `"p0_kpa"`) {
		t.Errorf("not all is on the server: %s", text)
	}
}

// line is what the line that holds a text says in whole.
func (p *Page) line(text string) string {
	p.t.Helper()
	return Eval[string](p, `[...document.querySelectorAll("li > span")].map((each) => each.textContent).find((each) => each.includes(`+"`"+text+"`"+`)) ?? ""`)
}
