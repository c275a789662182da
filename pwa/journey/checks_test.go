package journey

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"
)

// build is what a bike of the book is made of.
type build struct {
	name        string
	bike, wheel members
	tyre        members
}

var builds = []build{
	{"Ochre", members{"brake": "disc"}, members{"setup": "tubeless", "profile": "hookless", "rim_material": "carbon", "nipple_material": "aluminium", "brake": "disc", "rotor_mm": 160}, members{"label_mm": 45}},
	{"Umber", members{"brake": "rim"}, members{"setup": "tube", "profile": "hooked", "rim_material": "aluminium", "nipple_material": "brass", "spoke_material": "stainless", "brake": "rim"}, members{"label_mm": 28}},
}

// deeds are the entries that make a bike of the book.
func (b build) deeds() []deed {
	merged := func(maps ...members) members {
		all := members{}
		for _, each := range maps {
			for name, value := range each {
				all[name] = value
			}
		}
		return all
	}
	of := func(part string) string { return b.name + " " + part }
	all := []deed{{id: of("b1"), rec: b.name, kind: "bike", ago: time.Hour, by: "Ana", set: merged(b.bike, members{"name": b.name, "front": hexOf(of("f")), "rear": hexOf(of("r"))})}}
	for _, side := range []string{"f", "r"} {
		all = append(all,
			deed{id: of(side + "1"), rec: of(side), kind: "wheel", ago: time.Hour, by: "Ana", set: merged(b.wheel, members{"tyre": hexOf(of(side + "t"))})},
			deed{id: of(side + "2"), rec: of(side + "t"), kind: "tyre", ago: time.Hour, by: "Ana", set: b.tyre})
	}
	return all
}

// atChecks opens Checks on a phone that has the bikes and no signal.
func atChecks(t *testing.T, of ...build) (*Page, *Server) {
	t.Helper()
	var all []deed
	for _, each := range of {
		all = append(all, each.deeds()...)
	}
	server := TeamServer(StartServer(t), all...)
	p := OpenBrowser(t).Open(server.URL() + "#/checks")
	p.See(words(t)["ready.state.not_looked_at"])
	p.installed()
	p.Allow(offline)
	server.Stop()
	return p, server
}

var stations = []string{"front_wheel", "front_brake", "bar", "frame", "rear_wheel", "rear_brake"}

// answer taps a button once it takes taps: a new station keeps its buttons shut for a moment.
func (p *Page) answer(name string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("%q to take taps", name), func() bool {
		found := p.matching("button", name)
		return len(found) == 1 && found[0].Properties["disabled"] != "true"
	})
	p.Tap("button", name)
}

// atEachStation answers for every station that is asked, with OK or what else is given for one.
func (p *Page) atEachStation(other map[string]string) {
	p.t.Helper()
	in := words(p.t)
	for _, station := range stations {
		name := other[station]
		if name == "" {
			name = "checks.okOf"
		}
		p.answer(fill(in[name], "station", in["checks.station."+station]))
	}
}

// A start-line walk-around with nothing to find: at most eight taps, and the outcome says how much was looked at.
func TestAWalkAroundAtTheStart(t *testing.T) {
	for _, of := range builds {
		t.Run(of.name, func(t *testing.T) {
			p, _ := atChecks(t, of)
			in := words(t)
			p.tap(p.link(in["checks.moment.start"]))
			p.See(in["checks.station.front_wheel"])
			p.EachLook(func(size Size, _ string) {
				p.Axe()
				p.wide("a walk-around at " + size.Name)
			})
			p.Shot("checks-walk-" + of.name)
			p.answer(fill(in["checks.okOf"], "station", in["checks.station.front_wheel"]))
			p.See(in["checks.station.front_brake"])
			text := p.Text()
			if discs := strings.Contains(strings.ToLower(text), "rotor"); discs != (of.bike["brake"] == "disc") {
				t.Errorf("rotors asked about: %v, on a bike with %v brakes", discs, of.bike["brake"])
			}
			for _, station := range stations[1:] {
				p.answer(fill(in["checks.okOf"], "station", in["checks.station."+station]))
			}
			p.Eventually("to have looked at all", func() bool {
				said := regexp.MustCompile(`No fault found: (\d+) of (\d+) checked`).FindStringSubmatch(p.Text())
				return said != nil && said[1] == said[2] && said[1] != "0"
			})
			p.Axe()
			p.Shot("checks-outcome-" + of.name)
			p.Tap("button", in["checks.finish"]) // the eighth tap
			p.Find("heading", in["place.checks"]+" · "+of.name)
			p.See(in["ready.state.no_fault_found"])
		})
	}
}

// link finds the one link whose name begins like this.
func (p *Page) link(begin string) Node {
	p.t.Helper()
	var found Node
	p.Eventually(fmt.Sprintf("one link %q…", begin), func() bool {
		count := 0
		for _, node := range p.Tree() {
			if node.Role == "link" && strings.HasPrefix(node.Name, begin) {
				found = node
				count++
			}
		}
		return count == 1
	})
	return found
}

// firstButton finds the first button whose name begins like this.
func (p *Page) firstButton(begin string) (found Node) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("a button %q…", begin), func() bool {
		for _, node := range p.Tree() {
			if node.Role == "button" && strings.HasPrefix(node.Name, begin) {
				found = node
				return true
			}
		}
		return false
	})
	return found
}

