package journey

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// fitShop is a bike whose wheels ask for every answer of the fitting guide. Well and edge are measured on the front wheel.
func fitShop() []deed {
	old := 40 * 24 * time.Hour
	day := time.Now().AddDate(0, 0, -60).Format(time.DateOnly)
	tyre := func(name string, set members) deed {
		set["name"] = name
		return deed{id: "f " + name, rec: name, kind: "tyre", ago: old, by: "Ana", set: set}
	}
	wheel := func(name string, set members) deed {
		set["name"] = name
		return deed{id: "f " + name, rec: name, kind: "wheel", ago: old, by: "Ana", set: set}
	}
	measured := time.Now().AddDate(0, 0, -20).UnixMilli()
	return []deed{
		tyre("Ochre 40s", members{"label_mm": 40, "fitted": day, "sidewall": "glove", "measured_mm": 41.5, "measured_at": measured, "max_kpa": 500}),
		tyre("Umber 40s", members{"label_mm": 40, "sidewall": "glove", "max_kpa": 450, "tubeless_ok": "yes", "bead_undersize_mm": 3.5}),
		tyre("Slate 40s", members{"label_mm": 40, "sidewall": "glove", "max_kpa": 450, "tubeless_ok": "yes", "bead_undersize_mm": 6}),
		tyre("Chalk 28s", members{"label_mm": 28, "sidewall": "glove", "max_kpa": 500, "hookless_ok": "yes"}),
		tyre("Flint 32s", members{"label_mm": 32, "sidewall": "glove", "max_kpa": 500}),
		wheel("Alloy front", members{"tyre": hexOf("Ochre 40s"), "side": "front", "setup": "tubeless", "inner_mm": 23, "profile": "hooked", "max_kpa": 500,
			"rim_material": "aluminium", "well_depth_mm": 3.2, "flange_mm": 6, "tape_layers": 2, "tape_mm": 0.1, "valve_width_mm": 6, "valve_height_mm": 2}),
		wheel("Straight rear", members{"tyre": hexOf("Chalk 28s"), "side": "rear", "setup": "tubeless", "inner_mm": 25, "profile": "hookless", "max_kpa": 450}),
		wheel("Wide front", members{"setup": "tubeless", "side": "front", "inner_mm": 29, "profile": "hooked", "max_kpa": 400}),
		{id: "f bike", rec: "bike", kind: "bike", ago: old, by: "Ana", set: members{
			"name": "Grey one", "rider": hexOf("Ana"), "front": hexOf("Alloy front"), "rear": hexOf("Straight rear"), "mass_kg": 11}},
		{id: "f cut", rec: "cut", kind: "finding", ago: old, by: "Ana", set: members{
			"bike": hexOf("bike"), "thing": hexOf("Chalk 28s"), "item": "rear_wheel.cuts", "severity": "care", "station": "rear_wheel", "words": "A cut at the rear"}},
		{id: "f Ana", rec: "Ana", kind: "person", ago: old, by: "Ana", set: members{"mass_kg": 72}},
	}
}

// inFitShop opens the app with that book on a phone, and stops the server: there is no signal from here on.
func inFitShop(t *testing.T) (*Page, *Server) {
	t.Helper()
	server := TeamServer(StartServer(t), fitShop()...)
	p := OpenBrowser(t).Open(server.URL() + "#/wheels/" + hexOf("Alloy front"))
	p.Find("heading", "Wheel · Alloy front")
	p.installed()
	p.Allow(offline)
	server.Stop()
	return p, server
}

// looks takes a page in on every screen: the rules, the width, and once with letters twice as large.
func (p *Page) looks(name string) {
	p.t.Helper()
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide(name + " at " + size.Name)
	})
	p.Shot(name)
	p.Large(func() { p.wide(name + " with 200 % text") })
}

// atStep waits for a step of so many.
func (p *Page) atStep(n, of int) {
	p.t.Helper()
	p.See(fill(words(p.t)["fit.step"], "n", fmt.Sprint(n), "of", fmt.Sprint(of)))
}

