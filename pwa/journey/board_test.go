package journey

import (
	"fmt"
	"strings"
	"testing"
)

// setUp opens the page with all that is known of bike, wheels and gauge.
func (p *Page) setUp() {
	p.t.Helper()
	p.Go("pressure/setup")
	p.Find("heading", words(p.t)["part.tyres"])
}

// board goes back to the cards.
func (p *Page) board() {
	p.t.Helper()
	p.Go("pressure")
	p.button(words(p.t)["part.ground"])
}

// air opens the sheet with the air at home and at the start, by the place where one stands.
func (p *Page) air() {
	p.t.Helper()
	in := words(p.t)
	place := in["place.set"]
	if Eval[bool](p, fmt.Sprintf(`document.querySelector("[aria-pressed=true] strong").textContent === %q`, in["place.ride"])) {
		place = in["place.ride"]
	}
	p.tap(p.button(place))
	p.Find("heading", in["place.sheet"])
}

// ground opens the sheet of today's stretches.
func (p *Page) ground() {
	p.t.Helper()
	p.tap(p.button(words(p.t)["part.ground"]))
}

// bikes opens what stands behind the bike's name.
func (p *Page) bikes() {
	p.t.Helper()
	p.board()
	in := words(p.t)
	var found Node
	p.Eventually("the bike's name to press", func() bool {
		for _, node := range p.Tree() {
			if node.Role == "button" && strings.HasSuffix(node.Name, strings.TrimPrefix(in["bikes.open"], "{name}")) {
				found = node
				return true
			}
		}
		return false
	})
	p.tap(found)
	p.Find("heading", in["bikes.title"])
}

// why opens the reasons of a wheel, behind its number.
func (p *Page) why(side string) {
	p.t.Helper()
	name := fill(words(p.t)["part.whyOf"], "side", side)
	var found Node
	p.Eventually("a number to press for "+name, func() bool {
		for _, node := range p.Tree() {
			if node.Role == "button" && strings.HasSuffix(node.Name, name) {
				found = node
				return true
			}
		}
		return false
	})
	p.tap(found)
	p.Find("heading", name)
}

// shut closes the open sheet.
func (p *Page) shut() {
	p.t.Helper()
	p.Tap("button", words(p.t)["sheet.done"])
}

// high is how tall the page is, and how low the daily use reaches, in CSS pixels.
func (p *Page) high() (page, daily float64) {
	p.t.Helper()
	page = Eval[float64](p, `document.documentElement.scrollHeight`)
	return page, Eval[float64](p, `document.querySelector("rs-set-bar").getBoundingClientRect().bottom + scrollY`)
}

// fitsWithLargeLetters: both numbers and both actions are on the first screen.
func (p *Page) fitsWithLargeLetters() {
	p.t.Helper()
	p.ShotNow("board-large")
	p.wide("pressure with letters twice as large")
	low := Eval[float64](p, `Math.max(...[...document.querySelectorAll("rs-wheel-card .deed")].map((each) => each.getBoundingClientRect().bottom))`)
	p.t.Logf("with letters twice as large the lower action ends at %.0f px", low)
	if low > 844 { // a phone whose own letters are that large lets the bar go with the page
		p.t.Errorf("with letters twice as large the lower action ends at %.0f px", low)
	}
}

// At a start line: one height of a phone holds the daily use, with little on the page, on its side and with large letters too.
func TestTheDailyUseFitsOnePhone(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	p.button(in["install.dismiss"]) // the hint to install is still on the page
	p.Large(func() { p.fitsWithLargeLetters() })
	p.Tap("button", in["install.dismiss"])
	for _, size := range []Size{Phone, {"320x800", 320, 800, 2, true}, {"844x390", 844, 390, 2, true}, Desk} {
		p.Resize(size)
		p.Axe()
		p.wide("pressure at " + size.Name)
		if over := Eval[float64](p, `Math.max(...[...document.querySelectorAll("rs-wheel-card")].map((card) => card.querySelector(".reads .unit").getBoundingClientRect().right - card.querySelector("rs-reading-box").getBoundingClientRect().left))`); over > 0 {
			t.Errorf("at %s the number's unit lies %.0f px under the gauge's box", size.Name, over)
		}
		page, daily := p.high()
		bar := Eval[float64](p, `(() => { const foot = document.querySelector(".foot"); return getComputedStyle(foot).position === "sticky" && innerWidth < 900 ? foot.offsetHeight : 0; })()`)
		t.Logf("at %s the page is %.0f px high, the daily use ends at %.0f, the bar takes %.0f", size.Name, page, daily, bar)
		if size == Phone && page > 1000 {
			t.Errorf("at %s the page is %.0f px high", size.Name, page)
		}
		if size == Phone && daily > 844-bar {
			t.Errorf("the daily use ends at %.0f px, under the bar of %.0f", daily, bar)
		}
		p.ShotNow("board-" + size.Name)
	}
	if count := Eval[int](p, `document.querySelectorAll("*").length`); count > 700 {
		t.Errorf("%d elements are on the page", count)
	} else {
		t.Logf("%d elements", count)
	}
	p.Resize(Phone)
	p.ground()
	p.ShotNow("board-ground")
	p.shut()
	p.why(in["side.front"])
	p.ShotNow("board-why")
	p.shut()
	p.tap(p.Find(fields, in["field.now.front"]))
	p.ShotNow("board-keys")
	p.Axe()
	for _, key := range []string{"3", "2", "psi"} {
		p.Tap("button", key)
	}
	p.says(in["side.front"], "you read 32 psi")
	p.Tap("button", in["keys.clear"])
	p.shut()
	p.setUp()
	p.ShotNow("board-setup")
}
