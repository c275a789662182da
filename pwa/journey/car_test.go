package journey

import (
	"fmt"
	"strings"
	"testing"
)

// keyIn types a race number with the thumb.
func (p *Page) keyIn(number string) {
	p.t.Helper()
	for _, digit := range number {
		p.Tap("button", string(digit))
	}
}

// A day in the car, with no signal: number, bike, spare in four taps; not in its place; given, and back again.
func TestNumberToSpareWithNoSignal(t *testing.T) {
	server := StartServer(t, "-demo")
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/car")
	p.See(in["car.typeNumber"])
	p.installed()
	server.Stop()
	p.Allow(offline)
	p.keyIn("114")
	p.See("114 · Rider in fern")
	p.See("GIVE REAR 3")
	p.See("roof, left · ")
	p.See("12 × 142 mm · rotor 160 · 12 sprockets · room for 42 mm")
	p.See("with a change: 11 sprockets for 12: gears will not index")
	p.See("no: rotor 140 in a 160 brake")
	p.See("no: out with 87 since ")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a spare to give at " + size.Name)
	})
	p.Shot("car-give")

	p.Tap("button", in["car.notThereButton"])
	p.See("GIVE REAR 5")
	p.See(in["car.notThere"])
	p.Tap("button", in["car.next"]) // a number typed anew forgets what was not in its place
	p.keyIn("114")
	p.See("GIVE REAR 3")
	p.Tap("button", fill(in["car.gaveSpoken"], "spare", "Rear 3", "who", "114 · Rider in fern"))
	p.See(fill(in["car.gaveDone"], "spare", "Rear 3", "who", "114 · Rider in fern"))
	p.allSaved()
	p.Reload()
	p.keyIn("115")
	p.See("GIVE REAR 5")
	p.See("no: out with 114 since ")

	p.Tap("link", in["lent.title"])
	p.See("Rear 3 is with 114 · Rider in fern")
	p.See(in["lent.twice"])
	p.Axe()
	p.wide("spares out")
	p.Shot("car-out")
	p.tap(p.firstButton(in["lent.back"]))
	p.See("is back.")
}

// A bike that is not in the book is told by eye in six taps.
func TestABikeByEye(t *testing.T) {
	server := StartServer(t, "-demo")
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/car")
	p.See(in["car.typeNumber"])
	p.Tap("button", in["car.byEyeSpoken"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("by eye at " + size.Name)
	})
	p.Shot("car-eye")
	taps := 0
	for _, choice := range []string{in["eye.rear"], in["eye.size.622"], in["eye.disc"], fill(in["eye.thru"], "axle", "12", "width", "142"), fill(in["eye.mm"], "mm", "160"), "12"} {
		p.Tap("button", choice)
		taps++
	}
	if taps > 6 {
		t.Errorf("%d taps", taps)
	}
	p.See("GIVE REAR 3")
	p.See(in["carLook.tyre"]) // what was not asked has to be looked at
	p.Tap("button", fill(in["car.gaveNamed"], "spare", "Rear 3"))
	p.See(fill(in["car.gaveUnknown"], "spare", "Rear 3"))
}

// Nothing in the car fits: what to do instead.
func TestNothingFits(t *testing.T) {
	server := StartServer(t, "-demo")
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/car")
	p.See(in["car.typeNumber"])
	p.keyIn("201")
	p.See(in["car.nothing"])
	p.See(in["car.instead.tube"])
	p.Tap("button", in["car.next"])
	p.keyIn("9")
	p.See(in["car.none"])
}

// A list of three hundred riders is pasted, its columns are matched, and a bad row is named.
func TestRidersComeInAsAList(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/car/event")
	p.See(in["event.paste"])
	p.Type(in["eventWhole.name"], "Spring classic")
	var list strings.Builder
	list.WriteString("Number;Rider;Brake;Rear axle;Rear rotor;Sprockets;Biggest sprocket that goes;Tyre;Opening\n")
	for n := 1; n <= 300; n++ {
		fmt.Fprintf(&list, "%d;Rider %d;disc;12x142;160;12;34;32;48\n", n, n)
	}
	list.WriteString("301;Rider 301;disc;through;160;12;34;32;48\n7;Twice;disc;12x142;160;12;34;32;48\n")
	p.bringFile(in["event.bring"], "riders.csv", list.String())
	p.See(fill(in["event.take"], "n", "300"))
	p.See("Line 302: Rear axle, 12x142: write diameter and width, as 12x142")
	p.See("Line 303: number 7 stands twice")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("columns at " + size.Name)
	})
	p.Shot("car-event")
	p.Tap("button", fill(in["event.take"], "n", "300"))
	p.See(fill(in["event.taken"], "n", "300"))
	p.allSaved()
	p.Go("car")
	p.See(in["car.noSpares"])
	p.keyIn("299")
	p.See("299 · Rider 299")
	p.See("12 × 142 mm · rotor 160 · 12 sprockets · room for 40 mm")

	p.Go("car/event") // the same riders, whole: counted, and erased for good
	p.Tap("link", "Spring classic 300 riders")
	p.See(in["eventWhole.holds"])
	p.See("Bike: 300")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("an event at " + size.Name)
	})
	p.Shot("car-event-whole")
	p.Type(fill(in["forget.type"], "word", in["erase.word"]), in["erase.word"])
	p.Tap("button", in["forget.button"])
	p.See(in["eventWhole.gone"])
	p.Go("car")
	p.See(in["car.noSpares"])
	p.keyIn("299")
	p.NotSee("Rider 299")
}

