package journey

import (
	"strings"
	"testing"
)

// The three moments that the app is for, each with no signal from its second page on and by few taps, in both languages that it has:
// nothing on the way is worded in another.
func TestTheThreeMoments(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		t.Run(language+" rider", func(t *testing.T) { speak(t, language); riderAtTheStart(t) })
		t.Run(language+" traveller", func(t *testing.T) { speak(t, language); travellerAtNight(t) })
		t.Run(language+" mechanic", func(t *testing.T) { speak(t, language); mechanicAtTheCar(t) })
	}
}

// riderAtTheStart set it at home; at the start one tap opens the app, the second is the reading.
func riderAtTheStart(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL())
	p.installed()
	p.Allow(offline)
	server.Stop()
	p.firstAnswers()
	p.Tap("button", in["set.both"])
	p.See(in["set.done"])
	p.allSaved()
	browser.Kill()
	browser.Restart()
	p = browser.Open(server.URL())
	p.Allow(offline)
	should := p.number(in["side.front"])
	p.says(in["side.front"], in["act.unread"])
	p.taps = 0
	p.Type(in["field.now.front"], should)
	p.says(in["side.front"], in["act.leave"])
	if p.taps != 1 {
		t.Errorf("%d taps to a reading", p.taps)
	}
	p.Axe()
}

// travellerAtNight does the next step of packing, and reads on arrival what is left before the bike is ridden.
func travellerAtNight(t *testing.T) {
	p := atTrip(t, gravel, members{"way": "air_bag", "legs_us": false})
	in := words(t)
	p.Go("pressure")
	p.Reload()
	p.taps = 0
	p.Tap("link", in["place.packing"])
	p.tap(p.link("Island"))
	p.Eventually("the first step", func() bool { return p.next() == in["step.as_built"] })
	p.Tap("button", in["trip.done"])
	p.Eventually("the step after", func() bool { return p.next() == in["step.try_tools"] })
	if p.taps != 3 {
		t.Errorf("%d taps to a step", p.taps)
	}
	p.Eventually("Done answers", p.mayPress)
	for p.next() != in["step.front_spacer"] { // pedals and front wheel are off
		p.done()
	}
	p.Tap("link", in["trip.arrival"])
	p.Eventually("what stops the bike", func() bool { return strings.Contains(p.Text(), in["ready.state.stop"]) })
	p.Axe()
}

// mechanicAtTheCar types a number and gives a spare: three digits and one tap.
func mechanicAtTheCar(t *testing.T) {
	in := words(t)
	server := StartServer(t, "-demo")
	p := OpenBrowser(t).Open(server.URL() + "#/car")
	p.See(in["car.typeNumber"])
	p.installed()
	p.Allow(offline)
	server.Stop()
	p.taps = 0
	p.keyIn("114")
	p.See(fill(in["car.give"], "spare", "REAR 3"))
	p.Tap("button", fill(in["car.gaveSpoken"], "spare", "Rear 3", "who", "114 · Rider in fern"))
	p.See(fill(in["car.gaveDone"], "spare", "Rear 3", "who", "114 · Rider in fern"))
	if p.taps != 4 {
		t.Errorf("%d taps from a number to a spare", p.taps)
	}
	p.Axe()
}
