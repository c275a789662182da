package journey

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// nasty are names that would do harm if they were ever taken for more than text.
var nasty = []deed{
	{id: "n1", rec: "evil person", kind: "person", ago: time.Hour, by: "Ana", set: members{"name": `<script>hurt()</script>Pia`}},
	{id: "n2", rec: "evil bike", kind: "bike", ago: time.Hour, by: "Ana", set: members{"name": `<img src=x onerror=hurt()>`, "rider": hexOf("evil person")}},
	{id: "n3", rec: "evil wheel", kind: "wheel", ago: time.Hour, by: "Ana", set: members{"name": `"><svg onload=hurt()>`}},
	{id: "n4", rec: "evil tyre", kind: "tyre", ago: time.Hour, by: "Ana", set: members{"name": `<iframe srcdoc="<script>parent.hurt()</script>">`, "note": `<a href="javascript:hurt()">`}},
	{id: "n5", rec: "evil pump", kind: "pump", ago: time.Hour, by: "Ana", set: members{"name": `javascript:hurt()//<b>`}},
	{id: "n6", rec: "evil phone", kind: "device", ago: time.Hour, by: "Ana", set: members{"label": `<img src=x onerror=hurt()>`}},
}

func TestABookFullOfScriptsIsShownAsText(t *testing.T) {
	server := TeamServer(StartServer(t), nasty...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/settings", "globalThis.hurt = () => { globalThis.hurts = true; };")
	p.See(in["sync.phase.even"])
	tags := []string{"<script>hurt()", "<img src=x", `"><svg onload`, "<iframe srcdoc", "javascript:hurt()"}
	pages := map[string][]string{
		"settings/phones":  {"<img src=x onerror=hurt()>"},
		"settings/records": tags,
		"settings":         nil,
		"wheels":           tags,
		"pressure":         {"<img src=x"},
		"settings/history/" + hexOf("evil phone"): {"<img src=x onerror=hurt()>"},
		"settings/history/" + hexOf("evil tyre"):  {"<iframe srcdoc", `<a href="javascript:hurt()">`},
		"settings/history/" + hexOf("evil bike"):  {"<img src=x", "<script>hurt()"},
	}
	for page, texts := range pages {
		p.Go(page)
		for _, text := range texts {
			p.seeOrRead(text)
		}
		p.harmless(page)
	}
	p.Go("settings")
	p.Eventually("who uses the phone to be offered as text", func() bool {
		return strings.Contains(strings.Join(p.options(in["me.who"]), "\n"), "<script>hurt()</script>Pia")
	})
	p.Go("settings/phones")
	p.Tap("DisclosureTriangle", fill(in["phones.changeOf"], "name", "<img src=x onerror=hurt()>"))
	p.Tap("button", in["phones.shutOut"])
	p.See("turns <img src=x onerror=hurt()> away at once")
	p.Tap("button", in["phones.forEver"])
	p.See(fill(in["phones.isOut"], "name", "<img src=x onerror=hurt()>"))
	p.harmless("phones after one was shut out")
}

// seeOrRead waits until a text stands on the page, in a field or in a list, folded away or not.
func (p *Page) seeOrRead(text string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("to find %q as text", text), func() bool {
		return strings.Contains(Eval[string](p, `document.body.textContent + [...document.querySelectorAll("input, textarea")].map((each) => each.value).join("\n")`), text)
	})
}

// harmless fails when a text of the book has become part of the page.
func (p *Page) harmless(where string) {
	p.t.Helper()
	found := Eval[string](p, `[...document.querySelectorAll("img[src=x], iframe, [onerror], [onload], [srcdoc], a[href^='javascript:'], main script")].map((each) => each.outerHTML).join("\n")`)
	if found != "" || Eval[bool](p, "globalThis.hurts === true") {
		p.t.Errorf("on %s a text of the book became part of the page: %s", where, found)
	}
}
