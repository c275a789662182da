package journey

import "fmt"

// opensIn is how long a screen takes to stand, in ms, when it is opened from Settings by a page that was at rest.
func (p *Page) opensIn(screen, stands string) float64 {
	p.t.Helper()
	p.Go("settings")
	p.Find("heading", "Settings")
	Eval[bool](p, `new Promise((resolve) => setTimeout(() => requestIdleCallback(() => resolve(true)), 2000))`)
	return Eval[float64](p, fmt.Sprintf(`new Promise((resolve) => {
		const from = performance.now();
		new MutationObserver((_, all) => {
			if (!(%s)) return;
			all.disconnect();
			requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - from)));
		}).observe(document, {subtree: true, childList: true, characterData: true});
		location.hash = "#/%s";
	})`, stands, screen))
}