// through goes on to the last step, by taps on the picture.
func (p *Page) through(of int) {
	p.t.Helper()
	for n := 2; n <= of; n++ {
		p.onward(func() { p.tapBeside() }, n, of)
	}
}

// tapBeside taps where nothing has a use of its own: the step's large letters.
func (p *Page) tapBeside() {
	p.t.Helper()
	at := Eval[[]float64](p, `(() => { const box = document.querySelector(".step-words").getBoundingClientRect(); return [box.left + 20, box.top + 12]; })()`)
	p.do(chromedp.TapXY(at[0], at[1]))
}

// onward does what takes a step until it is there: a second tap right after the first counts as the same one.
func (p *Page) onward(act func(), n, of int) {
	p.t.Helper()
	want := fill(words(p.t)["fit.step"], "n", fmt.Sprint(n), "of", fmt.Sprint(of))
	before := fill(words(p.t)["fit.step"], "n", fmt.Sprint(n-1), "of", fmt.Sprint(of))
	p.Eventually("step "+want, func() bool {
		if strings.Contains(p.Text(), before) {
			act()
		}
		return strings.Contains(p.Text(), want)
	})
}

// A flat: the tyre comes off, a new one goes on by hand, its bead is seated, and the book has it, all by touch and with no signal.
func TestATightTyreGoesOnByHand(t *testing.T) {
	p, server := inFitShop(t)
	in := words(t)
	p.Go("checks")
	p.Tap("link", in["fit.afterFlat"])
	p.Find("heading", in["fit.which"])
	p.Axe()
	p.Tap("link", "Wheel · Alloy front front of Grey one")
	p.See(in["fit.passed"])
	p.See(in["fit.grade.easily"])
	p.Choose(in["fit.goesOn"], "Umber 40s")
	p.See(in["fit.grade.by_hand"])
	p.Tap("DisclosureTriangle", in["fit.why"])
	p.Tap("DisclosureTriangle", in["fit.measures"])
	p.drawnToScale()
	p.looks("fit-guide")
	Eval[bool](p, `document.querySelector(".section").scrollIntoView({block: "start"}) === undefined`)
	p.ShotNow("fit-section")

	p.Tap("link", in["fitWay.off"])
	p.atStep(1, 7)
	p.See(in["fit.awake"]) // the server's headers allow it
	p.looks("fit-off")
	for wish, want := range map[string]string{"no-preference": "0.9s", "reduce": "0s"} {
		p.Media("prefers-reduced-motion", wish)
		if got := Eval[string](p, `getComputedStyle(document.querySelector(".round .bead-off")).transitionDuration.split(",")[0]`); got != want {
			t.Errorf("with reduced motion %q the bead moves for %s, want %s", wish, got, want)
		}
	}
	p.Media("prefers-reduced-motion", "no-preference")
	p.through(7)
	p.Tap("link", in["fitWay.on"])
	p.See(in["fit.passed"])
	p.Tap("link", in["fitWay.on"])
	p.atStep(1, 11)
	p.onward(func() { p.Key(" ") }, 2, 11)
	p.onward(func() { p.Tap("button", in["fit.next"]) }, 3, 11)
	p.Reload()
	p.atStep(3, 11) // the phone went dark; nothing is lost
	for n := 4; n <= 10; n++ {
		p.onward(func() { p.tapBeside() }, n, 11)
	}
	p.See(in["fitNote.noLevers"])
	p.looks("fit-last")
	p.onward(func() { p.tapBeside() }, 11, 11)
	p.Tap("link", in["fitWay.seat"])
	p.atStep(1, 7)
	p.onward(func() { p.tapBeside() }, 2, 7)
	p.See(fill(in["fitStep.never"], "limit", fill(in["fitLimit.tyre"], "p", "4.50 bar")))
	p.looks("fit-limit")
	for n := 3; n <= 7; n++ {
		p.onward(func() { p.tapBeside() }, n, 7)
		p.ShotNow(fmt.Sprintf("fit-seat-%d", n))
	}
	p.Tap("link", in["fit.toDone"])
	p.Find("heading", in["fit.done"]+" · Alloy front")
	p.Choose(in["recField.tyre.direction"], in["recOption.direction.arrow"])
	p.Choose(in["fit.doneTape"], in["fit.part.new"])
	p.Type(in["recField.tape_layers"], "1")
	p.Type(in["recField.tape_mm"], "0.12")
	p.Type(in["fit.sealantPut"], "900")
	p.See("From 0 to 500 ml.")
	p.looks("fit-done")
	p.Type(in["fit.sealantPut"], "80")
	p.Tap("button", in["fit.save"])
	p.See(in["fit.saved"])
	p.Tap("button", in["ground.undo"])
	p.See(in["fit.undone"])
	p.holds(in["fit.sealantPut"], "80")
	p.Tap("button", in["fit.save"])
	p.See(in["fit.saved"])
	p.Axe()
	p.Tap("link", in["fit.toDue"])
	p.See(in["due.title.width_front"])
	p.Tap("link", fill(in["due.doneOf"], "done", in["due.go"], "title", in["due.title.width_front"]))
	p.Find("heading", fill(in["measure.title"], "what", in["measureWhat.width"]))
	p.Go("pressure")
	p.setUp()
	p.holds(fill(in["field.sided"], "side", in["side.front"], "label", in["field.measured"]), "") // the old tyre's width counts no longer
	p.Go("wheels/" + hexOf("Ochre 40s"))
	p.holds(in["recField.measured_mm"], "")
	server.Start()
	p.Online()
	today := time.Now().Format(time.DateOnly)
	for _, part := range []string{`"fitted":"` + today, `"what":"fitted"`, `"tape_day":"` + today, `"ml":80`, `"direction":"arrow"`, `"measured_mm":null`} {
		p.onServer(server, part)
	}
}

