package journey

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// addBike adds a bike by its few fields, and stands on its page.
func (p *Page) addBike(name, width string) {
	p.t.Helper()
	in := words(p.t)
	p.Go("wheels/new/bike")
	p.Type(in["recField.name"], name)
	p.Type(in["recField.label_mm"], width)
	p.Choose(in["recField.setup"], in["recOption.tubeless"])
	p.Choose(in["recField.profile"], in["recOption.hooked"])
	p.Choose(in["recField.brake"], in["recOption.disc"])
	p.Tap("button", in["things.addIt"])
	p.Find("heading", "Bike · "+name)
}

// follow goes to what belongs to the thing on the page.
func (p *Page) follow(link string) {
	p.t.Helper()
	p.Tap("link", link)
	p.NotSee(link)
}

// A bike is added in few fields, measured, copied, put out of use, deleted and brought back, all without a signal.
func TestWheelsWithNoSignal(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/wheels")
	p.installed()
	p.Allow(offline)
	server.Stop()
	p.See(in["things.empty"])
	p.Axe()
	p.Tap("link", in["things.first"])
	p.Tap("button", in["things.addIt"])
	p.See(in["fault.missing"])
	p.Type(in["recField.name"], "Ochre")
	p.Type(in["recField.label_mm"], "400")
	p.Tap("button", in["things.addIt"])
	p.See("From 18 to 132 mm.")
	if kept := p.Value(in["recField.label_mm"]); kept != "400" {
		t.Errorf("what was typed is now %q", kept)
	}
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a new bike at " + size.Name)
	})
	p.Shot("wheels-new")
	p.addBike("Ochre", "45")

	p.follow("Front wheel: front of Ochre")
	p.See("Assumed 23 mm inner: measure or read the label.")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a wheel at " + size.Name)
	})
	p.Shot("wheels-wheel")
	p.edit(in["recField.inner_mm"], "2,4 cm")
	p.See(fill(in["things.saved"], "field", in["recField.inner_mm"]))
	p.NotSee("Assumed 23 mm inner")
	p.holds(in["recField.inner_mm"], "24")
	p.Tap("button", in["ground.undo"])
	p.See(in["things.undone"])
	p.holds(in["recField.inner_mm"], "")
	p.edit(in["recField.inner_mm"], "240")
	p.See("From 10 to 110 mm.")
	p.allSaved()
	p.Reload()
	p.holds(in["recField.inner_mm"], "240") // what cannot be saved is not lost either
	p.See("From 10 to 110 mm.")
	p.edit(in["recField.inner_mm"], "24")
	p.See(fill(in["things.saved"], "field", in["recField.inner_mm"]))
	p.edit(in["recField.name"], "Dawn")
	p.Find("heading", "Wheel · Dawn")
	p.unfold(in["thing.group.disc"])
	p.edit(in["recField.rotor_mm"], "160")
	p.See(fill(in["things.saved"], "field", in["recField.rotor_mm"]))

	p.Tap("button", in["things.copy.wheel"])
	p.Find("heading", "Wheel · Dawn, again")
	p.holds(in["recField.inner_mm"], "24")
	p.Tap("button", in["things.retire"])
	p.See(in["things.retired"])
	p.Tap("button", in["things.back"])
	p.See(in["things.isBack"])
	p.Tap("button", in["things.delete"])
	p.See(in["things.isDeleted"])
	p.Tap("button", in["ground.undo"])
	p.NotSee(in["things.isDeleted"])

	p.Go("wheels")
	p.Type(in["things.search"], "dawn 160")
	p.See(fill(in["things.found"], "n", "2"))
	p.Find("link", "Dawn front of Ochre · 45\u00a0mm tyre · 24 mm inner · 160 mm rotor · tubeless")
	p.Type(in["things.search"], "nobody")
	p.See(fill(in["things.notFound"], "query", "nobody"))
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the search at " + size.Name)
	})
	p.Type(in["things.search"], "ochre")
	p.Shot("wheels")
}

// A wheel goes to another bike, and comes back.
func TestTwoBikesChangeWheels(t *testing.T) {
	p, server := Visit(t)
	in := words(t)
	p.addBike("Ochre", "45")
	p.follow("Front wheel: front of Ochre")
	p.edit(in["recField.name"], "Dawn")
	p.Find("heading", "Wheel · Dawn")
	p.addBike("Umber", "40")
	p.Choose(in["recField.front"], "Dawn (front of Ochre)")
	p.See(in["things.swapped"])
	p.Find("link", "Front wheel: Dawn")
	p.Tap("button", in["ground.undo"])
	p.See(in["things.undone"])
	p.Find("link", "Front wheel: front of Umber")
	p.Choose(in["recField.front"], "Dawn (front of Ochre)")
	p.See(in["things.swapped"])
	p.follow("Front wheel: Dawn")
	p.Find("link", "Umber: Front wheel")
	p.Go("pressure")
	p.onServer(server, "Dawn")
}

