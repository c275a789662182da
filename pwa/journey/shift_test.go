package journey

import "testing"

// shifts adds up how far things jump while nobody touches the page, as the browser itself measures it.
const shifts = `globalThis.jumped = 0;
	globalThis.jumps = [];
	new PerformanceObserver((list) => {
		for (const entry of list.getEntries()) {
			globalThis.jumped += entry.value;
			for (const source of entry.sources) {
				const name = (source.node?.nodeName ?? "gone") + " " + (source.node?.className ?? "");
				globalThis.jumps.push(name + " at " + Math.round(entry.startTime) + " ms from " + source.previousRect.y + " to " + source.currentRect.y);
			}
		}
	}).observe({type: "layout-shift", buffered: true})`

func TestNothingJumpsWhileThePageOpens(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	in := words(t)
	for _, place := range append(places, "settings") {
		p := browser.Open(server.URL()+"#/"+place, shifts)
		p.at(place)
		p.See(in["status.saved"])
		p.installed() // by then the settings, the draft and the calculator have had their say
		p.Reload()
		p.at(place)
		p.See(in["status.saved"])
		Eval[bool](p, "new Promise((resolve) => setTimeout(() => resolve(true), 500))")
		if jumped := Eval[float64](p, "globalThis.jumped"); jumped > 0.001 {
			t.Errorf("%s jumps by %v while it opens: %v", place, jumped, Eval[[]string](p, "globalThis.jumps"))
		}
		p.Close()
	}
}
