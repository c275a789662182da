package journey

import (
	"strings"
	"testing"
)

var places = []string{"pressure", "checks", "packing", "car", "wheels"}

func TestEveryPlaceByTouch(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	for _, place := range append(places[1:], "pressure") {
		title := in["place."+place]
		p.Tap("link", title)
		p.at(place)
		p.Eventually("the focus on the heading of "+title, func() bool { return p.Focused().Role == "heading" })
		heading := p.Focused().Name
		if got := Eval[string](p, "document.title"); !strings.HasPrefix(got, heading) {
			t.Errorf("in %s, headed %q, the window is called %q", place, heading, got)
		}
		if sentence, unbuilt := in["later."+place]; unbuilt && place != "pressure" {
			p.See(sentence)
		}
	}
	p.Tap("link", in["place.settings"])
	p.at("settings")
	p.Go("nowhere")
	p.at("pressure")
	if hash := Eval[string](p, "location.hash"); hash != "#/pressure" {
		t.Errorf("an unknown address stays as %s", hash)
	}
}

// at waits until the app says to those who listen that this place is the open one.
func (p *Page) at(place string) {
	p.t.Helper()
	p.Eventually("to be at "+place, func() bool {
		link := Eval[string](p, `document.querySelector("rs-shell a[aria-current=page]")?.hash ?? ""`)
		return link == "#/"+place
	})
}

func TestEveryPlaceIsAccessible(t *testing.T) {
	p, _ := Visit(t)
	for _, place := range append(places, "settings") {
		p.Go(place)
		p.at(place)
		p.EachLook(func(size Size, scheme string) {
			p.Axe()
			p.wide(place + " at " + size.Name)
		})
		p.Shot(place)
	}
}

// wide fails when the page can be scrolled sideways.
func (p *Page) wide(where string) {
	p.t.Helper()
	over := Eval[float64](p, "document.documentElement.scrollWidth - document.documentElement.clientWidth")
	if over <= 0 {
		return
	}
	reach := Eval[[]string](p, `(() => {
		const edge = document.documentElement.clientWidth;
		return [...document.querySelectorAll("body *")].filter((each) => each.getBoundingClientRect().right > edge + 0.5)
			.map((each) => each.tagName.toLowerCase() + "." + each.className + ": " + each.textContent.slice(0, 30)).slice(-4);
	})()`)
	p.t.Errorf("%s: the page is %.0f px wider than the screen: %q", where, over, reach)
}

func TestNarrowScreensAndLargeText(t *testing.T) {
	p, _ := Visit(t)
	for _, place := range append(places, "settings") {
		p.Go(place)
		p.at(place)
		p.Resize(Size{"320x640", 320, 640, 2, true})
		p.wide(place + " at 320 px")
		p.ShotNow(place + "-320")
		p.Resize(Phone)
		p.Large(func() {
			p.wide(place + " with text twice as large")
			p.ShotNow(place + "-twice")
		})
	}
}

// smallTargets lists what is meant to be pressed and is under 48 px high or wide. Links within a sentence are exempt.
const smallTargets = `[...document.querySelectorAll("button, summary, [role=button], .button, nav a, header a, label:has(input), select, input:not([type=radio], [type=checkbox])")]
	.filter((each) => each.checkVisibility())
	.map((each) => ({name: each.textContent || each.ariaLabel || each.tagName, box: each.getBoundingClientRect()}))
	.filter(({box}) => box.height < 47.9 || box.width < 47.9)
	.map(({name, box}) => name + " " + box.width + "x" + box.height)`

func TestTargetsAreLargeEnough(t *testing.T) {
	p, _ := Visit(t)
	p.Resize(SmallPhone)
	for _, place := range append(places, "settings") {
		p.Go(place)
		p.at(place)
		for _, small := range Eval[[]string](p, smallTargets) {
			t.Errorf("%s: too small to press: %s", place, small)
		}
	}
}