// Two people take the same wheel for different bikes while they are apart: told in words, decided once, gone everywhere.
func TestOneWheelOnTwoBikes(t *testing.T) {
	in := words(t)
	bike := func(name, front string) deed {
		return deed{id: name + " 1", rec: name, kind: "bike", ago: time.Hour, by: "Ana", set: members{"name": name, "front": hexOf(front)}}
	}
	wheel := func(name string) deed {
		return deed{id: name + " 1", rec: name, kind: "wheel", ago: 2 * time.Hour, by: "Ana", set: members{"name": name}}
	}
	server := TeamServer(StartServer(t), wheel("Dawn"), wheel("Dusk"), wheel("Noon"), bike("Ochre", "Dawn"), bike("Umber", "Dusk"), bike("Slate", "Noon"))
	browser := OpenBrowser(t)
	var phones []*Page
	for range 2 {
		p := browser.OpenApart(server.URL() + "#/wheels")
		p.Allow(offline)
		p.See("Slate")
		p.installed()
		phones = append(phones, p)
	}
	server.Stop()
	for n, name := range []string{"Umber", "Slate"} {
		p := phones[n]
		p.Go("wheels/" + hexOf(name))
		p.Find("heading", "Bike · "+name)
		p.Choose(in["recField.front"], "Dawn (front of Ochre)")
		p.See(in["things.swapped"])
	}
	server.Start()
	for n, p := range phones {
		p.Online()
		p.onServer(server, fmt.Sprintf(`{"front":"%s"}`, hexOf("Dawn")))
		p.onServer(server, fmt.Sprintf(`{"front":"%s"}`, hexOf([]string{"Dusk", "Noon"}[n])))
	}
	for _, p := range phones {
		p.Online()
		p.Go("settings/clashes")
		p.Find("heading", "Bike · Ochre")
		p.Find("group", fill(in["clash.which"], "field", in["recField.front"]))
		p.See(in["double.ask"])
	}
	first, second := phones[0], phones[1]
	first.EachLook(func(size Size, _ string) {
		first.Axe()
		first.wide("a wheel on two bikes at " + size.Name)
	})
	first.Shot("wheels-double")
	first.Tap("button", "front of Slate")
	first.See(fill(in["double.done"], "place", "front of Slate"))
	first.NotSee(in["double.ask"]) // the page is shorter then, and stands still
	first.tap(first.button("Noon"))
	first.See("Front wheel: Noon")
	first.See(in["clash.done"])
	for _, p := range []*Page{second, first} {
		p.Eventually("nothing left to decide", func() bool {
			p.Online()
			text := p.Text()
			return !strings.Contains(text, in["double.ask"]) && (strings.Contains(text, in["clash.done"]) || strings.Contains(text, in["clash.none"]))
		})
	}
	second.Go("wheels/" + hexOf("Slate"))
	second.Find("link", "Front wheel: Dawn")
	second.Go("wheels/" + hexOf("Umber"))
	second.Find("heading", "Bike · Umber")
	if got := second.Value(in["recField.front"]); got != "" {
		t.Errorf("the other bike still holds %q", got)
	}
}

// BenchmarkFiveHundredWheels is the time until the list stands, and until a search is answered, at a quarter of the speed.
func BenchmarkFiveHundredWheels(b *testing.B) {
	server := StartServer(b)
	var all []members
	for n := range 500 {
		all = append(all, members{
			"id": fmt.Sprintf("%032x", 900000+n), "at": 1790000000000 + n, "kind": "wheel", "rec": fmt.Sprintf("%032x", 800000+n),
			"set":    members{"name": fmt.Sprintf("Wheel %03d", n), "inner_mm": 19 + n%10, "rotor_mm": []int{140, 160, 180}[n%3], "setup": "tubeless", "tyre": fmt.Sprintf("%032x", 700000+n)},
			"author": "", "device": "", "schema": 1,
		}, members{
			"id": fmt.Sprintf("%032x", 600000+n), "at": 1790000000000 + n, "kind": "tyre", "rec": fmt.Sprintf("%032x", 700000+n),
			"set": members{"label_mm": 28 + n%30, "measured_mm": 29 + n%30, "measured_at": 1790000000000}, "author": "", "device": "", "schema": 1,
		})
	}
	for from := 0; from < len(all); from += 500 {
		server.push(teamBook, all[from:min(from+500, len(all))])
	}
	p := OpenBrowser(b).Open(server.URL() + "#/wheels")
	p.See("Wheel 000")
	p.See("Show 476 more")
	var opens, finds float64
	for b.Loop() {
		p.throttle(4)
		opens = max(opens, p.opensIn("wheels", `document.querySelectorAll("rs-lines .way").length >= 24`))
		Eval[bool](p, `new Promise((resolve) => setTimeout(() => requestIdleCallback(() => resolve(true)), 3000))`)
		finds = max(finds, Eval[float64](p, `new Promise((resolve) => {
			const box = document.querySelector("input[type=search]");
			const from = performance.now();
			box.value = "rotor 160 3" + Math.floor(Math.random() * 9);
			box.dispatchEvent(new Event("input", {bubbles: true}));
			requestAnimationFrame(() => setTimeout(() => {
				const spent = performance.now() - from;
				box.value = "";
				box.dispatchEvent(new Event("input", {bubbles: true}));
				resolve(spent);
			}));
		})`))
		p.throttle(1)
	}
	b.ReportMetric(opens, "ms-opens")
	b.ReportMetric(finds, "ms-finds")
}
