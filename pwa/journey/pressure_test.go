package journey

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
)

// card is what one wheel's card says, as it can be read on the screen.
func (p *Page) card(side string) string {
	p.t.Helper()
	return Eval[string](p, fmt.Sprintf(`(() => {
		const heading = [...document.querySelectorAll("h2")].find((each) => each.textContent === %q && each.checkVisibility());
		return heading?.closest("section")?.innerText ?? "";
	})()`, side))
}

// says waits until a wheel's card shows a text.
func (p *Page) says(side, text string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("the %s card to say %q, it says %q", side, text, p.card(side)), func() bool {
		return strings.Contains(p.card(side), text)
	})
}

var bigNumber = regexp.MustCompile(`(?m)^\d+[.,]\d\d$`)

// number waits for the number on a wheel's card.
func (p *Page) number(side string) string {
	p.t.Helper()
	var found string
	p.Eventually("a number on the "+side+" card", func() bool {
		found = bigNumber.FindString(p.card(side))
		return found != ""
	})
	return found
}

// Changed waits until a wheel's number is another.
func (p *Page) Changed(side, from string) string {
	p.t.Helper()
	var now string
	p.Eventually(side+" to show another number than "+from, func() bool {
		now = bigNumber.FindString(p.card(side))
		return now != "" && now != from
	})
	return now
}

// firstAnswers fills in the first-run screen: a 72 kg rider on hooked 50 mm tubeless tyres, and goes on.
func (p *Page) firstAnswers() {
	p.t.Helper()
	in := words(p.t)
	p.Type(in["field.rider"], "72")
	p.Type(in["field.bike"], "11")
	p.Type(in["field.label"], "50")
	p.Choose(in["pick.setup"], in["setup.tubeless"])
	p.Choose(in["pick.profile"], in["profile.hooked"])
	p.Choose(in["part.ground"], in["kind.pea"])
	p.Tap("button", in["first.go"])
	p.number(in["side.front"])
}

// The main job on real input with the server off: first answers, then another ground, another weather, another tyre.
func TestPressureWithNoSignal(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	in := words(t)
	front, rear := in["side.front"], in["side.rear"]
	p := browser.Open(server.URL())
	p.installed()
	p.Allow(offline)
	server.Stop()
	p.Shot("first-run")
	p.Axe()
	p.firstAnswers()
	p.See(in["status.saved"])
	p.Axe()
	p.Shot("pressure")
	before := p.number(rear)
	p.saved("pressure-answer")
	browser.Kill()
	browser.Restart()

	p = browser.Open(server.URL())
	p.Allow(offline)
	if now := p.number(rear); now != before {
		t.Errorf("after a cold start the rear shows %s, not %s", now, before)
	}
	p.ground()
	p.Choose("Stretch 1: "+in["ground.what"], in["kind.egg"])
	rough := p.Changed(rear, before)
	p.shut()
	p.air()
	p.Type(in["field.set.c"], "20")
	p.Type(in["field.ride.c"], "2")
	p.shut()
	cold := p.Changed(rear, rough)
	if cold < rough {
		t.Errorf("a tyre that will cool is set to %s, not above %s", cold, rough)
	}
	p.See("2 °C")
	p.setUp()
	p.Type(in["field.measured"], "52.5")
	wide := p.Changed(rear, cold)
	if wide > cold {
		t.Errorf("a wider tyre is set to %s, above %s", wide, cold)
	}
	p.Axe()
	p.board()
	p.says(front, "52.5")
	p.Axe()
}

func TestTheGaugesReadingBecomesAnAction(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	front := in["side.front"]
	p.firstAnswers()
	aim := p.number(front)
	p.Type(in["field.now.front"], aim)
	p.says(front, in["act.leave"])
	p.Type(in["field.now.front"], "2,6 bar")
	p.says(front, "Let out")
	p.Type(in["field.now.front"], "15 psi")
	p.says(front, "Add")
	p.setUp()
	p.Type(in["field.pump"], "60")
	p.board()
	p.says(front, "strokes of your pump")
	p.Type(in["field.now.front"], "abc")
	p.says(front, in["act.readAgain"])
	p.number(front) // a wrong reading takes no number away
	p.says(in["side.rear"], in["act.set"])
	p.See(strings.Split(in["fault.number"], "{")[0])
	p.Axe()
	p.Shot("pressure-misread")
	p.allSaved()
	p.Reload()
	p.Eventually("what was typed", func() bool { return p.Value(in["field.now.front"]) == "abc" })
	p.says(front, in["act.readAgain"])
	p.Type(in["field.now.front"], "")
	p.says(front, in["act.set"])
}

