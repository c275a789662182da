package journey

import (
	"strings"
	"testing"
)

func TestTheSourcesCanBeReadOffline(t *testing.T) {
	p, server := Visit(t)
	in := words(t)
	p.Go("settings")
	p.installed()
	server.Stop()
	p.Allow(offline)
	p.Tap("link", in["sources.way"])
	p.Find("heading", "Never above this on a straight rim edge: 500 kPa")
	for _, wanted := range []string{"ISO 2533", "0.0065 K/m", "5.25588", in["sources.mark.ours"], in["sources.mark.memory"], "stones like walnuts"} {
		p.See(wanted)
	}
	if text := p.Text(); strings.Contains(text, "NaN") || strings.Contains(text, "undefined") {
		t.Errorf("the page says: %s", text)
	}
	p.Axe()
	p.fits("the sources")
	p.Shot("sources")
	p.tap(p.inside("navigation", in["book.back"], "link", in["place.settings"]))
	p.Find("heading", in["cautions.title"])
}