// drawnToScale holds the drawings to the calculator: every letter's line, and the arc that may still be off, are as long as they say.
func (p *Page) drawnToScale() {
	p.t.Helper()
	type length struct {
		Name      string
		Drawn, MM float64
	}
	lines := Eval[[]length](p, `[...document.querySelectorAll(".section")].flatMap((each) => [...each.querySelectorAll("[data-letter]")].map((line) =>
		({Name: line.dataset.letter, Drawn: line.getTotalLength() / Number(each.dataset.scale), MM: 0})))`)
	want := map[string]float64{"A": 23, "G": 6, "H": 3}
	for _, line := range lines {
		if mm, known := want[line.Name]; known && math.Abs(line.Drawn-mm) > 0.001 {
			p.t.Errorf("%s is drawn %.3f mm long, want %v", line.Name, line.Drawn, mm)
		}
	}
	if len(lines) != 5 {
		p.t.Errorf("the section has the letters %v", lines)
	}
	arcs := Eval[[]length](p, `[...document.querySelectorAll(".side-view")].flatMap((each) => [...each.querySelectorAll(".bead-off")].map((arc) =>
		({Name: "off", Drawn: arc.getTotalLength() / Number(each.dataset.scale), MM: Number(arc.dataset.mm)})))`)
	// s = 2 pi h - pi 3.5, n by its formula, off = (s - n) (R + G) / (G + h), for h 3, G 6, BSD 622: 176 mm.
	const r, g, h = 311.0, 6.0, 3.0
	need := 2 * (math.Sqrt((r+g)*(r+g)-(r-h)*(r-h)) - (r-h)*math.Acos((r-h)/(r+g)))
	off := (2*math.Pi*h - 3.5*math.Pi - need) * (r + g) / (g + h)
	if len(arcs) != 1 || math.Abs(arcs[0].Drawn-off) > 0.001*off || math.Abs(arcs[0].MM-off) > 0.01 {
		p.t.Errorf("the arc still off is %v, want %.2f mm", arcs, off)
	}
}