// What was skipped can never be called fine; a finding is in the book at once, stops the bike on every screen until somebody says what
// was done about it.
func TestAFindingStaysUntilItIsClosed(t *testing.T) {
	p, _ := atChecks(t, builds[0])
	in := words(t)
	p.tap(p.link(in["checks.moment.start"]))
	p.tap(p.firstButton(strings.Split(in["checks.findOf"], "{")[0]))
	p.Choose(in["checks.severity"], in["checks.bad.stop"])
	p.Type(in["checks.words"], "cord shows")
	p.Choose(in["checks.clock"], fill(in["checks.clockAt"], "n", "4"))
	p.Choose(in["checks.side"], in["checks.sideOf.left"])
	p.Type(in["checks.mm"], "3,5")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a finding at " + size.Name)
	})
	p.Shot("checks-finding")
	p.Tap("button", in["checks.foundDone"])
	p.Reload() // broken off and gone on with
	p.See("Front wheel")
	p.Go("checks")
	p.See(in["ready.state.stop"]) // though the walk is not ended
	p.See("cord shows")
	p.Tap("link", fill(in["checks.goOnOf"], "what", in["checks.begun.start"]))
	p.atEachStation(map[string]string{"frame": "checks.skipOf"})
	p.Find("heading", in["ready.state.stop"])
	p.See("cord shows")
	p.See("Not looked at: Frame and fork")
	p.Axe()
	p.Shot("checks-stop")
	p.Tap("button", in["checks.finish"])
	p.Find("heading", in["place.checks"]+" · Ochre")
	p.Find("heading", in["ready.state.stop"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("checks at " + size.Name)
	})
	p.Shot("checks-front")
	p.Go("wheels/" + hexOf("Ochre f"))
	p.See(in["ready.state.stop"])
	p.See("cord shows")
	p.Go("wheels/" + hexOf("Ochre"))
	p.See("cord shows")
	p.tap(p.link("cord shows"))
	p.See("4 o’clock")
	p.See("3.5 mm")
	p.Tap("button", in["checks.closeIt"])
	p.See(in["checks.closeEmpty"])
	p.Type(in["checks.close"], "new tyre")
	p.Tap("button", in["checks.closeIt"])
	p.See("new tyre")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a closed finding at " + size.Name)
	})
	p.Go("wheels/" + hexOf("Ochre"))
	p.NotSee("cord shows")
	p.See("Ride with care: 1 reason") // a row was left out
	p.Go("checks/history/" + hexOf("Ochre"))
	p.See("new tyre")
	p.Axe()
}

// An evening's walk that was broken off, with a stop, is still there when a start-line walk was begun and ended: the state stays, the walk
// can be gone on with; discarding it is asked, taken back, and keeps what was found.
func TestAStartedWalkIsNotLost(t *testing.T) {
	p, _ := atChecks(t, builds[0])
	in := words(t)
	p.tap(p.link(in["checks.short.evening"]))
	p.tap(p.firstButton(strings.Split(in["checks.findOf"], "{")[0]))
	p.Type(in["checks.words"], "bead bare")
	p.Choose(in["checks.severity"], in["checks.bad.stop"])
	p.Tap("button", in["checks.foundDone"])
	p.Go("checks")
	p.tap(p.link(in["checks.moment.start"]))
	p.atEachStation(nil)
	p.Find("heading", in["ready.state.stop"]) // over nine rows without a fault
	p.See("bead bare")
	p.Tap("button", in["checks.finish"])
	p.Find("heading", in["ready.state.stop"])
	p.See(in["checks.begun.evening"])
	p.Tap("link", fill(in["checks.goOnOf"], "what", in["checks.begun.evening"]))
	p.See(in["checks.station.front_wheel"])
	p.Tap("button", in["checks.discard"])
	p.See(in["checks.discardSure"])
	p.Axe()
	p.Tap("button", in["checks.discardYes"])
	p.See(in["checks.discarded"])
	p.NotSee(in["checks.begun.evening"])
	p.See("bead bare")
	p.Tap("button", in["ground.undo"])
	p.See(in["checks.begun.evening"])
}

// A value typed at its row: fine needs no finding; under the mark it stops the bike, whatever else is said of the row.
func TestAValueTypedAtItsRow(t *testing.T) {
	of := builds[0]
	of.wheel = members{"setup": "tubeless", "profile": "hookless", "brake": "disc", "axle_mm": 12, "rotor_min_mm": 1.5}
	p, _ := atChecks(t, of)
	in := words(t)
	p.tap(p.link(in["checks.short.evening"]))
	p.answer(fill(in["checks.okOf"], "station", in["checks.station.front_wheel"]))
	thickness := in["check.title.rotor_thickness"] + ": " + in["check.measure.rotor_thickness"]
	p.Type(thickness, "1.62")
	p.See(in["checks.verdict.fine"])
	p.Type(thickness, "1.45")
	p.See(in["checks.verdict.stop"])
	p.Tap("button", fill(in["checks.findOf"], "title", in["check.title.rotor_thickness"]))
	p.Choose(in["checks.severity"], in["checks.bad.note"])
	p.Tap("button", in["checks.foundDone"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a value at its row at " + size.Name)
	})
	p.Shot("checks-value")
	p.Go("checks")
	p.See("Rotor 1.45 mm thick, the least is 1.5 mm")
	p.Find("heading", in["ready.state.stop"])
	p.Go("wheels/measure/" + hexOf("Ochre f") + "/rotor_thickness")
	p.See("1.45")
}

// The second tap of a double tap answers no other station.
func TestADoubleTapAnswersOnce(t *testing.T) {
	p, _ := atChecks(t, builds[0])
	in := words(t)
	p.tap(p.link(in["checks.moment.start"]))
	name := fill(in["checks.okOf"], "station", in["checks.station.front_wheel"])
	node := p.Find("button", name)
	p.tap(node)
	Eval[bool](p, `document.querySelector("rs-station .okay button").click() ?? true`)
	p.Find("button", fill(in["checks.okOf"], "station", in["checks.station.front_brake"]))
	p.See("2 of 6")
}
