package journey

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// planTrip plans a flight with the first bike, from tomorrow for a week.
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
	p.setDay(in["recField.to"], day(7))
	p.Tap("button", in["trip.add"])
	p.Find("heading", name)
}

// setDay chooses a day; the browser's own calendar cannot be pressed without a screen.
func (p *Page) setDay(label, day string) {
	p.t.Helper()
	callOn[bool](p, p.Find("Date", label), fmt.Sprintf(`function() {
		this.value = %q;
		this.dispatchEvent(new Event("input", {bubbles: true}));
		return true;
	}`, day))
}

// boxes lists the steps on the page with whether they are ticked.
func (p *Page) boxes() (found []Node) {
	for _, node := range p.Tree() {
		if node.Role == "checkbox" {
			found = append(found, node)
		}
	}
	return found
}

// tickAll ticks everything on the page, one after the other, and waits until each is counted.
func (p *Page) tickAll(but string) {
	p.t.Helper()
	done := 0
	for _, box := range p.boxes() {
		if but == "" || !strings.Contains(strings.ToLower(box.Name), but) {
			p.tap(box)
			done++
			p.See(fmt.Sprintf("%d of ", done))
		}
	}
}

// A flight packed and rebuilt, with no signal.
func TestAFlightIsPackedAndRebuilt(t *testing.T) {
	p, _ := atChecks(t, builds[0])
	in := words(t)
	p.Go("packing")
	p.See(in["trip.none"])
	p.planTrip("Island")
	p.See(in["trip.tomorrow"])
	p.See("As built")
	p.Eventually("steps", func() bool { return len(p.boxes()) > 8 })
	text := strings.ToLower(p.Text())
	if built, rotor := strings.Index(text, "as built"), strings.Index(text, "rotor"); rotor < 0 || built > rotor {
		t.Errorf("as built stands at %d, the rotors at %d", built, rotor)
	}
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a trip at " + size.Name)
	})
	p.Shot("packing-trip")
	of := len(p.boxes())
	for n, box := range p.boxes() {
		p.tap(box)
		if n+1 < of {
			p.See(fmt.Sprintf("%d of %d done", n+1, of))
		}
	}
	p.See(fill(in["trip.packed"], "of", fmt.Sprint(of)))
	p.allSaved()
	p.Reload()
	p.See(fill(in["trip.packed"], "of", fmt.Sprint(of)))

	p.unfold(in["trip.goods"])
	p.Type(fill(in["trip.goodCount"], "good", in["good.cartridge"]), "2")
	p.See("ask the airline")
	p.Tap("link", in["trip.desk"])
	p.See("2 × " + in["good.cartridge"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the desk's page at " + size.Name)
	})
	p.Shot("packing-desk")
	p.Tap("link", in["recKind.trip"])
	p.unfold(in["trip.item"])
	p.Type(in["trip.itemName"], "Shoes 👟 נעליים")
	p.Type(in["trip.itemKg"], "0,9")
	p.Type(in["trip.itemCm"], "abc")
	p.Tap("button", in["trip.itemAdd"])
	p.See("That is not a number.")
	p.Type(in["trip.itemCm"], "70")
	p.Tap("button", in["trip.itemAdd"])
	p.See("Together 0.9 kg; the largest 70 cm")

	p.Tap("link", in["trip.arrival"])
	p.See(strings.Split(in["trip.notReady"], ":")[0])
	p.NotSee(in["trip.ready"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the way back at " + size.Name)
	})
	p.Shot("packing-arrival")
	p.tickAll("rotor")
	p.See(strings.Split(in["trip.notReady"], ":")[0])
	p.allSaved()
	p.Reload()
	p.See(strings.Split(in["trip.notReady"], ":")[0]) // also after a reload
	for _, box := range p.boxes() {
		if strings.Contains(strings.ToLower(box.Name), "rotor") {
			p.tap(box)
		}
	}
	p.See(in["trip.ready"])
	p.Tap("link", in["trip.walk"])
	p.Find("heading", in["checks.moment.arrival"])
}

// Two people tick one list apart, and agree when they meet.
func TestTwoPeoplePackOneBike(t *testing.T) {
	in := words(t)
	trip := deed{id: "trip 1", rec: "trip", kind: "trip", ago: time.Hour, by: "Ana", set: members{"name": "Island", "from": "2027-08-01", "way": "air_bag", "bikes": []string{hexOf("Ochre")}}}
	server := TeamServer(StartServer(t), append(builds[0].deeds(), trip)...)
	browser := OpenBrowser(t)
	var phones []*Page
	for range 2 {
		p := browser.OpenApart(server.URL() + "#/packing/" + hexOf("trip"))
		p.Allow(offline)
		p.Find("heading", "Island")
		p.installed()
		p.Eventually("steps", func() bool { return len(p.boxes()) > 8 })
		phones = append(phones, p)
	}
	server.Stop()
	for n, p := range phones {
		box := p.boxes()[n]
		p.tap(box)
		p.See("1 of ")
	}
	server.Start()
	for _, p := range phones {
		p.Online()
		p.onServer(server, `"pack_tick"`)
	}
	for _, p := range phones {
		p.Eventually("both ticks", func() bool {
			p.Online()
			return strings.Contains(p.Text(), "2 of ")
		})
	}
	p := phones[0]
	Eval[bool](p, keepDownloads+"true")
	p.Tap("button", in["trip.calendar"])
	p.Eventually("a calendar file", func() bool { return Eval[bool](p, `globalThis.kept !== undefined`) })
	events := readCalendar(t, Eval[string](p, `globalThis.kept.text()`))
	if len(events) < 3 || !strings.HasPrefix(events[0].summary, "Island: ") || events[0].start != "20270801" || !events[0].alarm {
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
