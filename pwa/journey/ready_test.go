package journey

import (
	"strings"
	"testing"
)

// Two phones apart: one puts a wheel on another bike, the other finds a crack in it on the bike it was on. The crack goes where the
// wheel is, on both phones, and every screen says so; the bike that it left is not held by it.
func TestACrackTravelsWithItsWheel(t *testing.T) {
	in := words(t)
	ochre, sepia := builds[0], builds[0]
	sepia.name = "Sepia"
	server := TeamServer(StartServer(t), append(ochre.deeds(), sepia.deeds()...)...)
	browser := OpenBrowser(t)
	var phones []*Page
	for range 2 {
		p := browser.OpenApart(server.URL() + "#/wheels")
		p.Allow(offline)
		p.See("Sepia")
		p.installed()
		phones = append(phones, p)
	}
	mover, finder := phones[0], phones[1]
	server.Stop()

	mover.Go("wheels/" + hexOf("Sepia"))
	mover.Find("heading", "Bike · Sepia")
	mover.Choose(in["recField.front"], "front of Ochre")
	mover.See(in["things.swapped"])

	finder.Go("checks/of/" + hexOf("Ochre"))
	finder.tap(finder.link(in["checks.moment.start"]))
	finder.tap(finder.button(fill(in["checks.findOf"], "title", in["check.title.held"])))
	finder.Choose(in["checks.severity"], in["checks.bad.stop"])
	finder.Type(in["checks.words"], "crack at a spoke hole")
	finder.Tap("button", in["checks.foundDone"])
	finder.Go("checks/of/" + hexOf("Ochre"))
	finder.See(in["ready.state.stop"])
	finder.See("crack at a spoke hole")

	server.Start()
	for _, p := range phones {
		p.Online()
	}
	finder.onServer(server, "crack at a spoke hole")
	mover.onServer(server, `"front":"`+hexOf("Ochre f")+`"`)
	for _, p := range phones {
		p.Online()
		p.Go("checks/of/" + hexOf("Sepia"))
		p.See("crack at a spoke hole") // it came with the wheel
		p.See(in["ready.state.stop"])
		p.Go("wheels/" + hexOf("Ochre f"))
		p.See("crack at a spoke hole")
		p.Go("wheels/" + hexOf("Sepia"))
		p.See("crack at a spoke hole")
		p.Go("wheels")
		p.Eventually("Sepia to be held in the list", func() bool { return strings.Contains(p.Text(), "Do not ride: 1 reason") })
	}
}
