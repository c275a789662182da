package journey

import (
	"encoding/base64"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// bikesOf are so many bikes with a rider each; every fifth has a straight rim edge and no maximum, so it gets no number.
func bikesOf(n int) []deed {
	var out []deed
	for i := range n {
		id := fmt.Sprintf("%02d", i+1)
		profile := "hooked"
		if i%5 == 4 {
			profile = "hookless"
		}
		out = append(out,
			deed{id: "r" + id, rec: "rider" + id, kind: "person", by: "Ana", set: members{"name": "Rider " + id, "mass_kg": 55 + i}},
			deed{id: "t" + id, rec: "tyre" + id, kind: "tyre", by: "Ana", set: members{"label_mm": 40, "sidewall": "cloth", "hookless_ok": "yes"}},
			deed{id: "w" + id, rec: "wheel" + id, kind: "wheel", by: "Ana", set: members{"tyre": hexOf("tyre" + id), "setup": "tubeless", "profile": profile, "inner_mm": 25}},
			// The first one was edited last, so it is the one that opens.
			deed{id: "b" + id, rec: "bike" + id, kind: "bike", by: "Ana", ago: time.Duration(i) * time.Minute, set: members{
				"name": "Bike " + id, "number": fmt.Sprint(100 + i), "rider": hexOf("rider" + id), "front": hexOf("wheel" + id), "rear": hexOf("wheel" + id)}})
	}
	return append(out, deed{id: "old", rec: "old", kind: "bike", by: "Ana", set: members{"name": "Shelved", "retired": true}})
}

// row is what the team list says of a bike, cell by cell.
func (p *Page) row(bike string) []string {
	p.t.Helper()
	return Eval[[]string](p, fmt.Sprintf(`[...document.querySelectorAll("table.team tbody tr")]
		.filter((row) => row.firstChild.textContent.startsWith(%q))
		.flatMap((row) => [...row.children, ...(row.matches(".explained") ? row.nextSibling.children : [])].map((cell) => cell.textContent))`, bike))
}

func TestTheTeamListTellsWhatEachBikesOwnScreenTells(t *testing.T) {
	server := TeamServer(StartServer(t), bikesOf(6)...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL())
	p.number(in["side.front"])
	p.air()
	p.Type(in["field.ride.c"], "5")
	p.Type(in["field.ride.m"], "1100")
	p.See("5 °C · 1100 m")
	p.shut()
	p.installed()
	server.Stop()
	p.Allow(offline)
	p.bikes()
	p.Tap("link", in["print.team"])
	p.See("6 bikes")
	p.See("For 5 °C at 1100 m")
	p.See(in["kind.patched"])
	p.NotSee("Shelved")
	row := p.row("Bike 03")
	if len(row) != 4 || row[1] != "Rider 03" || !bigNumber.MatchString(row[2]) || !bigNumber.MatchString(row[3]) {
		t.Fatalf("the list says of bike 3: %q", row)
	}
	if stopped := p.row("Bike 05"); len(stopped) != 5 || stopped[3] != in["wheel.none"] || !strings.Contains(stopped[4], "maximum") {
		t.Errorf("the list says of a bike without its maxima: %q", stopped)
	}
	p.Axe()
	p.Shot("team")
	p.Tap("DisclosureTriangle", in["team.choose"])
	p.fits("the choice of bikes")
	p.Tap("checkbox", "Bike 05 · 104, Rider 05")
	p.See("5 bikes")
	p.allSaved()
	p.Reload()
	p.See("5 bikes")
	p.tap(p.inside("navigation", in["print.back"], "link", in["place.pressure"]))
	p.bikes()
	p.Tap("button", "Bike 03 · 102")
	p.Find("heading", "Bike 03")
	for i, side := range []string{in["side.front"], in["side.rear"]} {
		p.says(side, row[2+i])
	}
}

func TestTheTeamListFillsOnePage(t *testing.T) {
	server := TeamServer(StartServer(t), bikesOf(30)...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL())
	p.button("Bike") // one of them is open; whether it has a number is not told
	p.Media("prefers-color-scheme", "dark")
	p.Go("pressure/team")
	p.See("30 bikes")
	Eval[bool](p, "(globalThis.print = () => (globalThis.printed = true)) !== undefined")
	p.Tap("button", in["print.button"])
	if !Eval[bool](p, "globalThis.printed === true") {
		t.Error("the button prints nothing")
	}
	p.paper(in, "team-paper", 30)
	if pages := p.pdf("team"); pages != 1 {
		t.Errorf("30 bikes fill %d pages", pages)
	}
}

func TestTheStartCard(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.Go("pressure/card")
	p.See(in["print.none"])
	p.Axe()
	p.Go("pressure")
	p.firstAnswers()
	p.air()
	p.Type(in["field.ride.c"], "5")
	p.See("5 °C")
	p.shut()
	front, rear := p.number(in["side.front"]), p.number(in["side.rear"])
	p.bikes()
	p.Tap("link", in["print.card"])
	p.See(in["card.else"])
	card := Eval[string](p, `document.querySelector(".start-card").innerText`)
	for _, wanted := range []string{front, rear, "10 °C colder", "500 m higher", "add", "never below", "peas", "For 5 °C"} {
		if !strings.Contains(card, wanted) {
			t.Errorf("the card does not say %q: %s", wanted, card)
		}
	}
	p.Axe()
	p.fits("the start card")
	p.Shot("card")
	p.paper(in, "card-paper", 0)
	if pages := p.pdf("card"); pages != 1 {
		t.Errorf("the card takes %d pages", pages)
	}
	size := Eval[[]float64](p, `(() => { const box = document.querySelector(".start-card").getBoundingClientRect(); return [box.width, box.height]; })()`)
	t.Logf("the card on the screen is %v px", size)
	p.tap(p.inside("navigation", in["print.back"], "link", in["place.pressure"]))
	p.number(in["side.front"])
}

// fits looks at a page on small screens, with large text and in forced colours.
func (p *Page) fits(where string) {
	p.t.Helper()
	p.Resize(SmallPhone)
	for _, small := range Eval[[]string](p, smallTargets) {
		p.t.Errorf("%s: too small to press: %s", where, small)
	}
	p.Resize(Size{"320x640", 320, 640, 2, true})
	p.wide(where + " at 320 px")
	p.Resize(Phone)
	Eval[string](p, "document.documentElement.style.fontSize = '200%'")
	p.wide(where + " with text twice as large")
	Eval[string](p, "document.documentElement.style.fontSize = ''")
	p.Media("forced-colors", "active")
	p.Axe()
	p.Media("forced-colors", "none")
}

// paper looks at the page as it would be printed: no bars, black on white, also by night.
func (p *Page) paper(in map[string]string, shot string, rows int) {
	p.t.Helper()
	if _, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		p.t.Fatal(err)
	}
	for _, gone := range []string{in["place.car"], in["team.choose"], in["status.saved"]} {
		if strings.Contains(p.Text(), gone) {
			p.t.Errorf("on paper one reads %q", gone)
		}
	}
	if colours := Eval[[]string](p, `[getComputedStyle(document.documentElement).backgroundColor, getComputedStyle(document.documentElement).color]`); colours[0] != "rgb(255, 255, 255)" || colours[1] != "rgb(0, 0, 0)" {
		p.t.Errorf("on paper the colours are %v", colours)
	}
	if found := Eval[int](p, `document.querySelectorAll("table.team tbody th").length`); found != rows {
		p.t.Errorf("on paper there are %d bikes, not %d", found, rows)
	}
	p.ShotNow(shot)
	p.Media("prefers-color-scheme", "light")
}

var pdfPage = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

// pdf prints on A4 and counts the pages.
func (p *Page) pdf(name string) int {
	p.t.Helper()
	printed, err := chromedp.Call(p.ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: 8.27, PaperHeight: 11.69})
	if err != nil {
		p.t.Fatal(err)
	}
	data, err := base64.StdEncoding.DecodeString(string(printed.Data))
	if err != nil {
		data = []byte(printed.Data)
	}
	if folder := os.Getenv("RIMSIDE_SHOTS"); folder != "" {
		if err := os.WriteFile(filepath.Join(folder, name+".pdf"), data, 0o644); err != nil {
			p.t.Fatal(err)
		}
	}
	return len(pdfPage.FindAll(data, -1))
}
