package journey

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// planTrip plans a flight with the first bike, from tomorrow for a week, arriving the day after.
func (p *Page) planTrip(name string) {
	p.t.Helper()
	in := words(p.t)
	day := func(days int) string { return time.Now().AddDate(0, 0, days).Format("2006-01-02") }
	p.Go("packing/new")
	p.Type(in["recField.name"], name)
	p.setDay(in["recField.from"], day(7))
	p.setDay(in["recField.to"], day(1))
	p.Choose(in["recField.way"], in["recOption.air_bag"])
	p.Tap("button", in["trip.add"])
	p.See(in["trip.order"])
	p.setDay(in["recField.from"], day(1))
	p.setDay(in["recField.arrives"], day(0))
	p.setDay(in["recField.to"], day(7))
	p.Tap("button", in["trip.add"])
	p.See(in["trip.arrivalDay"])
	p.setDay(in["recField.arrives"], day(2))
	p.Tap("button", in["trip.add"])
	p.Find("heading", name)
}

// A flight that touches the United States, packed and rebuilt out and home, with no signal and reloads in the middle.
func TestAFlightOutAndHome(t *testing.T) {
	p, _ := atChecks(t, gravel)
	in := words(t)
	p.Go("packing")
	p.See(in["trip.none"])
	p.planTrip("Island")
	p.See(in["trip.tomorrow"])
	p.See(in["trip.us"]) // nobody has said
	p.Choose(in["trip.goodKind"], in["good.cartridge"])
	p.See(in["goodWhy.legs_unknown"])
	p.Tap("radio", in["trip.yes"])
	p.See(in["goodWhy.us_leg"])
	p.NotSee(in["trip.us"])
	p.Eventually("the first step", func() bool { return p.next() == in["step.as_built"] })
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a trip at " + size.Name)
	})
	p.Shot("packing-trip")

	for range 4 {
		p.done()
	}
	now := p.next()
	p.Reload()
	p.Eventually("the same step", func() bool { return p.next() == now })
	out := p.doAll()
	inOrder(t, out, in["step.front_wheel_out"], in["step.front_spacer"], in["step.front_rotor"], in["step.rotors_sleeve"], in["step.derailleur"], in["step.post"], in["step.bars"], in["step.weigh"])
	p.See(" " + in["stage.bag"])

	p.Tap("link", in["trip.arrival"])
	p.See("left before it is ridden")
	p.NotSee(in["trip.ready"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("an arrival at " + size.Name)
	})
	p.Shot("packing-arrival")
	for range 5 {
		p.done()
	}
	now = p.next()
	p.Reload()
	p.Eventually("the same step", func() bool { return p.next() == now })
	inOrder(t, p.doAll(), in["step.rear_wheel_in"], in["step.bars_on"], in["step.pedals_on"], in["step.cage"], in["step.brakes"], in["step.arrival_check"])
	p.See(in["trip.ready"])

	p.Tap("link", in["trip.toHome"])
	p.Eventually("the way home", func() bool { return p.next() == in["step.as_built"] })
	p.See("Home · 0 of ")
	p.done()
	p.done()
	now = p.next()
	p.Reload()
	p.Eventually("the same step", func() bool { return p.next() == now })
	p.See("Home · 2 of ")
	home := p.doAll()
	inOrder(t, home, in["step.front_rotor"], in["step.saddle_bag"], in["step.leave_there"])
	p.Tap("link", in["trip.arrivalHome"])
	p.See("left before it is ridden")
	p.doAll()
	p.See(in["trip.ready"])
	p.Tap("link", in["trip.walk"])
	p.Find("heading", in["checks.moment.arrival"])
}

// Electric shifting with hoses through the head tube: the bars are turned, the fork is held, wires are not pulled.
func TestHosesThroughTheHeadTube(t *testing.T) {
	p := atTrip(t, hoses, members{"way": "air_case", "legs_us": false})
	in := words(t)
	p.Eventually("the first step", func() bool { return p.next() == in["step.as_built"] })
	p.NotSee(in["trip.asks"])
	steps := p.doUntil(in["step.post"])
	inOrder(t, steps, in["step.smallest_cog"], in["step.battery_off"], in["step.pedals"], in["step.front_wheel_out"])
	p.Tap("button", in["trip.how"])
	p.See(in["note.post_wires"])
	p.done()
	if now := p.next(); now != in["step.bars_turn"] {
		t.Errorf("after the post comes %q", now)
	}
	p.Tap("button", in["trip.how"])
	for _, note := range []string{"hoses_stay", "fork_hold", "ring_order", "stem_wedge"} {
		p.See(in["note."+note])
	}
	p.Shot("packing-hoses")
	p.NotSee(in["step.bars"])
	p.See(in["tool.lockring_handle"])
	p.See(in["tool.axle_blocks"])
}

