package journey

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
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

// A photo of twelve megapixels is made small on the phone, and says nothing of where it was taken.
func TestAPhotoIsMadeSmallAndTellsNoPlace(t *testing.T) {
	p, server := atChecks(t, builds[0])
	in := words(t)
	p.tap(p.link(in["checks.short.crash"]))
	p.tap(p.firstButton(strings.Split(in["checks.findOf"], "{")[0]))
	p.bringFile(in["checks.photo"], "note.txt", "no picture")
	p.See(in["checks.photoFault.type"])
	p.bringFile(in["checks.photo"], "broken.jpg", "\xff\xd8\xff no picture either")
	p.See(in["checks.photoFault.unreadable"])
	p.bringFile(in["checks.photo"], "large.jpg", photoWithPlace(t))
	p.Eventually("the photo", func() bool { return Eval[bool](p, `document.querySelector("rs-photo-item img")?.naturalWidth > 0`) })
	kept := p.keptPhoto()
	small, err := jpeg.DecodeConfig(bytes.NewReader(kept))
	if err != nil || small.Width != 1600 || small.Height != 1200 {
		t.Errorf("the photo is %d by %d (%v), want 1600 by 1200", small.Width, small.Height, err)
	}
	for _, place := range []string{"Exif", "GPSPLACE", "Photoshop"} {
		if bytes.Contains(kept, []byte(place)) {
			t.Errorf("the photo still tells %s", place)
		}
	}
	p.Shot("checks-photo")
	p.atEachStation(nil)
	p.Tap("button", in["checks.finish"])
	p.Find("heading", in["ready.state.stop"])
	server.Start()
	p.Online()
	p.onServer(server, `"kind":"photo"`)
}

// keptPhoto is the one photo in the phone's own store.
func (p *Page) keptPhoto() []byte {
	p.t.Helper()
	text := Eval[string](p, `new Promise((resolve, reject) => {
		const request = indexedDB.open("rimside-" + localStorage.getItem("rimside-book"));
		request.onerror = () => reject(request.error);
		request.onsuccess = () => {
			const db = request.result;
			const rows = db.transaction("photos").objectStore("photos").getAll();
			rows.onsuccess = () => {
				db.close();
				const bytes = new Uint8Array(rows.result[0].bytes);
				let text = "";
				for (const byte of bytes) text += String.fromCharCode(byte);
				resolve(btoa(text));
			};
		};
	})`)
	kept, err := base64.StdEncoding.DecodeString(text)
	if err != nil {
		p.t.Fatal(err)
	}
	return kept
}

// photoWithPlace is a photo as cameras write them: large, and with the place noted beside it.
func photoWithPlace(t *testing.T) string {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 4000, 3000))
	for y := range 3000 {
		for x := range 4000 {
			picture.SetRGBA(x, y, color.RGBA{uint8(x / 16), uint8(y / 12), uint8((x + y) / 28), 255})
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, picture, nil); err != nil {
		t.Fatal(err)
	}
	note := "Exif\x00\x00GPSPLACE 46.5 N 7.9 E"
	size := len(note) + 2
	return out.String()[:2] + "\xff\xe1" + string([]byte{byte(size >> 8), byte(size)}) + note + out.String()[2:]
}

// A full phone keeps the finding, and says that the photo is not kept.
func TestAFullPhoneSaysThatAPhotoIsNotKept(t *testing.T) {
	server := TeamServer(StartServer(t), builds[0].deeds()...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/checks", `
		const put = IDBObjectStore.prototype.put;
		IDBObjectStore.prototype.put = function(...args) {
			if (this.name === "photos" && globalThis.full) throw new DOMException("no room", "QuotaExceededError");
			return put.apply(this, args);
		};
		globalThis.full = true;`)
	p.Tap("link", in["checks.short.after"])
	p.tap(p.firstButton(strings.Split(in["checks.findOf"], "{")[0]))
	p.Type(in["checks.words"], "a cut")
	p.bringFile(in["checks.photo"], "large.jpg", photoWithPlace(t))
	p.See(in["checks.photoFault.full"])
	p.Axe()
	Eval[bool](p, "globalThis.full = false, true")
	p.bringFile(in["checks.photo"], "large.jpg", photoWithPlace(t))
	p.Eventually("the photo", func() bool { return Eval[bool](p, `document.querySelector("rs-photo-item img")?.naturalWidth > 0`) })
	p.NotSee(in["checks.photoFault.full"])
}

// BenchmarkOpenWithManyChecks is the time until Checks stands, at a quarter of the speed, after 2,000 walk-arounds with a
// finding in each tenth.
func BenchmarkOpenWithManyChecks(b *testing.B) {
	server := StartServer(b)
	all := []members{}
	for _, each := range builds[0].deeds() {
		all = append(all, each.op())
	}
	op := func(n int, kind string, set members) members {
		set["bike"] = hexOf("Ochre")
		set["day"] = "2026-07-01"
		return members{"id": fmt.Sprintf("%032x", 900000+n), "at": 1783000000000 + n, "kind": kind, "rec": fmt.Sprintf("%032x", 800000+n), "set": set, "author": "", "device": "", "schema": 1}
	}
	for n := range 2000 {
		var items []members
		for i := range 12 {
			items = append(items, members{"id": fmt.Sprintf("station.%d", i), "station": stations[i/2], "title": "Something to look at", "state": "ok"})
		}
		all = append(all, op(n, "check", members{"moment": "start", "items": items, "outcome": "nothing_found", "done": true}))
		if n%10 == 0 {
			all = append(all, op(5000+n, "finding", members{"item": "front_wheel.tyre", "station": "front_wheel", "severity": "note", "words": fmt.Sprintf("cut %d", n)}),
				op(9000+n, "finding_closed", members{"finding": fmt.Sprintf("%032x", 800000+5000+n), "done": "new tyre"}))
		}
	}
	for from := 0; from < len(all); from += 500 {
		server.push(teamBook, all[from:min(from+500, len(all))])
	}
	p := OpenBrowser(b).Open(server.URL() + "#/checks")
	p.See("Last look: ")
	var opens float64
	for b.Loop() {
		p.throttle(4)
		opens = max(opens, p.opensIn("checks", `document.body.innerText.includes("Last look: ")`))
		p.throttle(1)
	}
	b.ReportMetric(opens, "ms-opens")
}
