package journey

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// passGPX is an invented course over a pass: 0.2 degrees of latitude, up from 1200 m to 2200 m and down again.
func passGPX(points int) string {
	var out strings.Builder
	out.WriteString(`<?xml version="1.0" encoding="UTF-8"?><gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Over the pass</name><trkseg>` + "\n")
	for i := range points {
		x := float64(i) / float64(points-1)
		fmt.Fprintf(&out, "<trkpt lat=\"%.7f\" lon=\"9.8000000\"><ele>%.1f</ele><time>2026-07-14T08:00:00Z</time></trkpt>\n", 46+0.2*x, 1200+1000*math.Sin(math.Pi*x))
	}
	return out.String() + `</trkseg></trk></gpx>`
}

// A course comes from its file with the server gone: a hostile one is refused by name, the profile is drawn, ground is painted by dragging
// and by typing, and becomes the day's, with the start's altitude and the pass, where no limit is passed either.
func TestCourseFromAFile(t *testing.T) {
	in := words(t)
	p := noSignal(t)
	p.firstAnswers()
	p.ground()
	p.Tap("button", in["ground.course"])
	p.bringFile(in["course.pick"], "bomb.gpx", `<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aa">]><gpx>&a;</gpx>`)
	p.See(in["course.no.entities"])
	p.readsLarge(in, 30_000)
	p.bringFile(in["course.pick"], "pass.gpx", passGPX(2000))
	p.See(fill(in["course.read"], "km", "22.2", "points", "2000"))
	p.See(fill(in["course.heights"], "m", "100", "high", "2200", "highAt", "11.1", "low", "1200", "lowAt", "0"))
	p.Choose(in["course.brush"], in["kind.egg"])
	Eval[bool](p, `(() => {
		const picture = document.querySelector("rs-profile-picture");
		picture.scrollIntoView({block: "center"});
		const box = picture.getBoundingClientRect();
		picture.setPointerCapture = () => undefined;
		const at = (type, share) => picture.dispatchEvent(new PointerEvent(type, {bubbles: true, pointerId: 1, clientX: box.left + share * box.width, clientY: box.top + 50}));
		at("pointerdown", 0.5); at("pointermove", 0.6); at("pointerup", 0.75);
		return true;
	})()`)
	p.See(fill(in["course.stretch"], "kind", in["short.egg"], "from", "11.1", "to", "16.7"))
	p.Choose(in["course.brush"], in["kind.chips"])
	p.Type(in["course.from"], "0")
	p.Type(in["course.to"], "5")
	p.Tap("button", in["course.paint"])
	p.See(fill(in["course.stretch"], "kind", in["short.chips"], "from", "0", "to", "5"))
	p.Axe()
	p.Shot("course")
	p.Tap("button", in["course.use"])
	p.See(in["course.used"])
	p.See(fill(in["ground.stretch"], "n", "4"))
	p.Tap("button", in["sheet.done"])
	p.air()
	p.holds(in["field.ride.m"], "1200")
	p.holds(in["field.high.m"], "2200")
	p.holds(in["field.low.m"], "1200")
	p.Axe()
	p.Shot("course_air")
	p.See(in["status.saved"])
}

// Points enough to come in many pieces are read wholly, and the page lives meanwhile.
func (p *Page) readsLarge(in map[string]string, points int) {
	p.bringFile(in["course.pick"], "large.gpx", passGPX(points))
	p.See(fill(in["course.read"], "km", "22.2", "points", strconv.Itoa(points)))
}

// Half a million points on a phone at a quarter of the speed: how long, and the longest the page was held up. It is told, not tested,
// and only when asked for. The clock runs in the page from the file's coming to the drawn profile. Waiting for words at a quarter of the
// speed is what took the time: each look at the page reads all of it, so that the end is waited for by its own promise.
func TestLargeCourse(t *testing.T) {
	if os.Getenv("RIMSIDE_LARGE") == "" {
		t.Skip("RIMSIDE_LARGE is not set")
	}
	in := words(t)
	p := OpenBrowser(t).Open(StartServer(t).URL())
	p.firstAnswers()
	p.ground()
	p.Tap("button", in["ground.course"])
	p.See(in["course.why"])
	Eval[bool](p, `(() => {
		globalThis.longest = 0;
		new PerformanceObserver((list) => { for (const each of list.getEntries()) globalThis.longest = Math.max(globalThis.longest, each.duration); }).observe({type: "longtask"});
		const input = document.querySelector(".course input[type=file]");
		input.addEventListener("change", () => (globalThis.begun = performance.now()), {capture: true});
		globalThis.drawn = new Promise((resolve) => new MutationObserver(() => {
			if (document.querySelector("rs-profile-picture svg")) resolve((performance.now() - globalThis.begun) / 1000);
		}).observe(document.querySelector(".course"), {childList: true, subtree: true}));
		return true;
	})()`)
	throttle := func(rate float64) {
		if _, err := chromedp.Call(p.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: rate}); err != nil {
			t.Fatal(err)
		}
	}
	throttle(4)
	p.bringFile(in["course.pick"], "large.gpx", passGPX(500_000))
	took := Eval[float64](p, "globalThis.drawn")
	throttle(1)
	p.See(fill(in["course.read"], "km", "22.2", "points", "500000"))
	t.Logf("%.2f s, longest task %.0f ms", took, Eval[float64](p, "globalThis.longest"))
}