// doUntil does steps until one stands on the card.
func (p *Page) doUntil(step string) (steps []string) {
	p.t.Helper()
	for now := p.next(); now != step; now = p.next() {
		if steps = append(steps, now); now == "" || len(steps) > 60 {
			p.t.Fatalf("%q never comes: %v", step, steps)
		}
		p.done()
	}
	return steps
}

// By train only the wheels come out; nothing else is asked or taken off.
func TestByTrain(t *testing.T) {
	p := atTrip(t, gravel, members{"way": "train"})
	in := words(t)
	p.Eventually("the first step", func() bool { return p.next() == in["step.as_built"] })
	p.NotSee(in["trip.asks"])
	steps := p.doAll()
	inOrder(t, steps, in["step.front_wheel_out"], in["step.front_spacer"], in["step.front_axle_in"], in["step.chain_tied"], in["step.front_wheel_bagged"])
	for _, step := range steps {
		for _, off := range []string{"pedals", "front_rotor", "derailleur", "post", "bars", "weigh"} {
			if step == in["step."+off] {
				t.Errorf("by train %q", step)
			}
		}
	}
	p.Choose(in["trip.goodKind"], in["good.tools"])
	p.See(in["goodWhy.no_flight"])
}

// What is not known of a bike is one question before the list; the answer is the bike's, and stays.
func TestQuestionsBeforeTheList(t *testing.T) {
	p := atTrip(t, builds[0], members{"way": "air_bag", "legs_us": false})
	in := words(t)
	answers := []struct{ question, option string }{
		{"rotor_mount", in["recOption.six_bolt"]}, {"axle", "12 mm through axle"}, {"rotor_mount", in["recOption.six_bolt"]}, {"axle", "12 mm through axle"},
		{"pedals", in["recOption.pedals.none"]}, {"shifting", in["recOption.shifting.cable"]}, {"derailleur", in["recOption.derailleur.axle"]},
		{"seatpost", in["recOption.seatpost.none"]}, {"cockpit", in["recOption.cockpit.hoses"]},
	}
	p.Find("heading", in["trip.asks"])
	p.Shot("packing-asks")
	for n, each := range answers {
		p.See(in["packAsk."+each.question])
		p.Eventually("the question may be answered", func() bool {
			return Eval[bool](p, `document.querySelector("rs-pack-asks").getAttribute("aria-disabled") !== "true"`)
		})
		p.Tap("radio", each.option)
		left := len(answers) - n - 1
		p.Eventually("the next question", func() bool {
			text := p.Text()
			return left == 0 && !strings.Contains(text, in["trip.asks"]) || left > 1 && strings.Contains(text, fmt.Sprintf("%d more question", left-1)) || left == 1 && !strings.Contains(text, "more question")
		})
	}
	steps := p.doAll()
	for _, step := range steps {
		if step == in["step.pedals"] || step == in["step.post"] || step == in["step.derailleur"] || step == in["step.bars"] {
			t.Errorf("%q, and it does not apply", step)
		}
	}
	inOrder(t, steps, in["step.derailleur_guard"], in["step.bars_turn"])
	p.Go("wheels/" + hexOf(builds[0].name))
	p.unfold(in["thing.group.packing"])
	p.See(in["recOption.cockpit.hoses"])
}

// From opening the app at night to the next step done: at most twelve taps. The page keeps what lies under the finger in its place.
func TestTheNextStepAtNight(t *testing.T) {
	p := atTrip(t, gravel, members{"way": "air_bag", "legs_us": false})
	in := words(t)
	p.Go("pressure")
	p.Reload()
	taps := 0
	tap := func(role, name string) {
		t.Helper()
		p.Tap(role, name)
		taps++
	}
	tap("link", in["place.packing"])
	p.tap(p.link("Island"))
	taps++
	p.Eventually("the first step", func() bool { return p.next() == in["step.as_built"] })
	tap("button", in["trip.done"])
	p.Eventually("the step after", func() bool { return p.next() == in["step.try_tools"] })
	if taps > 12 {
		t.Errorf("%d taps", taps)
	}
	top := func(step string) float64 {
		return Eval[float64](p, fmt.Sprintf(`document.querySelector('input[aria-label=%q]').getBoundingClientRect().top`, step))
	}
	p.Tap("checkbox", in["step.try_tools"])
	p.Eventually("the step after", func() bool { return p.next() == in["step.smallest_cog"] })
	before := top(in["step.smallest_cog"])
	Eval[bool](p, fmt.Sprintf(`(() => { document.querySelector('input[aria-label=%q]').click(); return true; })()`, in["step.smallest_cog"])) // a tap by the driver may scroll
	p.Eventually("the step after", func() bool { return p.next() == in["step.pedals"] })
	if moved := top(in["step.smallest_cog"]) - before; moved > 1 || moved < -1 {
		t.Errorf("the box moved by %v", moved)
	}
	p.Eventually("Done answers", p.mayPress)
	Eval[bool](p, `(() => { const done = document.querySelector("rs-next .primary"); done.click(); return true; })()`)
	p.Eventually("the step after", func() bool { return p.next() == in["step.front_wheel_out"] })
	Eval[bool](p, `(() => { document.querySelector("rs-next .primary").click(); return true; })()`) // the second half of a double tap
	p.See(fmt.Sprintf("Out · %d of ", 4))
	p.Tap("button", fill(in["trip.nextAfter"], "what", in["step.pedals"]))
	p.Eventually("the step again", func() bool { return p.next() == in["step.pedals"] })
}

