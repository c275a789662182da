package journey

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// aPressure is any amount of pressure in words, such as "2.15 bar", "31 psi" or "1.9–2.0 bar".
var aPressure = regexp.MustCompile(`\d[\d.,]*\s*(?:bar|psi|kPa)\b`)

// aRange is what a field may hold, which is said before anything is known of a tyre.
var aRange = regexp.MustCompile(`\d[\d.,]* to \d[\d.,]* (?:bar|psi|kPa)`)

// anAct is what is to be done to a tyre, with the amount.
var anAct = regexp.MustCompile(`(?:Let out|Add) (\d+\.\d+) (bar|psi)`)

// noSignal opens an installed app whose server is gone.
func noSignal(t *testing.T) *Page {
	t.Helper()
	server := StartServer(t)
	p := OpenBrowser(t).Open(server.URL())
	p.installed()
	p.Allow(offline)
	server.Stop()
	return p
}

// act waits until a reading has been taken in, and gives what is to be done to the wheel and by how much.
func (p *Page) act(side, read, words string) (amount float64) {
	p.t.Helper()
	p.says(side, "you read "+read)
	p.says(side, words)
	found := anAct.FindStringSubmatch(p.card(side))
	if found == nil {
		p.t.Fatalf("the %s card names no amount: %s", side, p.card(side))
	}
	return amountOf(p.t, found[1])
}

