package journey

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

func TestADraftTypedInOneTabShowsInTheOther(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	in := words(t)
	one := browser.Open(server.URL())
	other := browser.Open(server.URL())
	one.Type(in["field.rider"], "72.5")
	other.Eventually("what the other tab typed", func() bool { return other.Value(in["field.rider"]) == "72.5" })
	other.Tap("link", in["place.settings"])
	other.Choose(in["settings.theme"], in["settings.theme.night"])
	one.Eventually("the look chosen in the other tab", func() bool { return paper(one) == night })
}

func TestTheKeyboardReachesTheBar(t *testing.T) {
	p, _ := Visit(t)
	p.Resize(Desk)
	in := words(t)
	p.at("pressure")
	for range 60 {
		p.Key(kb.Tab)
		if focused := p.Focused(); focused.Role == "link" && focused.Name == in["place.packing"] {
			break
		}
	}
	if focused := p.Focused(); focused.Name != in["place.packing"] {
		t.Fatalf("the Tab key never came to %q; it ended at %s %q", in["place.packing"], focused.Role, focused.Name)
	}
	if outline := Eval[string](p, "getComputedStyle(document.activeElement).outlineStyle"); outline != "solid" {
		t.Errorf("the focus is not seen: outline %s", outline)
	}
	p.ShotNow("keyboard")
	p.Key(kb.Enter)
	p.Find("heading", in["place.packing"])
	p.Key(kb.Tab, chromedp.Modifier(8)) // shift: back from the heading
	if focused := p.Focused(); focused.Role != "link" {
		t.Errorf("before the heading the keyboard finds %s %q, not a place", focused.Role, focused.Name)
	}
}

func TestForcedColours(t *testing.T) {
	p, _ := Visit(t)
	for _, place := range []string{"pressure", "checks", "settings"} {
		p.Go(place)
		p.at(place)
		for _, scheme := range schemes {
			p.Media("forced-colors", "active", "prefers-color-scheme", scheme)
			p.Axe()
			p.ShotNow(place + "-forced-" + scheme)
			mark := Eval[string](p, `(() => { const bar = document.querySelector("rs-bar [aria-current=page]");
				return bar === null ? "none" : getComputedStyle(bar, "::before").backgroundColor })()`)
			if place != "settings" && (mark == "none" || mark == "rgba(0, 0, 0, 0)") {
				t.Errorf("%s, %s: the open place has no mark: %s", place, scheme, mark)
			}
		}
	}
}
