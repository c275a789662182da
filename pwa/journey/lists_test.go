package journey

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

var wheelsOfATeam = []deed{
	{id: "lt1", rec: "list tyre", kind: "tyre", ago: 40 * time.Hour, by: "Ana", set: members{"name": "Ridge 40", "label_mm": 40}},
	{id: "lw1", rec: "list wheel 1", kind: "wheel", ago: 40 * time.Hour, by: "Ana", set: members{"name": "Ochre, \"front\"", "inner_mm": 22.5, "tyre": hexOf("list tyre"), "note": "first line\nsecond line"}},
	{id: "lw2", rec: "list wheel 2", kind: "wheel", ago: 40 * time.Hour, by: "Ana", set: members{"name": "=Umber", "inner_mm": 23, "retired": true}},
	{id: "lc1", rec: "Cleo", kind: "person", ago: 40 * time.Hour, by: "Ben", set: members{"name": "Cleo", "mass_kg": 61.25}},
}

// file waits for the file that would be downloaded, and gives its text.
func (p *Page) file(holding string) string {
	p.t.Helper()
	var text string
	p.Eventually("a file with "+holding, func() bool {
		text = Eval[string](p, `globalThis.kept === undefined ? "" : kept.arrayBuffer().then((bytes) => new TextDecoder("utf-8", {ignoreBOM: true}).decode(bytes))`)
		return strings.Contains(text, holding)
	})
	return text
}

// A list goes out with no signal, is edited in a spreadsheet, comes back with a row that is wrong, and is taken back.
func TestAListGoesOutAndComesBack(t *testing.T) {
	server := TeamServer(StartServer(t), wheelsOfATeam...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/settings", keepDownloads)
	p.See(in["sync.phase.even"])
	p.installed()
	server.Stop()
	p.Allow(offline)
	p.Go("wheels/lists")
	p.Find("heading", in["list.title"])
	p.Choose(in["list.which"], in["list.of.wheel"])
	p.Tap("button", in["list.save"])
	p.See("The list is saved as rimside-wheel-")
	out := p.file("Ridge 40")
	for _, part := range []string{"\uFEFFid,name,tyre,", `,"Ochre, ""front""",Ridge 40,`, ",'=Umber,", "\"first line\nsecond line\"", ",yes,", "\r\n"} {
		if !strings.Contains(out, part) {
			t.Errorf("the file does not hold %q: %s", part, out)
		}
	}
	p.Choose(in["list.decimal"], in["list.comma"])
	p.Tap("button", in["list.save"])
	if text := p.file("id;name;tyre;"); !strings.Contains(text, ";22,5;") {
		t.Errorf("no decimal comma in %s", text)
	}

	p.bringFile(in["list.bring"], "untouched.csv", out)
	p.See(fill(in["list.sum"], "fresh", "0", "changed", "0", "left", "0", "same", "2"))
	p.Tap("button", in["list.leave"])
	p.See(in["list.left"])

	edited := strings.Replace(out, ",'=Umber,", ",Umber,", 1) + ",Sienna;,,,250\r\n,Ivory,Ridge 40,tube,21,hooked\r\n"
	p.bringFile(in["list.bring"], "edited.csv", edited)
	p.See(fill(in["list.sum"], "fresh", "1", "changed", "1", "left", "1", "same", "1"))
	p.See("line 5, column inner_mm: 250 is too much: 10 to 110 mm")
	p.See("=Umber: name")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a list at " + size.Name)
	})
	p.Shot("list-preview")
	p.Tap("button", in["list.take"])
	p.See(fill(in["list.taken"], "fresh", "1", "changed", "1"))
	p.Tap("button", in["list.save"])
	if text := p.file("Ivory"); !strings.Contains(text, ";Umber;") || strings.Contains(text, "Sienna") {
		t.Errorf("what was taken is not as in the file: %s", text)
	}
	p.bringFile(in["list.bring"], "edited.csv", strings.Replace(edited, ",Umber,", ",Sepia,", 1))
	p.Tap("button", in["list.take"])
	p.See(fill(in["list.taken"], "fresh", "1", "changed", "1"))
	p.Tap("button", in["ground.undo"])
	p.See(in["list.undone"])
	server.Start()
	p.Online()
	p.Eventually("what stands on the server", func() bool {
		said := server.Export()
		return strings.Contains(said, `"name":"Sepia"`) && strings.Count(said, `"name":"Umber"`) == 2 && strings.Count(said, `"name":"Ivory"`) == 2 && strings.Count(said, `"deleted":true`) == 1
	})
}

func TestAListThatCannotBeReadIsToldSo(t *testing.T) {
	server := TeamServer(StartServer(t), wheelsOfATeam...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/settings", keepDownloads)
	p.See(in["sync.phase.even"])
	p.Go("wheels/lists")
	before := server.Export()
	p.bringFile(in["list.bring"], "latin.csv", "name\nM\xfcll\n")
	p.See(in["listFault.coded"])
	p.bringFile(in["list.bring"], "letter.csv", "dear friend,\n")
	p.See(fill(in["listFault.header"], "kind", in["recKind.bike"]))
	p.bringFile(in["list.bring"], "large.csv", "name\n"+strings.Repeat("x", 5<<20))
	p.See(fill(in["listFault.large"], "mb", "4"))
	p.bringFile(in["list.bring"], "hostile.csv", "__proto__,name,constructor\n1,Ochre,2\n3,\"never closed\n")
	p.See(fill(in["list.sum"], "fresh", "1", "changed", "0", "left", "1", "same", "0"))
	p.See(fill(in["list.unknown"], "columns", "__proto__, constructor"))
	p.Tap("button", in["list.leave"])
	if after := server.Export(); after != before {
		t.Errorf("something was written: %s", after)
	}
	// What Cleo weighs was typed on Ben's phone.
	p.Choose(in["list.which"], in["list.of.person"])
	p.Tap("button", in["list.save"])
	if text := p.file("Cleo"); strings.Contains(text, "61.25") {
		t.Errorf("another person's weight is in the file: %s", text)
	}
	for _, fold := range []string{in["list.columns"], in["list.rules"]} {
		p.Tap("DisclosureTriangle", fold)
	}
	p.See(fmt.Sprintf("%s: %s", in["recField.mass_kg"], "15 to 250 kg"))
	p.Axe()
	for _, small := range Eval[[]string](p, smallTargets) {
		t.Errorf("too small to press: %s", small)
	}
	p.Resize(Size{"320x640", 320, 640, 2, true})
	p.wide("lists at 320 px")
	Eval[string](p, "document.documentElement.style.fontSize = '200%'")
	p.wide("lists at 320 px with text twice as large")
	p.ShotNow("lists-twice")
}