func TestBadInputIsSaidAtTheField(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	p.setUp()
	for _, c := range []struct{ typed, wanted string }{
		{"", in["fault.missing"]}, {"letters", "not a number"}, {"-5", "From 15 to 250 kg"}, {"9999", "From 15 to 250 kg"},
		{"72 mm", "unit does not fit"}, {"1,000.5", "thousands"}, {"1e400", "unit does not fit"},
	} {
		p.Type(in["field.rider"], c.typed)
		p.See(c.wanted)
		p.says(in["side.front"], "OLD")
	}
	p.Type(in["field.rider"], "72,5")
	p.Eventually("a number that holds", func() bool { return !strings.Contains(p.card(in["side.front"]), "OLD") })
}

func TestARefusedPairHasNoNumberAnywhere(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.Type(in["field.rider"], "72")
	p.Type(in["field.label"], "28")
	p.Type(in["field.inner"], "25")
	p.Choose(in["pick.setup"], in["setup.tubeless"])
	p.Choose(in["pick.profile"], in["profile.hookless"])
	p.Choose(in["pick.hookless"], in["answerTo.yes"])
	p.Type(in["field.tyreMax"], "5")
	p.Type(in["field.rimMax"], "5")
	p.Tap("button", in["first.go"])
	p.See(in["plainNotice.hookless_too_narrow"])
	if number := bigNumber.FindString(p.Text()); number != "" {
		t.Errorf("a refused pair shows %s", number)
	}
	p.NotSee(in["read.type"])
	p.Axe()
	p.Shot("pressure-refused")
}

func TestAnOverloadedTyreIsStoppedAndAWidthNamed(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.Type(in["field.rider"], "122")
	p.Type(in["field.label"], "28")
	p.Choose(in["pick.setup"], in["setup.tube"])
	p.Choose(in["pick.profile"], in["profile.hooked"])
	p.Tap("button", in["first.go"])
	p.See(in["plainNotice.ask_max_both"])
	p.Tap("link", in["side.front"]+": "+in["wheel.enter.tyreMax"])
	p.Eventually("the field that is asked for", func() bool { return strings.Contains(p.Focused().Name, in["field.tyreMax"]) })
	p.Type(in["field.tyreMax"], "6")
	p.Type(in["field.rimMax"], "9")
	p.says(in["side.rear"], "Do not ride this tyre under this load")
	p.says(in["side.rear"], "30 mm tyre would do")
	p.board()
	p.NotSee(in["act.set"])
	p.Shot("pressure-overloaded")
}

func TestStretchesAddUpAndComeBack(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	p.ground()
	p.Tap("button", in["ground.add"])
	p.says(in["side.rear"], "OLD") // a second stretch needs the lengths of both
	p.Type("Stretch 1: "+in["field.km"], "30")
	p.Type("Stretch 2: "+in["field.km"], "20")
	p.Choose("Stretch 2: "+in["ground.what"], in["kind.soft"])
	p.See("40 % of the way is soft")
	p.Type("Stretch 2: "+in["field.km"], "40")
	p.See("57 % of the way is soft")
	p.Axe()
	p.Shot("pressure-soft")
	p.Tap("button", "Take away stretch 2")
	p.NotSee("of the way is soft")
	p.Tap("button", in["ground.undo"])
	p.See("57 % of the way is soft")
}

func TestSofterFirmerAndWet(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	rear := in["side.rear"]
	plain := p.number(rear)
	p.Tap("button", in["button.softer"])
	softer := p.Changed(rear, plain)
	p.Tap("button", in["button.firmer"])
	p.Changed(rear, softer)
	p.Tap("button", in["button.wet"])
	if wet := p.Changed(rear, plain); wet >= plain {
		t.Errorf("wet ground shows %s; before it was %s", wet, plain)
	}
	p.See(in["firm.wet"])
}

func TestUnitsChangedInSettingsKeepWhatWasMeant(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	p.Type(in["field.now.front"], "2,15")
	p.Tap("link", in["place.settings"])
	p.Choose(in["settings.units"], in["settings.unit.psi"])
	p.Tap("link", in["place.pressure"])
	p.Eventually("the reading in psi", func() bool { return p.Value(in["field.now.front"]) == "31.2" })
	p.says(in["side.front"], "psi")
}

func TestTheDemoOpensOnAnInventedEvent(t *testing.T) {
	server := StartServer(t, "-demo")
	p := OpenBrowser(t).Open(server.URL())
	in := words(t)
	p.See(in["head.demo"])
	p.number(in["side.front"])
	p.says(in["side.rear"], "Let out")
	p.why(in["side.rear"])
	p.See(in["why.custom"])
	p.Axe()
	p.shut()
	p.Shot("demo")
	p.installed()
	p.saved("pressure")
	server.Stop()
	p.Allow(offline)
	p.Reload()
	p.See(in["head.demo"])
	p.number(in["side.front"])
}
