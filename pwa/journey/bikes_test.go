package journey

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/chromedp"
)

// Several bikes in one book: copied, named, picked, each with what was typed on it.
func TestSeveralBikes(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	p := OpenBrowser(t).Open(server.URL())
	p.firstAnswers()
	p.setUp()
	p.edit(in["field.name"], "Ochre")
	p.onServer(server, `"name":"Ochre"`)
	before := p.number(in["side.front"])

	p.bikes()
	p.Tap("button", in["bikes.copy"])
	copied := fill(in["bikes.copied"], "name", "Ochre")
	p.Find("heading", copied)
	p.onServer(server, copied)
	p.setUp()
	p.edit(in["field.label"], "40")
	p.Changed(in["side.front"], before)
	p.onServer(server, `"label_mm":40`)
	p.Axe()

	p.bikes()
	p.Tap("button", "Ochre")
	p.Find("heading", "Ochre")
	p.setUp()
	p.holds(in["field.label"], "50")
	p.Eventually("the first bike's number again", func() bool { return p.number(in["side.front"]) == before })
	p.bikes()
	p.Tap("button", copied)
	p.Find("heading", copied)
	p.setUp()
	p.holds(in["field.label"], "40")
	if bikes := strings.Count(server.Export(), `"kind":"bike"`); bikes < 2 {
		t.Errorf("%d ops of bikes are on the server", bikes)
	}
	p.EachLook(func(size Size, _ string) { p.wide("two bikes at " + size.Name) })
	p.Shot("bikes")
}

// The day's ground: put in another order, by percent, kept by name, replaced, and taken back.
func TestGroundInOnesOwnOrder(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	p := OpenBrowser(t).Open(server.URL())
	p.firstAnswers()
	stretch := func(n string, label string) string { return fill(in["ground.stretch"], "n", n) + ": " + label }
	p.ground()
	p.Type(stretch("1", in["field.km"]), "10")
	p.Tap("button", in["ground.add"])
	p.Type(stretch("2", in["field.km"]), "30")
	p.Choose(stretch("2", in["ground.what"]), in["kind.walnut"])

	p.Tap("button", fill(in["ground.later"], "n", "1"))
	p.holds(stretch("1", in["field.km"]), "30")
	p.holds(stretch("2", in["field.km"]), "10")
	p.Choose(in["ground.by"], in["groundBy.share"])
	p.holds(stretch("1", in["field.part"]), "75")
	p.holds(stretch("2", in["field.part"]), "25")
	p.dragGrip(1, 0)
	p.holds(stretch("1", in["field.part"]), "25")

	p.unfold(in["ground.again"])
	p.Type(in["ground.name"], "Ridge day")
	p.Tap("button", in["ground.keep"])
	p.See(fill(in["ground.isKept"], "name", "Ridge day"))
	p.onServer(server, "Ridge day")
	p.Type(stretch("1", in["field.part"]), "60")
	p.Tap("button", "Ridge day")
	p.holds(stretch("1", in["field.part"]), "25")
	p.Tap("button", in["ground.undo"])
	p.holds(stretch("1", in["field.part"]), "60")
	p.Axe()
	p.EachLook(func(size Size, _ string) { p.wide("ground at " + size.Name) })
	p.Shot("ground")
}

// A friend gets a set-up as a file and opens it as a bike of their own.
func TestASetupForAFriend(t *testing.T) {
	in := words(t)
	mine, theirs := StartServer(t), StartServer(t)
	browser := OpenBrowser(t)
	p := browser.OpenApart(mine.URL(), keepDownloads)
	p.firstAnswers()
	p.setUp()
	p.edit(in["field.name"], "Ochre")
	p.onServer(mine, `"name":"Ochre"`)
	p.bikes()
	p.Tap("button", in["bikes.share"])
	var file string
	p.Eventually("the file", func() bool {
		file = Eval[string](p, `globalThis.kept === undefined ? "" : kept.text()`)
		return strings.Contains(file, "rimside_setup")
	})
	if strings.Contains(file, "mass_kg\":72") {
		t.Errorf("what the rider weighs is in the file: %s", file)
	}
	friend := browser.OpenApart(theirs.URL())
	friend.bringFile(in["bikes.bring"], "setup.json", file)
	friend.Find("heading", "Ochre")
	friend.onServer(theirs, `"label_mm":50`)
	friend.bikes()
	friend.bringFile(in["bikes.bring"], "letter.json", "dear friend")
	friend.See(in["bikes.notOne"])
	friend.Axe()
}

// keepDownloads plays a browser without a share sheet, and keeps what would be downloaded.
const keepDownloads = `
	Object.defineProperty(navigator, "canShare", {value: () => false});
	const make = URL.createObjectURL.bind(URL);
	URL.createObjectURL = (blob) => { globalThis.kept = blob; return make(blob); };`

// bringFile gives a file to the chooser with this label, as the phone's own would.
func (p *Page) bringFile(label, name, content string) {
	p.t.Helper()
	file := filepath.Join(p.t.TempDir(), name)
	if err := os.WriteFile(file, []byte(content), 0o600); err != nil {
		p.t.Fatal(err)
	}
	params := dom.SetFileInputFilesParams{Files: []string{file}, BackendNodeID: p.Find("button", label).backend}
	if _, err := chromedp.Call(p.ctx, dom.SetFileInputFiles, params); err != nil {
		p.t.Fatal(err)
	}
}

// dragGrip drags a stretch by its grip to where another one is.
func (p *Page) dragGrip(from, to int) {
	p.t.Helper()
	Eval[bool](p, `(() => {
		const all = [...document.querySelectorAll("rs-stretch")];
		const grip = all[`+written(from)+`].querySelector(".grip");
		const at = all[`+written(to)+`].getBoundingClientRect();
		const say = (type, y) => grip.dispatchEvent(new PointerEvent(type, {bubbles: true, pointerId: 1, clientX: 20, clientY: y, isPrimary: true}));
		const start = grip.getBoundingClientRect();
		grip.setPointerCapture = () => undefined; // a pointer that no hand moves cannot be captured
		say("pointerdown", start.top);
		say("pointermove", at.top + 5);
		return say("pointerup", at.top + 5);
	})()`)
}
