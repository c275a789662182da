package journey

import "testing"

func TestSettingsLast(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	in := words(t)
	p := browser.Open(server.URL() + "#/settings")
	p.Choose(in["settings.units"], in["settings.unit.psi"])
	p.Choose(in["settings.theme"], in["settings.theme.night"])
	p.Eventually("night", func() bool { return paper(p) == night })
	p.See(in["status.saved"])
	p.saved("settings")
	p.installed()
	browser.Restart()

	p = browser.Open(server.URL() + "#/settings")
	p.Eventually("night again", func() bool { return paper(p) == night })
	if checked := p.checked(in["settings.units"]); checked != in["settings.unit.psi"] {
		t.Errorf("after a restart the unit is %q", checked)
	}
	p.Choose(in["settings.theme"], in["settings.theme.system"])
	p.Eventually("day as the phone", func() bool { return paper(p) == day })
	p.Media("prefers-color-scheme", "dark")
	p.Eventually("night as the phone", func() bool { return paper(p) == night })
	p.Choose(in["settings.theme"], in["settings.theme.day"])
	p.Eventually("day though the phone is dark", func() bool { return paper(p) == day })
}

const (
	day   = "rgb(251, 248, 241)"
	night = "rgb(17, 17, 14)"
)

func paper(p *Page) string {
	return Eval[string](p, "getComputedStyle(document.documentElement).backgroundColor")
}

// checked is the chosen radio button of a group.
func (p *Page) checked(group string) string {
	p.t.Helper()
	outer := p.Find("group|radiogroup", group)
	nodes := p.Tree()
	for _, node := range nodes {
		if node.Role == "radio" && node.Properties["checked"] == "true" && within(nodes, node, outer) {
			return node.Name
		}
	}
	return ""
}

func TestStorageIsAskedForAndTheAnswerShown(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	browser := OpenBrowser(t)
	answer := func(persisted, persist string) *Page {
		return browser.Open(server.URL()+"#/settings", `
			StorageManager.prototype.persisted = async () => `+persisted+`;
			StorageManager.prototype.persist = async () => `+persist)
	}
	p := answer("false", "false")
	p.See(in["storage.state.evictable"])
	p.Tap("button", in["storage.ask"])
	p.See(in["storage.refused"])
	p.Close()

	p = answer("false", "true")
	p.Tap("button", in["storage.ask"])
	p.See(in["storage.state.kept"])
	p.Close()

	p = answer("true", "true")
	p.See(in["storage.state.kept"])
}

func TestInstallHint(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	in := words(t)
	// A browser on an iPhone: it has that property, and never offers to install by itself.
	p := browser.Open(server.URL(), `Object.defineProperty(Navigator.prototype, "standalone", {value: false});
		addEventListener("beforeinstallprompt", (event) => event.stopImmediatePropagation());`)
	p.See(in["install.hint"])
	p.NotSee(in["install.ios.2"])
	p.Tap("DisclosureTriangle", in["install.hint"])
	p.See(in["install.ios.2"])
	p.See(in["install.ios.storage"])
	p.Shot("install-hint")
	p.Tap("button", in["install.dismiss"])
	p.NotSee(in["install.hint"])
	p.saved("settings")
	p.Reload()
	p.at("pressure")
	p.NotSee(in["install.hint"])
	p.Close()

	p = OpenBrowser(t).Open(server.URL(), "Object.defineProperty(Navigator.prototype, 'standalone', {value: true})")
	p.at("pressure")
	p.NotSee(in["install.hint"])
}