// What to take along is proved; the cartridge says where to stop.
func TestLoadAndGas(t *testing.T) {
	server := StartServer(t, "-demo")
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/car/load")
	p.See("Proved: no other choice covers more.")
	p.See("Rear 3 · roof, left")
	p.Axe()
	p.wide("what to load")
	p.Shot("car-load")
	p.Go("car/gas")
	p.Type(in["gasField.limit"], "3 bar")
	p.See("Too much: the limit is 3.00 bar.")
	p.See(in["gas.frost"])
	p.Type(in["gasField.cartridge"], "500")
	p.See("From 4 to 100 g.")
	p.NotSee("Too much")
	p.Axe()
	p.Shot("car-gas")
}

// In the morning each spare gets one pressure; what was pumped is what the car says of it afterwards, and the Pressure screen too.
func TestMorningList(t *testing.T) {
	server := StartServer(t, "-demo")
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/car")
	p.See(in["car.typeNumber"])
	p.Tap("link", in["morning.title"])
	p.See("Rear 3 · roof, left")
	p.See("114 · Rider in fern")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the morning list at " + size.Name)
	})
	p.Shot("car-morning")
	p.Tap("button", fill(in["morning.pumpedSpoken"], "spare", "Rear 3 · roof, left", "p", "2.70 bar"))
	p.See(fill(in["morning.done"], "spare", "Rear 3", "p", "2.70 bar"))
	p.Go("car")
	p.keyIn("114")
	p.See("GIVE REAR 3")
	p.See("roof, left · 2.70 bar, as pumped at ")

	p.Go("car/tags") // a tag's code opens its wheel
	p.See(in["tags.print"])
	p.Eventually("a square code on each tag", func() bool {
		return Eval[bool](p, `document.querySelectorAll(".tags > li").length > 5 && [...document.querySelectorAll(".tags > li")].every((tag) => tag.querySelector("svg.qr path") !== null)`)
	})
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("tags at " + size.Name)
	})
	p.Shot("car-tags")
	code := Eval[string](p, `document.querySelector(".tags .tag-code").textContent`)
	name := Eval[string](p, `document.querySelector(".tags .named").textContent`)
	p.Type(in["tags.code"], strings.ToLower(code))
	p.Tap("button", in["tags.open"])
	p.See(name)
	p.Eventually("the wheel's own page", func() bool { return strings.Contains(Eval[string](p, "location.hash"), "#/wheels/") })
}

// Two cars lend the same spare while neither has a signal: both entries are kept, and both cars see the conflict.
func TestTwoCarsLendOneSpare(t *testing.T) {
	in := words(t)
	server := StartServer(t, "-demo")
	road := Forward(t, server)
	browser := OpenBrowser(t)
	riders := []string{"114 · Rider in fern", "115 · Rider in clay"}
	cars := make([]*Page, len(riders))
	for i := range cars {
		cars[i] = browser.OpenApart(road.URL + "/#/car")
		cars[i].Allow(offline, "ERR_EMPTY_RESPONSE")
		cars[i].See(in["car.typeNumber"])
		cars[i].keyIn("114")
		cars[i].See("GIVE REAR 3")
		cars[i].Tap("button", in["car.next"])
	}
	road.SwitchTo(-1) // nobody is in reach
	for i, p := range cars {
		p.keyIn(riders[i][:3])
		p.See("GIVE REAR 3")
		p.Tap("button", fill(in["car.gaveSpoken"], "spare", "Rear 3", "who", riders[i]))
		p.See(fill(in["car.gaveDone"], "spare", "Rear 3", "who", riders[i]))
		p.keyIn(riders[i][:3]) // and a whole bike
		p.Choose(in["car.side"], in["spareBike.one"])
		p.See("GIVE ROOF BIKE 1")
		p.See("Roof bike 2 · roof, right")
		p.See("no: out with 7 since ")
		p.Tap("button", fill(in["car.gaveSpoken"], "spare", "Roof bike 1", "who", riders[i]))
		p.See(fill(in["car.gaveDone"], "spare", "Roof bike 1", "who", riders[i]))
	}
	road.SwitchTo(0)
	for _, p := range cars {
		p.Go("car/out")
		p.Eventually("both entries, of this car and of the other", func() bool {
			for _, car := range cars {
				car.Online() // they meet the server in any order
			}
			text := p.Text()
			return strings.Contains(text, "Rear 3 is with "+riders[0]) && strings.Contains(text, "Rear 3 is with "+riders[1]) &&
				strings.Contains(text, "Roof bike 1 is with "+riders[0]) && strings.Contains(text, "Roof bike 1 is with "+riders[1])
		})
		p.Eventually("both riders named in one conflict", func() bool {
			text := p.Text()
			return strings.Contains(text, "Rear 3 was given out by two cars") && strings.Contains(text, "Roof bike 1 was given out by two cars") && strings.Contains(text, in["lent.twice"])
		})
	}
}