// Two people tick one list apart, and agree when they meet.
func TestTwoPeoplePackOneBike(t *testing.T) {
	in := words(t)
	trip := deed{id: "trip 1", rec: "trip", kind: "trip", ago: time.Hour, by: "Ana", set: members{"name": "Island", "from": "2027-08-01", "arrives": "2027-08-02", "way": "air_bag", "legs_us": false, "bikes": []string{hexOf(gravel.name)}}}
	old := deed{id: "tick 1", rec: "tick", kind: "pack_tick", ago: time.Hour, by: "Ana", set: members{"trip": hexOf("trip"), "bike": hexOf(gravel.name), "step": "pedals_hex", "ticked": true}} // of a version before
	server := TeamServer(StartServer(t), append(gravel.deeds(), trip, old)...)
	browser := OpenBrowser(t)
	var phones []*Page
	for range 2 {
		p := browser.OpenApart(server.URL() + "#/packing/" + hexOf("trip"))
		p.Allow(offline)
		p.Find("heading", "Island")
		p.installed()
		p.Eventually("what was ticked before", func() bool { return strings.Contains(p.Text(), "Out · 1 of ") })
		phones = append(phones, p)
	}
	server.Stop()
	for n, p := range phones {
		p.Tap("checkbox", in[[]string{"step.as_built", "step.smallest_cog"}[n]])
		p.See("Out · 2 of ")
	}
	server.Start()
	for _, p := range phones {
		p.Online()
		p.onServer(server, `"direction":"out"`)
	}
	for _, p := range phones {
		p.Eventually("both ticks", func() bool {
			p.Online()
			return strings.Contains(p.Text(), "Out · 3 of ")
		})
	}
	p := phones[0]
	Eval[bool](p, keepDownloads+"true")
	p.Tap("button", in["trip.calendar"])
	p.Eventually("a calendar file", func() bool { return Eval[bool](p, `globalThis.kept !== undefined`) })
	events := readCalendar(t, Eval[string](p, `globalThis.kept.text()`))
	if len(events) < 4 || !strings.HasPrefix(events[0].summary, "Island: ") || events[0].start != "20270801" || !events[0].alarm || events[3].start != "20270802" {
		t.Errorf("the reminders are %+v", events)
	}
}

// BenchmarkTick is how long the page is busy with one tick, at a quarter of the speed, among 60 own things.
func BenchmarkTick(b *testing.B) {
	var items []members
	for n := range 60 {
		items = append(items, members{"id": fmt.Sprintf("%032x", n), "name": fmt.Sprintf("Thing %d", n), "kg": 0.5})
	}
	server := TeamServer(StartServer(b), deed{id: "trip 1", rec: "trip", kind: "trip", ago: time.Hour, by: "Ana", set: members{"name": "Island", "way": "air_bag", "items": items}})
	p := OpenBrowser(b).Open(server.URL() + "#/packing/" + hexOf("trip"))
	p.See("Thing 59")
	p.throttle(4)
	var longest float64
	for b.Loop() {
		longest = max(longest, Eval[float64](p, `new Promise((resolve) => {
			const tasks = [];
			const seen = new PerformanceObserver((list) => tasks.push(...list.getEntries().map((each) => each.duration)));
			seen.observe({type: "longtask", buffered: false});
			const from = performance.now();
			document.querySelector("rs-pack-item input").click();
			const spent = performance.now() - from;
			setTimeout(() => { seen.disconnect(); resolve(Math.max(spent, ...tasks, 0)); }, 1500);
		})`))
	}
	b.ReportMetric(longest, "ms-longest-task")
}