func amountOf(t testing.TB, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// near is a typed pressure at some distance from another.
func near(of, by float64) string { return strconv.FormatFloat(of+by, 'f', 2, 64) }

func sameBar(a, b float64) bool { return math.Abs(a-b) < 0.001 }

// A reading is a word: leave it, let out so much, add so much; and number, reading and amount add up on the card.
func TestAReadingAtTheStartLine(t *testing.T) {
	p := noSignal(t)
	in := words(t)
	front, label := in["side.front"], in["field.now.front"]
	p.firstAnswers()
	wanted := amountOf(t, p.number(front))

	p.Type(label, near(wanted, -0.02))
	p.says(front, "you read "+near(wanted, -0.02))
	p.says(front, in["act.leave"])
	p.Type(label, near(wanted, 0.30))
	if by := p.act(front, near(wanted, 0.30), "Let out"); !sameBar(by, 0.30) {
		t.Errorf("%s read, %.2f wanted: let out %.2f", near(wanted, 0.30), wanted, by)
	}
	p.Type(label, near(wanted, -0.30))
	if by := p.act(front, near(wanted, -0.30), "Add"); !sameBar(by, 0.30) {
		t.Errorf("%s read, %.2f wanted: add %.2f", near(wanted, -0.30), wanted, by)
	}
	p.NotSee(in["act.leave"])
}

// With letters twice as large, on the narrowest phone too, each number lies within its card.
func TestTheNumbersAreWholeWithLargeLetters(t *testing.T) {
	p := noSignal(t)
	p.firstAnswers()
	Eval[string](p, "document.documentElement.style.fontSize = '200%'")
	for _, width := range []int64{390, 320} {
		p.Resize(Size{"", width, 844, 2, true})
		p.Eventually("both numbers within their cards", func() bool {
			return Eval[int](p, `[...document.querySelectorAll("rs-wheel-card .number")].filter((each) => {
				const ends = document.createRange();
				ends.selectNodeContents(each);
				const [number, card] = [ends.getBoundingClientRect(), each.closest("section").getBoundingClientRect()];
				return each.checkVisibility() && number.width > 0 && number.left >= card.left && number.right <= card.right;
			}).length`) == 2
		})
	}
}

// What is typed is taken as it was meant, or stays with a reason below it; never as another number.
func TestAReadingIsTakenAsItWasMeant(t *testing.T) {
	p := noSignal(t)
	in := words(t)
	front, label := in["side.front"], in["field.now.front"]
	p.firstAnswers()
	for _, c := range []struct{ typed, read string }{
		{"2,1", "2,1"}, {"32 psi", "32 psi"}, {"210 kPa", "210 kPa"}, {"2.3 BAR", "2.3 BAR"}, // a reading keeps its unit
	} {
		p.Type(label, c.typed)
		p.says(front, "you read "+c.read)
		if stands := p.Value(label); stands != c.typed {
			t.Errorf("%q stands as %q", c.typed, stands)
		}
	}
	for _, c := range []struct{ typed, reason string }{
		{"abc", strings.Split(in["fault.number"], "{")[0]},
		{"2.1 kg", strings.Split(in["fault.unit"], "{")[0]},
		{"230", "From 0 to 20 bar."},
		{"1.234,5", in["fault.separator"]},
	} {
		p.Type(label, c.typed)
		p.See(c.reason)
		p.says(front, in["act.readAgain"])
		if stands := p.Value(label); stands != c.typed {
			t.Errorf("%q stands as %q", c.typed, stands)
		}
		if card := p.card(front); anAct.MatchString(card) || strings.Contains(card, in["act.leave"]) {
			t.Errorf("%q makes a deed: %s", c.typed, card)
		}
	}
	p.Type(label, "2,1")
	p.Eventually("a reading that holds", func() bool { return !strings.Contains(p.card(front), in["act.readAgain"]) })
}

// A limit holds where the tyre is set and at the hottest hour too, not at the start alone.
func TestALimitHoldsAllDay(t *testing.T) {
	p := noSignal(t)
	in := words(t)
	rear := in["side.rear"]
	p.firstAnswers()
	free := p.number(rear)
	p.setUp()
	p.Type(in["field.tyreMax"], near(amountOf(t, free), 0.05))
	p.board()
	p.air()
	p.Type(in["field.set.c"], "5")
	p.Type(in["field.set.m"], "0")
	p.See("5 °C · 0 m")
	even := p.number(rear)
	p.NotSee("Held back")

	p.Type(in["field.warmest.c"], "20")
	p.See(fill(in["notice.at_limit_warmest"], "whose", in["whose.tyre"], "limit", near(amountOf(t, free), 0.05)+" bar"))
	warm := p.Changed(rear, even)
	if warm >= even {
		t.Errorf("with a hot midday the rear is set to %s, before it %s", warm, even)
	}
	// What is pumped at 5 °C and sea level grows with the air's heat; at 20 °C it must still be under the marking.
	const air = 1.01325
	if top := (amountOf(t, warm)+air)*(20+273.15)/(5+273.15) - air; top > amountOf(t, free)+0.05 {
		t.Errorf("%s bar at 5 °C is %.3f bar at 20 °C, over the marking of %s", warm, top, near(amountOf(t, free), 0.05))
	}

	p.Type(in["field.warmest.c"], "")
	p.NotSee("Held back")
	p.Type(in["field.set.c"], "25")
	p.Type(in["field.ride.c"], "2")
	p.See(fill(in["notice.at_limit_set"], "whose", in["whose.tyre"], "limit", near(amountOf(t, free), 0.05)+" bar"))
	p.says(rear, near(amountOf(t, free), 0.05))
}

// Where a tyre cannot carry the load the number is blank, and no reading, weather or button brings one back.
func TestAStopStays(t *testing.T) {
	p := noSignal(t)
	in := words(t)
	p.Type(in["field.rider"], "122")
	p.Type(in["field.label"], "28")
	p.Choose(in["pick.setup"], in["setup.tube"])
	p.Choose(in["pick.profile"], in["profile.hooked"])
	p.Tap("button", in["first.go"])
	p.Tap("link", in["side.front"]+": "+in["wheel.enter.tyreMax"])
	p.Type(in["field.tyreMax"], "600 kPa")
	p.Type(in["field.rimMax"], "9")
	stopped := func(when string) {
		t.Helper()
		for _, side := range []string{in["side.front"], in["side.rear"]} {
			p.says(side, "Do not ride this tyre under this load")
			p.says(side, "30 mm tyre would do")
			p.says(side, in["wheel.none"])
			if card := p.card(side); bigNumber.MatchString(card) || anAct.MatchString(card) {
				t.Errorf("%s the %s card shows a number: %s", when, side, card)
			}
		}
	}
	stopped("at first")
	p.board()
	p.Tap("button", in["button.firmer"])
	p.See("1 step firmer")
	stopped("firmer")
	if !strings.Contains(p.card(in["side.front"]), "6.00 bar") {
		t.Errorf("the marking of 600 kPa is not told in bar: %s", p.card(in["side.front"]))
	}
	p.setUp()
	p.Type(in["field.label"], "32")
	p.number(in["side.rear"])
	p.NotSee("Do not ride this tyre")
}

// pressures are all the amounts of pressure that can be read on the page, folded or not, but for the fields' own ranges.
func (p *Page) pressures() []string {
	p.t.Helper()
	text := Eval[string](p, `(() => {
		const folds = [...document.querySelectorAll("main details:not([open])")];
		folds.forEach((each) => each.open = true);
		const text = document.querySelector("rs-shell").innerText;
		const spoken = [...document.querySelectorAll("[aria-label], title, [role=status]")].map((each) => each.ariaLabel ?? each.textContent).join("\n");
		folds.forEach((each) => each.open = false);
		return text + "\n" + spoken;
	})()`)
	return aPressure.FindAllString(aRange.ReplaceAllString(text, ""), -1)
}

// A pair that must not be ridden has no pressure anywhere: on no card, in no fold, on no curve and on no printed page.
func TestARefusedPairHasNoPressureInAnyFold(t *testing.T) {
	p := noSignal(t)
	in := words(t)
	p.firstAnswers()
	p.Eventually("pressures of a pair that fits", func() bool { return len(p.pressures()) > 0 })
	p.setUp()
	p.Type(in["field.tyreMax"], "5")
	p.Type(in["field.rimMax"], "5")
	p.Type(in["field.inner"], "25")
	p.Choose(in["pick.profile"], in["profile.hookless"])
	p.Choose(in["pick.hookless"], in["answerTo.yes"])
	p.Type(in["field.label"], "28")
	for _, side := range []string{in["side.front"], in["side.rear"]} {
		p.says(side, in["plainNotice.hookless_too_narrow"])
	}
	p.board()
	if found := p.pressures(); len(found) > 0 {
		t.Errorf("a refused pair shows %q", slices.Compact(found))
	}
	p.saved("pressure")
	for _, page := range []string{"pressure/card", "pressure/team"} {
		p.Go(page)
		p.See(in["wheel.none"])
		if found := p.pressures(); len(found) > 0 {
			t.Errorf("%s shows %q", page, found)
		}
		if number := regexp.MustCompile(`\b\d\.\d\d\b`).FindString(p.Text()); number != "" {
			t.Errorf("%s shows %s", page, number)
		}
	}
}
