package journey

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
)

// gravel is a bike of which packing knows all that it asks.
var gravel = build{"Sepia",
	members{"brake": "disc", "pedals": "hex", "shifting": "cable", "derailleur": "hanger", "seatpost": "plain", "cockpit": "faceplate", "frame_material": "carbon", "bar_material": "aluminium"},
	members{"setup": "tubeless", "profile": "hookless", "brake": "disc", "axle_mm": 12, "rotor_mount": "six_bolt"}, members{"label_mm": 45}}

// hoses is one with electric shifting and hoses through the head tube.
var hoses = build{"Indigo",
	members{"brake": "disc", "pedals": "hex", "shifting": "electric", "derailleur": "hanger", "seatpost": "wires", "cockpit": "hoses", "frame_material": "carbon", "bar_material": "carbon"},
	members{"setup": "tubeless", "profile": "hookless", "brake": "disc", "axle_mm": 12, "rotor_mount": "lockring"}, members{"label_mm": 40}}

// atTrip opens a trip of a bike on a phone with no signal.
func atTrip(t *testing.T, of build, set members) *Page {
	t.Helper()
	all := members{"name": "Island", "from": time.Now().AddDate(0, 0, 1).Format("2006-01-02"), "bikes": []string{hexOf(of.name)}}
	for name, value := range set {
		all[name] = value
	}
	server := TeamServer(StartServer(t), append(of.deeds(), deed{id: "trip 1", rec: "trip", kind: "trip", ago: time.Hour, by: "Ana", set: all})...)
	p := OpenBrowser(t).Open(server.URL() + "#/packing/" + hexOf("trip"))
	p.Find("heading", "Island")
	p.installed()
	p.Allow(offline)
	server.Stop()
	return p
}

// next is the step on the card on top; "" when there is none left.
func (p *Page) next() string {
	return Eval[string](p, `(() => {
		const card = document.querySelector("rs-next");
		return card === null || card.hidden ? "" : card.querySelector("h3").textContent;
	})()`)
}

// done taps Done on the card, and waits until the next step stands there and may be done.
func (p *Page) done() {
	p.t.Helper()
	in := words(p.t)
	now := p.next()
	p.Tap("button", in["trip.done"])
	p.Eventually("the step after "+now, func() bool { return p.next() != now && (p.next() == "" || p.mayPress()) })
}

// mayPress says whether Done answers: it rests for a moment, so that a double tap does not tick two.
func (p *Page) mayPress() bool {
	return Eval[bool](p, `document.querySelector("rs-next .primary").getAttribute("aria-disabled") !== "true"`)
}

// doAll does what stands on the card until nothing is left, and tells what it was.
func (p *Page) doAll() (steps []string) {
	p.t.Helper()
	for step := p.next(); step != ""; step = p.next() {
		if steps = append(steps, step); len(steps) > 60 {
			p.t.Fatalf("there is no end: %v", steps)
		}
		p.done()
	}
	return steps
}

// inOrder says whether some steps stand in this order among others.
func inOrder(t *testing.T, steps []string, wanted ...string) {
	t.Helper()
	at := -1
	for _, step := range wanted {
		place := slices.Index(steps, step)
		if place <= at {
			t.Errorf("%q stands at %d, not after %d, in %s", step, place, at, strings.Join(steps, " | "))
		}
		at = place
	}
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
