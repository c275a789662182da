package journey

import (
	"strconv"
	"testing"
)

// The number follows the ground: the more of the way is soft, the lower, in small even steps. Four rides that were right move
// nothing, and a struck rim firms. With no signal.
func TestTheNumberFollowsTheGroundAndTheRider(t *testing.T) {
	p := noSignal(t)
	in := words(t)
	front := in["side.front"]
	stretch := func(n string, label string) string { return fill(in["ground.stretch"], "n", n) + ": " + label }
	p.firstAnswers()
	p.ground()
	p.Tap("button", in["ground.add"])
	p.Choose(in["ground.by"], in["groundBy.share"])
	p.Choose(stretch("2", in["ground.what"]), in["kind.soft"])
	before := amountOf(t, p.number(front))
	steps := []float64{}
	for soft := 10; soft <= 90; soft += 10 {
		p.Type(stretch("2", in["field.part"]), strconv.Itoa(soft))
		p.See(strconv.Itoa(soft) + " % of the way is soft")
		now := amountOf(t, p.Changed(front, strconv.FormatFloat(before, 'f', 2, 64)))
		if now > before {
			t.Errorf("with %d %% soft ground the front shows %.2f, with less of it %.2f", soft, now, before)
		}
		steps = append(steps, before-now)
		before = now
	}
	fall := 0.0
	for _, step := range steps {
		fall += step
	}
	for i, step := range steps {
		if fall <= 0 || step > fall/3 {
			t.Errorf("of the whole fall of %.2f bar, %.2f come between %d and %d %%: no even fall", fall, step, i*10, i*10+10)
		}
	}
	p.shut()

	at := p.number(front)
	for range 4 {
		p.Tap("button", in["set.both"])
		p.See(in["set.done"])
		p.Tap("button", in["ride.how"])
		for _, side := range []string{in["ride.side.front"], in["ride.side.rear"]} {
			p.Choose(fill(in["ride.felt"], "side", side), in["ride.option.right"])
		}
		p.Tap("button", in["ride.save"])
		p.See(fill(in["ride.same"], "side", "front"))
		p.says(front, at)
		p.shut()
	}
	p.Tap("button", in["set.both"])
	p.See(in["set.done"])
	p.Tap("button", in["ride.how"])
	p.Tap("checkbox", front+": "+in["ride.struck"])
	p.Tap("button", in["ride.save"])
	if firmer := p.Changed(front, at); amountOf(t, firmer) <= amountOf(t, at) {
		t.Errorf("after a struck rim the front shows %s, before it %s", firmer, at)
	}
}

// What the trade rides has a number: a printed 32 on a hooked rim of 29 mm is asked about, not condemned, and a rim and a tyre whose
// maxima nobody read are held low and say so.
func TestWhatTheTradeRidesHasANumber(t *testing.T) {
	p := noSignal(t)
	in := words(t)
	p.Type(in["field.rider"], "85")
	p.Type(in["field.bike"], "9")
	p.Type(in["field.label"], "40")
	p.Choose(in["pick.setup"], in["setup.tubeless"])
	p.Choose(in["pick.profile"], in["profile.hooked"])
	p.Choose(in["part.ground"], in["kind.patched"])
	p.Tap("button", in["first.go"])
	p.number(in["side.front"])
	p.setUp()
	p.Type(in["field.inner"], "23")
	p.number(in["side.front"])
	p.Type(in["field.label"], "32")
	p.Type(in["field.inner"], "29")
	p.See("list 32 mm for this rim of 29 mm?")
	p.unfold(in["part.table"])
	p.Type(in["field.tableMin"], "30")
	p.Type(in["field.tyreMax"], "5") // so narrow under 94 kg, what keeps the rim off the ground is above what an unread mark allows
	p.Type(in["field.rimMax"], "5")
	p.board()
	p.number(in["side.front"])
	p.NotSee(in["ready.state.stop"])
	p.Axe()
	p.ShotNow("trade-32-on-29")
}
