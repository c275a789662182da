package journey

import (
	"os"
	"path/filepath"
	"strings"

	"github.com/chromedp/chromedp"
)

// schemes are the two looks that a phone may ask for.
var schemes = []string{"light", "dark"}

// EachLook does something on every screen size, by day and by night, and leaves a phone by day.
func (p *Page) EachLook(look func(size Size, scheme string)) {
	p.t.Helper()
	for _, size := range Sizes {
		for _, scheme := range schemes {
			p.Resize(size)
			p.Media("prefers-color-scheme", scheme)
			look(size, scheme)
		}
	}
	p.Resize(Phone)
	p.Media("prefers-color-scheme", "light")
}

// Large looks at the page with letters twice as large.
func (p *Page) Large(look func()) {
	p.t.Helper()
	Eval[string](p, "document.documentElement.style.fontSize = '200%'")
	look()
	Eval[string](p, "document.documentElement.style.fontSize = ''")
}

// Shot keeps pictures of the page on every screen size, by day and by night, and with letters twice as large, in the folder
// RIMSIDE_SHOTS.
func (p *Page) Shot(name string) {
	p.t.Helper()
	if os.Getenv("RIMSIDE_SHOTS") == "" {
		return
	}
	p.EachLook(func(size Size, scheme string) {
		p.t.Helper()
		p.ShotNow(strings.Join([]string{name, size.Name, scheme}, "-"))
	})
	p.Large(func() { p.ShotNow(name + "-twice") })
}

// ShotNow keeps one picture of the page as it is.
func (p *Page) ShotNow(name string) {
	p.t.Helper()
	folder := os.Getenv("RIMSIDE_SHOTS")
	if folder == "" {
		return
	}
	picture, err := chromedp.Run(p.ctx, chromedp.CaptureScreenshot())
	if err == nil {
		err = os.MkdirAll(folder, 0o755)
	}
	if err == nil {
		err = os.WriteFile(filepath.Join(folder, name+".png"), picture, 0o644)
	}
	if err != nil {
		p.t.Fatal(err)
	}
}

// axeRun gives one line for each thing that breaks a rule. What lies under the sticky bar counts as too small to press
// where it is, so it is judged again after scrolling to it, as a person would.
const axeRun = `(async () => {
	const rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
	const lines = [];
	for (const rule of (await axe.run(document, {runOnly: rules})).violations) {
		for (const node of rule.nodes) {
			const element = document.querySelector(node.target.join(" "));
			if (rule.id === "target-size" && element !== null) {
				element.scrollIntoView({block: "center", behavior: "instant"});
				const again = await axe.run(element, {runOnly: {type: "rule", values: ["target-size"]}});
				if (again.violations.length === 0) continue;
			}
			lines.push(rule.id + ": " + rule.help + " | " + node.target.join(" ") + " | " + node.failureSummary);
		}
	}
	scrollTo(0, 0);
	return lines;
})()`

// Axe checks the page as it is against the accessibility rules.
func (p *Page) Axe() {
	p.t.Helper()
	path := filepath.Join(moduleRoot(p.t), "pwa", "node_modules", "axe-core", "axe.min.js")
	source, err := os.ReadFile(path)
	if err != nil {
		missing(p.t, "axe-core is not installed: run npm install --no-save --no-package-lock in pwa (%v)", err)
	}
	if !Eval[bool](p, "'axe' in globalThis") {
		Eval[bool](p, string(source)+"; true")
	}
	for _, line := range Eval[[]string](p, axeRun) {
		p.t.Errorf("accessibility at %s: %s", Eval[string](p, "location.hash"), line)
	}
}
