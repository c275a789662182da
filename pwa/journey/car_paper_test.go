package journey

import (
	"encoding/base64"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// sheets are the papers that printers hold, in inches.
var sheets = map[string][2]float64{"a4": {8.27, 11.69}, "letter": {8.5, 11}}

// printed prints the page on both papers and counts the pages of each. The files are kept beside the pictures.
func (p *Page) printed(name string) map[string]int {
	p.t.Helper()
	counts := map[string]int{}
	for sheet, size := range sheets {
		out, err := chromedp.Call(p.ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: size[0], PaperHeight: size[1]})
		if err != nil {
			p.t.Fatal(err)
		}
		data, err := base64.StdEncoding.DecodeString(string(out.Data))
		if err != nil {
			data = []byte(out.Data)
		}
		counts[sheet] = len(pdfPage.FindAll(data, -1))
		if folder := os.Getenv("RIMSIDE_SHOTS"); folder != "" {
			if err := os.WriteFile(filepath.Join(folder, name+"-"+sheet+".pdf"), data, 0o644); err != nil {
				p.t.Fatal(err)
			}
		}
	}
	return counts
}

// onOnePage fails where a paper takes more than one page.
func (p *Page) onOnePage(name string) {
	p.t.Helper()
	for sheet, count := range p.printed(name) {
		if count != 1 {
			p.t.Errorf("%s takes %d pages of %s", name, count, sheet)
		}
	}
}

// fullCar is a team's day: 24 riders, 20 spare wheels.
func fullCar() []deed {
	var all []deed
	add := func(kind, name string, set members) string {
		rec := fmt.Sprintf("%-8.8s%08d", name, 7919*len(all)) // a tag's code is made of its end
		all = append(all, deed{id: name, rec: rec, kind: kind, set: set})
		return hexOf(rec)
	}
	wheel := func(name, side string, label int) string {
		tyre := add("tyre", "t"+name, members{"label_mm": label, "sidewall": "glove", "max_kpa": 500, "hookless_ok": "yes"})
		return add("wheel", "w"+name, members{
			"name": name, "side": side, "tyre": tyre, "setup": "tubeless", "inner_mm": 23, "profile": "hooked", "max_kpa": 500, "brake": "disc", "bead_seat_mm": 622,
			"axle_mm": 12, "hub_width_mm": map[string]int{"front": 100, "rear": 142}[side], "rotor_mm": 160, "speeds": 12, "max_cog": 34,
		})
	}
	for n := range 24 {
		name := fmt.Sprintf("n%d", n)
		person := add("person", "p"+name, members{"name": fmt.Sprintf("Rider of the long name %d", n), "number": fmt.Sprint(101 + n), "mass_kg": 58 + n})
		add("bike", "b"+name, members{
			"name": fmt.Sprintf("Road bike %d", n), "number": fmt.Sprint(101 + n), "rider": person, "front": wheel("f"+name, "front", 30+n%3), "rear": wheel("r"+name, "rear", 30+n%3),
			"mass_kg": 8, "brake": "disc", "speeds": 12, "max_cog": 36, "room_front_mm": 45, "room_rear_mm": 45,
		})
	}
	for n := range 20 {
		side := []string{"front", "rear"}[n%2]
		name := fmt.Sprintf("%s %d", map[string]string{"front": "Front", "rear": "Rear"}[side], 1+n/2)
		add("spare", "s"+name, members{"name": name, "wheel": wheel("s"+name, side, 30+n%3), "place": "roof, left"})
	}
	return all
}

// What goes on paper before the start: the whole morning of a full car on one page, tags, and a start card.
func TestWhatTheCarPrints(t *testing.T) {
	server := TeamServer(StartServer(t), fullCar()...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/car/morning")
	p.See("124 · Rider of the long name 23")
	p.onOnePage("car-morning-paper")
	p.Go("car/tags")
	p.See(in["tags.print"])
	p.Eventually("a square code on each tag", func() bool {
		return Eval[bool](p, `document.querySelectorAll(".tags > li").length === 20 && [...document.querySelectorAll(".tags > li")].every((tag) => tag.querySelector("svg.qr path") !== null)`)
	})
	p.onOnePage("car-tags-paper")
	p.Go("car/load")
	p.See(fill(in["load.exact"], "n", "48", "of", "48")) // proved at once: nobody is left out
	p.onOnePage("car-load-paper")
	p.Go("car/spares")
	p.See("Rear 10")
	p.onOnePage("car-spares-paper")
}
