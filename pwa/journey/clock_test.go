package journey

import (
	"strings"
	"testing"
)

func TestAClockThatIsOffIsTold(t *testing.T) {
	server := TeamServer(StartServer(t))
	in := words(t)
	warning := fill(in["clock.ahead"], "by", fill(in["span.hours"], "n", "3"))
	p := OpenBrowser(t).Open(server.URL()+"#/settings", `Date.now = ((now) => () => now() + 3 * 3600e3)(Date.now)`)
	p.See(warning)
	p.Axe()
	p.Shot("clock-ahead")

	p = OpenBrowser(t).Open(server.URL()+"#/settings", `Date.now = ((now) => () => now() + 45e3)(Date.now)`)
	p.See(in["sync.phase.even"])
	if beginning, _, _ := strings.Cut(in["clock.ahead"], "{"); strings.Contains(p.Text(), beginning) {
		t.Error("less than a minute, which changes nothing that matters, is told")
	}
}