// BenchmarkNumberToSpare is, with 300 riders and 30 spares, the time until a new phone has the whole event; and at a quarter of the
// speed that from a digit to the shorter list and from the last digit to the spare that goes in.
func BenchmarkNumberToSpare(b *testing.B) {
	server := StartServer(b)
	var all []members
	add := func(rec int, kind string, set members) string {
		id := fmt.Sprintf("%032x", rec)
		all = append(all, members{"id": fmt.Sprintf("%032x", 5000000+rec), "at": 1790000000000 + rec, "kind": kind, "rec": id, "set": set, "author": "", "device": "", "schema": 1})
		return id
	}
	wheel := func(rec int, side string) string {
		tyre := add(rec+1, "tyre", members{"label_mm": 28 + rec%8})
		return add(rec, "wheel", members{
			"side": side, "tyre": tyre, "brake": "disc", "rotor_mm": []int{140, 160}[rec%2], "axle_mm": 12, "hub_width_mm": map[string]int{"front": 100, "rear": 142}[side], "speeds": 12, "max_cog": 34,
		})
	}
	for n := range 300 {
		at := 1000000 + 10*n
		person := add(at+8, "person", members{"name": fmt.Sprintf("Rider %d", n+100), "number": fmt.Sprint(n + 100)})
		add(at+9, "bike", members{"number": fmt.Sprint(n + 100), "rider": person, "front": wheel(at, "front"), "rear": wheel(at+2, "rear"), "brake": "disc", "speeds": 12, "max_cog": 36, "room_front_mm": 50, "room_rear_mm": 50})
	}
	for n := range 30 {
		at := 2000000 + 10*n
		add(at+5, "spare", members{"name": fmt.Sprintf("Rear %d", n+1), "wheel": wheel(at+n%2, "rear"), "place": "roof"})
	}
	for from := 0; from < len(all); from += 500 {
		server.push(teamBook, all[from:min(from+500, len(all))])
	}
	in := words(b)
	p := OpenBrowser(b).Open(server.URL() + "#/car")
	p.Eventually("the whole event", func() bool {
		return Eval[bool](p, `document.querySelector("rs-status")?.textContent.includes("last synced") ?? false`)
	})
	here := Eval[float64](p, "performance.now()") / 1000 // since its address was opened
	if held := Eval[int](p, countOps); held != len(all) {
		b.Errorf("%d of %d entries are on the phone", held, len(all))
	}
	p.See(in["car.typeNumber"])
	p.keyIn("399")
	p.See("GIVE REAR ")
	p.Tap("button", in["car.next"])
	var lists, gives float64
	for b.Loop() {
		p.throttle(4)
		press := func(key, until string) float64 {
			return Eval[float64](p, fmt.Sprintf(`new Promise((resolve) => {
				const from = performance.now();
				dispatchEvent.call(document, new KeyboardEvent("keydown", {key: %q, bubbles: true}));
				const look = () => (%s) ? resolve(performance.now() - from) : requestAnimationFrame(look);
				requestAnimationFrame(look);
			})`, key, until))
		}
		lists = max(lists, press("3", `document.querySelectorAll(".car-riders > li").length === 6`))
		press("9", `true`)
		gives = max(gives, press("9", `/GIVE REAR/.test(document.querySelector(".give-large")?.innerText ?? "")`))
		p.throttle(1)
		p.Tap("button", in["car.next"])
	}
	b.ReportMetric(here, "s-new-phone")
	b.ReportMetric(lists, "ms-list")
	b.ReportMetric(gives, "ms-spare")
}
