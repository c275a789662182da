package journey

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A day in the mountains: a rider of an event, and a whole bike on the roof.
func roofOfADay() []deed {
	built := func(of, place string, mm int) deed {
		return deed{id: of + place, rec: of + " " + place, kind: "measure", ago: 30 * time.Hour, set: members{"of": hexOf(of), "what": "as_built", "place": place, "mm": mm, "day": "2026-05-27"}}
	}
	return []deed{
		{id: "ev", rec: "event", kind: "event", ago: 30 * time.Hour, set: members{"name": "Spring classic"}},
		{id: "pe", rec: "fern", kind: "person", ago: 30 * time.Hour, set: members{"name": "Rider in fern", "number": "114", "event": hexOf("event")}},
		{id: "bi", rec: "fern bike", kind: "bike", ago: 30 * time.Hour, set: members{
			"number": "114", "rider": hexOf("fern"), "event": hexOf("event"), "brake": "rim", "pedals": "hex", "cleat": "three bolts",
		}},
		built("fern bike", "saddle_height", 742), built("fern bike", "reach", 520),
		{id: "r1", rec: "roof one", kind: "bike", ago: 30 * time.Hour, set: members{"name": "Roof bike 1", "spare": true, "place": "roof, left", "brake": "disc", "cleat": "three bolts"}},
		built("roof one", "saddle_height", 760), built("roof one", "reach", 525),
		{id: "r2", rec: "roof two", kind: "bike", ago: 30 * time.Hour, set: members{"name": "Roof bike 2", "spare": true, "place": "roof, right"}},
	}
}

// A whole bike is found for a number, given, and comes back, all by touch and with no signal; then all of the event goes into a file,
// which a second phone reads that has never met a server.
func TestASpareBikeIsGivenAndTheEventGoesToAnotherPhone(t *testing.T) {
	server := TeamServer(StartServer(t), roofOfADay()...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/car", keepDownloads)
	p.See(in["car.typeNumber"])
	p.installed()
	server.Stop()
	p.Allow(offline)
	p.keyIn("114")
	p.See(in["car.nothing"])
	p.Choose(in["car.side"], in["spareBike.one"])
	p.See("GIVE ROOF BIKE 1")
	p.See("with a change: saddle to 742 mm, 5 mm longer in reach; about 1 min")
	p.See("Roof bike 2 · roof, right")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("a spare bike at " + size.Name)
	})
	p.Shot("car-bike")
	p.Tap("button", fill(in["car.gaveSpoken"], "spare", "Roof bike 1", "who", "114 · Rider in fern"))
	p.See(fill(in["car.gaveDone"], "spare", "Roof bike 1", "who", "114 · Rider in fern"))
	p.allSaved()
	p.Reload()
	p.keyIn("114") // the wheels that fit now are those for the bike from the roof
	p.See("Rides Roof bike 1 since ")
	p.See(in["carEnd.disc"])
	p.Choose(in["car.side"], in["spareBike.one"])
	p.See("GIVE ROOF BIKE 2")
	p.See("no: out with 114 since ")
	p.Tap("link", in["car.open"])
	p.See("Rides Roof bike 1 since ")
	p.Go("car/spares")
	p.See("out with 114 since ")

	p.Go("car/event")
	p.Tap("link", "Spring classic 1 rider")
	p.See(fill(in["forget.kind"], "kind", in["recKind.spare_out"], "n", "1"))
	p.Tap("button", in["eventWhole.export"])
	file := filepath.Join(t.TempDir(), "event.ndjson")
	text := p.file(`"spare_out"`)
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(text, "Roof bike") {
		t.Errorf("the car's own bikes went along: %s", text)
	}

	p.Go("car/out")
	p.See("Roof bike 1 is with 114 · Rider in fern")
	p.Tap("button", in["lent.back"])
	p.See(fill(in["lent.backDone"], "spare", "Roof bike 1"))
	p.See(in["lent.none"])
	p.Go("car")
	p.keyIn("114")
	p.Choose(in["car.side"], in["spareBike.one"])
	p.See("GIVE ROOF BIKE 1")
	p.NotSee("Rides Roof bike 1")

	alone := StartServer(t) // hands out the app and is then gone
	q := OpenBrowser(t).Open(alone.URL() + "#/settings")
	q.installed()
	alone.Stop()
	q.Allow("ERR_CONNECTION_REFUSED")
	q.pickFile(file) // a phone with nothing of its own takes the file's book
	q.See(fill(in["copies.read"], "fresh", fmt.Sprint(strings.Count(strings.TrimSpace(text), "\n")), "known", "0", "bad", "0"))
	q.Go("car/event")
	q.Tap("link", "Spring classic 1 rider")
	q.See(fill(in["forget.kind"], "kind", in["recKind.spare_out"], "n", "1"))
	q.Go("car/card/" + hexOf("fern bike"))
	q.See("Rider in fern")
}
