package journey

import (
	"strings"
	"testing"
)

// harsh tells of the front wheel that it was a bit harsh, and notes it.
func (p *Page) harsh() {
	p.t.Helper()
	in := words(p.t)
	p.Choose(fill(in["ride.felt"], "side", in["ride.side.front"]), in["ride.option.hard"])
	p.Tap("button", in["ride.save"])
}

// One answer after the ride, with no signal: the next pressures are lower, until it is taken back.
func TestAfterTheRideTheNextAnswerLearns(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	front := in["side.front"]
	p := OpenBrowser(t).Open(server.URL())
	p.installed()
	p.Allow(offline)
	server.Stop()
	p.firstAnswers()
	before := p.number(front)
	p.Tap("button", in["set.both"])
	p.See(in["set.done"])
	p.Tap("button", in["ride.how"])
	p.Tap("button", in["ride.save"])
	p.See(in["ride.nothing"])
	p.harsh()
	p.See("Noted. Next time: front 0.0")
	p.See("softer")
	p.See("front 2 % softer")
	p.See("Front: a bit harsh (just now)")
	after := p.Changed(front, before)
	if after >= before {
		t.Errorf("after a harsh ride the front shows %s, before it %s", after, before)
	}
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("after the ride at " + size.Name)
	})
	p.Shot("after-ride")

	p.Reload()
	if now := p.number(front); now != after {
		t.Errorf("opened again the front shows %s, not %s", now, after)
	}
	p.Tap("button", in["ride.how"])
	p.Tap("checkbox", in["side.rear"]+": "+in["ride.struck"])
	p.saved("after-ride")
	p.Reload() // what was chosen is not lost
	p.Tap("button", in["ride.how"])
	rear := p.number(in["side.rear"])
	p.harsh()
	p.See("Rear: the rim hit something")
	p.See(strings.Split(in["ride.replaced"], "{")[0]) // one note a wheel and ride
	p.Changed(in["side.rear"], rear)
	p.says(front, after)
	p.Tap("button", in["ride.back"])
	p.See(in["ride.taken"])
	p.says(in["side.rear"], rear)
	p.says(front, after)
	p.NotSee("the rim hit something (")
}

// Whatever is said after rides, no number passes a limit.
func TestNoNoteLiftsANumberOverALimit(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	p.setUp()
	p.Type(in["field.tyreMax"], "1.6")
	p.says(in["side.rear"], "1.60")
	p.board()
	p.Tap("button", in["set.both"])
	p.Tap("button", in["ride.how"])
	for range 3 {
		for _, side := range []string{"front", "rear"} {
			p.Choose(fill(in["ride.felt"], "side", in["ride.side."+side]), in["ride.option.too_soft"])
		}
		p.Tap("button", in["ride.save"])
		p.See("rear as before, held by the tyre’s marking")
		p.NotSee(in["ride.taken"])
	}
	p.says(in["side.rear"], "1.60")
	p.says(in["side.front"], "1.60")
}

func TestEachNumberSaysWhy(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	p.why(in["side.front"])
	p.NotSee(in["whyHow.floor"])
	for _, node := range p.Tree() {
		if node.Role == "DisclosureTriangle" && strings.HasPrefix(node.Name, in["why.floor"]) {
			p.tap(node)
			break
		}
	}
	for _, part := range []string{in["whyHow.floor"], in["whySource.floor"], in["whySure.floor"], "width 50 mm, predicted"} {
		p.See(part)
	}
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the reasons at " + size.Name)
	})
	p.Shot("why")
}

func TestTwoGaugesDisagree(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	before := p.number(in["side.front"])
	p.setUp()
	p.Tap("DisclosureTriangle", in["ask.gauges"])
	p.Type(in["gauges.reads.mine"], "2,10")
	p.Type(in["gauges.reads.other"], "2.0")
	p.See("Yours reads 0.10 bar too high.")
	p.Axe()
	p.Shot("two-gauges")
	p.Tap("button", in["gauges.store"])
	p.See(in["gauges.stored"])
	p.Changed(in["side.front"], before)
	if value := p.Value(in["field.gaugeError"]); value != "0.1" {
		t.Errorf("the gauge's error is %q", value)
	}
}

func TestFirstQuestionsAreAnsweredWhereTheyArise(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.Tap("DisclosureTriangle", in["ask.bags"])
	p.See(in["answer.bags"])
	p.Tap("DisclosureTriangle", in["ask.inner"])
	p.See(in["answer.inner"])
	p.Axe()
	p.Shot("first-questions")
	p.firstAnswers()
	p.setUp()
	for _, question := range []string{"plug", "insert"} {
		p.Tap("DisclosureTriangle", in["ask."+question])
		p.See(in["answer."+question])
	}
	p.Axe()
	p.Shot("questions")
}
