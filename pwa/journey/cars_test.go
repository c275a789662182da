package journey

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// onServer waits until a server holds an op with this text in it.
func (p *Page) onServer(s *Server, text string) {
	p.t.Helper()
	p.Eventually("the server to hold "+text, func() bool { return strings.Contains(s.Export(), text) })
}

// unfold opens what is folded under these titles.
func (p *Page) unfold(titles ...string) {
	p.t.Helper()
	for _, title := range titles {
		p.Eventually("a fold called "+title, func() bool {
			return Eval[bool](p, fmt.Sprintf(`(() => {
				const fold = [...document.querySelectorAll("details")].find((each) => each.querySelector("summary").textContent === %q);
				if (fold !== undefined && !fold.open) fold.querySelector("summary").click();
				return fold?.open ?? false;
			})()`, title))
		})
	}
}

// holds waits until a field shows a value.
func (p *Page) holds(label, value string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("%q to hold %q", label, value), func() bool { return p.Value(label) == value })
}

// edit types into a field and leaves it, which is when an edit is made.
func (p *Page) edit(label, text string) {
	p.t.Helper()
	p.Type(label, text)
	p.Key(kb.Tab)
}

// clashes looks how many questions there are to decide.
func (p *Page) clashes(in map[string]string, count int) {
	p.t.Helper()
	p.Go("settings/clashes")
	p.Eventually(fmt.Sprintf("%d questions to decide", count), func() bool {
		groups := 0
		for _, node := range p.Tree() {
			if node.Role == "group" && strings.Contains(node.Name, "which is right") {
				groups++
			}
		}
		text := p.Text()
		return groups == count && (count > 0 || strings.Contains(text, in["clash.none"]) || strings.Contains(text, in["clash.done"]))
	})
}

// Two cars that never meet, one name for both, three phones: everybody edits apart, and one phone carries.
func TestTwoCarsAndThreePhones(t *testing.T) {
	in := words(t)
	carA, carB := StartServer(t), StartServer(t)
	road := Forward(t, carA, carB)
	browser := OpenBrowser(t)
	open := func() *Page {
		p := browser.OpenApart(road.URL + "/")
		p.Allow(offline, "ERR_EMPTY_RESPONSE")
		return p
	}

	first := open()
	first.firstAnswers()
	first.setUp()
	first.edit(in["field.measured"], "51")
	first.onServer(carA, `"measured_mm":51`)
	second, third := open(), open()
	phones := []*Page{first, second, third}
	for _, p := range phones {
		p.number(in["side.front"]) // the others open the bike that the first one made
		p.setUp()
		p.holds(in["field.measured"], "51")
	}
	first.holds(in["field.rider"], "72")
	middle := fill(in["hint.veiled"], "weight", in["recMass.middle"])
	for _, p := range []*Page{second, third} { // what the first one's rider weighs counts there, and is not told
		p.holds(in["field.rider"], "")
		p.See(middle)
		p.NotSee("72 kg")
	}

	road.SwitchTo(-1) // nobody is in reach
	first.edit(in["field.rider"], "80")
	second.edit(in["field.rider"], "75")
	third.edit(in["field.measured"], "52.5")
	first.See("not yet on the server")

	road.SwitchTo(1) // the second car, which knows nothing yet
	second.Online()
	second.onServer(carB, `"mass_kg":75`)
	third.Online()
	third.onServer(carB, `"measured_mm":52.5`)
	second.Online() // carries what the third brought
	second.holds(in["field.measured"], "52.5")

	road.SwitchTo(0) // back at the first car
	first.Online()
	first.onServer(carA, `"mass_kg":80`)
	second.Online()
	second.onServer(carA, `"measured_mm":52.5`)
	third.Online()
	first.Online()
	for _, p := range phones {
		p.holds(in["field.measured"], "52.5")
		p.clashes(in, 1)
	}

	if text := third.Text(); strings.Contains(text, "75 kg") || strings.Contains(text, "80 kg") {
		t.Errorf("another phone is told what the rider weighs: %s", text)
	}
	first.tap(first.button("75 kg"))
	first.clashes(in, 0)
	road.SwitchTo(1)
	first.Eventually("the decision at the second car", func() bool {
		first.Online()
		return strings.Count(carB.Export(), `"mass_kg":75`) == 2
	})
	first.See(in["status.saved"])
	for _, p := range phones {
		p.Online()
		p.Online()
		p.clashes(in, 0)
		p.Go("pressure")
		p.setUp()
	}
	first.holds(in["field.rider"], "75")
	third.See(middle)
	road.SwitchTo(0)
	first.Online()
	second.Online()
	first.Eventually("both cars to hold the same", func() bool { return idsOf(t, carA.ops(t)) == idsOf(t, carB.ops(t)) })
}
