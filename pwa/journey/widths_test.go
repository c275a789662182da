package journey

import (
	"fmt"
	"strings"
	"testing"
)

// width is the line of the table for a printed width, with the reasons below it.
func (p *Page) width(mm int) string {
	p.t.Helper()
	return Eval[string](p, fmt.Sprintf(`(() => {
		const row = [...document.querySelectorAll("tbody tr")].find((each) => each.querySelector("th")?.innerText.startsWith("%d mm"));
		const next = row?.nextElementSibling;
		const why = next !== null && next?.querySelector("th") === null ? next.innerText : "";
		return [...row?.children ?? []].map((each) => each.innerText).join(" | ") + " " + why;
	})()`, mm))
}

func (p *Page) widthSays(mm int, text string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("%d mm to say %q, it says %q", mm, text, p.width(mm)), func() bool { return strings.Contains(p.width(mm), text) })
}

func TestWhatOtherWidthsWouldAsk(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	front, rear := p.number(in["side.front"]), p.number(in["side.rear"])
	p.setUp()
	p.Tap("DisclosureTriangle", in["widths.title"])
	p.Eventually("the mounted width", func() bool { return strings.Contains(p.width(50), front+" | "+rear) })
	p.widthSays(63, "too wide")
	if wide, narrow := p.width(54), p.width(45); !(wide[len("54 mm | "):] < narrow[len("45 mm | "):]) {
		t.Errorf("wider asks for more: %q, %q", wide, narrow)
	}
	p.See(in["widths.sidewall"])
	p.See(in["widths.room"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("other widths at " + size.Name)
	})
	p.Shot("widths")

	before := p.width(54)
	p.Type(in["field.rider"], "95")
	p.Eventually("the other widths under another rider", func() bool { now := p.width(54); return strings.HasPrefix(now, "54 mm") && now != before })
}

func TestOtherWidthsKeepTheHooklessRules(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.Type(in["field.rider"], "72")
	p.Type(in["field.label"], "32")
	p.Type(in["field.inner"], "25")
	p.Choose(in["pick.setup"], in["setup.tubeless"])
	p.Choose(in["pick.profile"], in["profile.hookless"])
	p.Choose(in["pick.hookless"], in["answerTo.yes"])
	p.Type(in["field.tyreMax"], "5")
	p.Type(in["field.rimMax"], "4.5")
	p.Tap("button", in["first.go"])
	p.number(in["side.front"])
	p.setUp()
	p.Tap("DisclosureTriangle", in["widths.title"])
	p.widthSays(28, in["widths.none"])
	p.widthSays(28, in["plainNotice.hookless_too_narrow"])
	p.widthSays(40, in["plainNotice.hookless_no_table"])
	p.See(in["widths.hookless"])
	p.Shot("widths-hookless")
}