// One that does not go on, a hookless rim that refuses, and 32 mm on 29 mm inside, which asks before the first step.
func TestTyresThatDoNotGoOn(t *testing.T) {
	p, _ := inFitShop(t)
	in := words(t)
	p.Go("checks/finding/" + hexOf("cut"))
	p.Tap("link", in["fit.afterFlat"]) // of the rear wheel, on which that tyre is
	p.See("28 mm printed, 30 mm is the least on 25 mm inside")
	p.Go("wheels/" + hexOf("Alloy front"))
	p.Tap("link", in["fit.toGuide"])
	p.See(in["fit.passed"])
	p.Choose(in["fit.goesOn"], "Slate 40s")
	p.See(in["fit.grade.not_like_this"])
	p.ShotNow("fit-not-like-this")

	p.Go("wheels/fit/" + hexOf("Straight rear"))
	p.See("28 mm printed, 30 mm is the least on 25 mm inside")
	p.looks("fit-refused")
	if p.offers(in["fitWay.on"]) || p.offers(in["fitWay.seat"]) || !p.offers(in["fitWay.off"]) {
		t.Error("a refused tyre may be taken off, and neither put on nor seated")
	}
	p.Go("wheels/fit/" + hexOf("Straight rear") + "/on") // nor by its address
	p.See("28 mm printed, 30 mm is the least on 25 mm inside")
	p.NotSee(in["fitStep.look"])
	p.Axe()

	p.Go("wheels/fit/" + hexOf("Wide front"))
	p.Find("combobox", in["fit.goesOn"])
	p.Choose(in["fit.goesOn"], "Flint 32s")
	p.See(fill(in["fitGate.ask_table_min"], "label", "32", "inner", "29"))
	p.edit(in["recField.table_min_label_mm"], "35")
	p.See(fill(in["fitGate.outside_rim_table"], "label", "32"))
	p.edit(in["recField.table_min_label_mm"], "30")
	p.See(in["fit.passed"])
	p.See(in["fitCare.narrow_care"])
	p.ShotNow("fit-32-on-29")
	p.Go("wheels/fit/" + hexOf("Wide front") + "/seat")
	p.atStep(1, 7)
	p.onward(func() { p.tapBeside() }, 2, 7)
	p.See(fill(in["fitLimit.converted"], "p", "2.76 bar")) // nobody said that it was made tubeless
}

func (p *Page) offers(link string) bool {
	p.t.Helper()
	return len(p.matching("link", link)) > 0
}

// The trainer's wheel: one tap, and sweat counts on it and spares the good one.
func TestSweatCountsOnWhatIsIndoors(t *testing.T) {
	p, _ := inFitShop(t)
	in := words(t)
	p.Go("checks/sweat/" + hexOf("bike"))
	p.See(in["salt.notDue"])
	p.Type(in["recField.hours"], "9")
	p.Tap("button", in["salt.add"])
	p.See("2.4 g")
	p.Go("wheels/" + hexOf("Wide front"))
	p.Tap("button", in["things.indoors"])
	p.See(in["things.isIndoors"])
	p.Go("wheels")
	p.See(in["things.markedIndoors"])
	p.Go("checks/sweat/" + hexOf("bike"))
	p.See(fill(in["salt.sparedBy"], "wheels", "Wide front", "ends", in["salt.end.front"]))
	p.Axe()
	p.Go("wheels/" + hexOf("Straight rear"))
	p.Tap("button", in["things.indoors"])
	p.See(in["things.isIndoors"])
	p.Go("checks/sweat/" + hexOf("bike"))
	p.See(fill(in["salt.sparedBy"], "wheels", "Wide front", "ends", in["salt.end.front"]))
	p.Go("wheels/" + hexOf("Straight rear"))
	p.Tap("button", in["things.outdoors"])
	p.See(in["things.isOutdoors"])
}
