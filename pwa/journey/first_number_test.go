package journey

import "testing"

// The first number comes after at most twelve taps, those into the fields that are typed included; also for a 40 mm tyre on a hooked
// rim 23 mm wide of which nothing was read.
func TestTheFirstNumberTakesTwelveTaps(t *testing.T) {
	in := words(t)
	p, _ := Visit(t)
	p.at("pressure")
	p.firstAnswers()
	t.Logf("50 mm tubeless: %d taps", p.taps)
	if p.taps > 12 {
		t.Errorf("50 mm tubeless: %d taps", p.taps)
	}

	p, _ = Visit(t)
	p.at("pressure")
	p.Type(in["field.rider"], "72")
	p.Type(in["field.bike"], "11")
	p.Type(in["field.label"], "40")
	p.Type(in["field.inner"], "23")
	p.Choose(in["pick.setup"], in["setup.tubeless"])
	p.Choose(in["pick.profile"], in["profile.hooked"])
	for _, field := range []string{"field.tyreMax", "field.rimMax"} {
		p.Tap("checkbox", fill(in["field.sided"], "side", in[field], "label", in["first.unread"]))
	}
	p.Choose(in["part.ground"], in["kind.pea"])
	p.Tap("button", in["first.go"])
	p.number(in["side.front"])
	p.number(in["side.rear"])
	t.Logf("40 mm with nothing read: %d taps", p.taps)
	if p.taps > 12 {
		t.Errorf("40 mm with nothing read: %d taps", p.taps)
	}
	p.Axe()
	p.ShotNow("first-number-unread")
}
