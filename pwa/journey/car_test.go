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
}
