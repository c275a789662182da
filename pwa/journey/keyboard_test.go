package journey

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// tabTo goes on by the tab key until what has this role and name has the focus.
func (p *Page) tabTo(role, name string) {
	p.t.Helper()
	for range 120 {
		if focused := p.Focused(); focused.Name == name && strings.Contains("|"+role+"|", "|"+focused.Role+"|") {
			return
		}
		p.Key(kb.Tab)
	}
	p.t.Fatalf("the tab key does not come to %s %q", role, name)
}

// keys types into what has the focus.
func (p *Page) keys(text string) {
	p.t.Helper()
	p.do(chromedp.KeyEvent(text))
}

// The whole way by keyboard at a desk, without a mouse: the first answers, a reading, "I set it", a note, another bike.
func TestPressureByKeyboardAlone(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	p := OpenBrowser(t).Open(server.URL())
	p.Resize(Desk)
	p.tabTo(fields, in["field.rider"])
	p.keys("72")
	p.tabTo(fields, in["field.label"])
	p.keys("50")
	p.tabTo("radio", in["setup.tube"])
	p.Key(kb.ArrowRight) // tubeless
	p.tabTo("radio", in["profile.hooked"])
	p.Key(" ")
	p.tabTo("button", in["first.go"])
	p.Key(kb.Enter)
	front := p.number(in["side.front"])

	p.tabTo(fields, in["field.now.front"])
	p.keys(front)
	p.says(in["side.front"], in["act.leave"])
	p.tabTo("button", in["set.both"])
	p.Key(kb.Enter)
	p.See(in["set.done"])
	p.tabTo("button", in["ground.undo"])
	p.Key(" ")
	p.NotSee(in["set.done"])
	p.setUp()
	p.tabTo(fields, in["field.name"])
	p.keys("Ochre")
	p.board()
	p.Find("heading", "Ochre")
	p.tabTo("button", fill(in["bikes.open"], "name", "Ochre"))
	p.Key(kb.Enter)
	p.tabTo("button", in["bikes.copy"])
	p.Key(kb.Enter)
	p.Find("heading", fill(in["bikes.copied"], "name", "Ochre"))
	p.Axe()
}

// Larger text, the narrowest screen, forced colours and less motion: nothing is cut off and nothing is lost.
func TestPressureForEveryEye(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	p := OpenBrowser(t).Open(server.URL())
	p.firstAnswers()
	Eval[bool](p, `document.querySelectorAll("details").forEach((each) => each.open = true), true`)
	p.Resize(Size{"320x640", 320, 640, 2, true})
	p.wide("at 320 px")
	p.Axe()
	p.Large(func() {
		p.Resize(Phone)
		p.wide("with 200 % text")
		p.Axe()
	})
	for _, feature := range [][2]string{{"forced-colors", "active"}, {"prefers-reduced-motion", "reduce"}, {"prefers-contrast", "more"}} {
		p.Media(feature[0], feature[1])
		p.number(in["side.front"])
		p.Axe()
	}
	if moving := Eval[int](p, `document.getAnimations().filter((each) => each.playState === "running").length`); moving > 0 {
		t.Errorf("%d things move though less motion is wished", moving)
	}
}

// BenchmarkOpenWithManyBikes is the time until the answer stands, at a quarter of the speed, in a book of 50 bikes and 2,000
// settings: at a cold start, when the screen is opened from another, and when it is opened so while the start's own work
// still runs.
func BenchmarkOpenWithManyBikes(b *testing.B) {
	server := StartServer(b)
	var all []members
	for bike := range 50 {
		all = append(all, bikeOps(bike)...)
	}
	for n := range 2000 {
		all = append(all, members{
			"id": fmt.Sprintf("%032x", 900000+n), "at": 1790000000000 + n*1000, "kind": "pressure_set", "rec": fmt.Sprintf("%032x", 800000+n),
			"set":    members{"bike": recOf(n%50, 0), "wheel": recOf(n%50, 1+n%2), "side": []string{"front", "rear"}[n%2], "gauge_kpa": 200, "c": 18, "m": 200},
			"author": "", "device": "", "schema": 1,
		})
	}
	for from := 0; from < len(all); from += 500 {
		server.push(teamBook, all[from:min(from+500, len(all))])
	}
	browser := OpenBrowser(b)
	p := browser.Open(server.URL(), standing)
	p.number("Front")
	p.Eventually("everything to be here", func() bool { return strings.Contains(p.Text(), "last synced") })
	p.saved("pressure-answer")
	b.ResetTimer()
	var cold, early, opens float64
	for b.Loop() {
		p.throttle(4)
		p.Reload()
		p.number("Front")
		cold = max(cold, Eval[float64](p, `globalThis.stands`))
		p.Go("settings")
		p.Find("heading", "Settings")
		early = max(early, Eval[float64](p, opening))
		p.Go("settings")
		p.Find("heading", "Settings")
		Eval[bool](p, `new Promise((resolve) => setTimeout(() => requestIdleCallback(() => resolve(true)), 2000))`)
		opens = max(opens, Eval[float64](p, opening))
	}
	b.ReportMetric(cold, "ms-cold")
	b.ReportMetric(early, "ms-opens-early")
	b.ReportMetric(opens, "ms-opens")
}

// standing notes in the page itself when the answer stands there.
const standing = `
	globalThis.looks = () => /^\d+[.]\d\d$/.test(document.querySelector("rs-wheel-card .number:not([hidden])")?.textContent ?? "");
	new MutationObserver((_, all) => { if (looks()) { globalThis.stands = performance.now(); all.disconnect(); } }).observe(document, {subtree: true, childList: true, characterData: true});`

// opening goes to the screen and gives the time until the answer stands there.
const opening = `new Promise((resolve) => {
	const from = performance.now();
	new MutationObserver((_, all) => { if (looks()) { all.disconnect(); resolve(performance.now() - from); } })
		.observe(document, {subtree: true, childList: true, characterData: true});
	location.hash = "#/pressure";
})`

func recOf(bike, part int) string { return fmt.Sprintf("%032x", 1000+bike*10+part) }

func bikeOps(bike int) []members {
	op := func(part int, kind string, set members) members {
		return members{"id": fmt.Sprintf("%032x", 500000+bike*10+part), "at": 1780000000000 + bike, "kind": kind, "rec": recOf(bike, part), "set": set, "author": "", "device": "", "schema": 1}
	}
	return []members{
		op(0, "bike", members{"name": fmt.Sprintf("Bike %02d", bike), "front": recOf(bike, 1), "rear": recOf(bike, 2), "rider": recOf(bike, 5), "mass_kg": 11}),
		op(1, "wheel", members{"tyre": recOf(bike, 3), "setup": "tubeless", "inner_mm": 25, "profile": "hooked"}),
		op(2, "wheel", members{"tyre": recOf(bike, 4), "setup": "tubeless", "inner_mm": 25, "profile": "hooked"}),
		op(3, "tyre", members{"label_mm": 45, "sidewall": "glove"}), op(4, "tyre", members{"label_mm": 45, "sidewall": "glove"}),
		op(5, "person", members{"mass_kg": 60 + bike%40}),
	}
}

// throttle makes the page's thread so many times slower.
func (p *Page) throttle(times float64) {
	p.t.Helper()
	if _, err := chromedp.Call(p.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: times}); err != nil {
		p.t.Fatal(err)
	}
}
