package journey

import (
	"slices"
	"strings"
	"testing"
)

func TestWhoUsesThePhoneStandsBesideWhatIsEntered(t *testing.T) {
	server := TeamServer(StartServer(t), pastOfATyre...)
	in := words(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL() + "#/settings")
	p.Eventually("the team", func() bool { return slices.Contains(p.options(in["me.who"]), "Ben") })
	p.Choose(in["me.who"], "Ben")
	p.Eventually("his name", func() bool { return p.Value(in["me.name"]) == "Ben" })
	p.Type(in["me.phone"], "The blue phone")
	p.Tap("heading", in["me.title"])
	p.See(in["me.saved"])
	p.Axe()
	p.Go("settings/history/" + hexOf("gauge"))
	p.Tap("button", in["history.restore"])
	p.See("Ben, on this phone (The blue phone)")
	p.Eventually("both on the server", func() bool {
		return strings.Contains(server.Export(), "The blue phone") && strings.Contains(server.Export(), `"author":"`+hexOf("Ben")+`"`)
	})
	p.Close()
	browser.Restart()

	p = browser.Open(server.URL() + "#/settings")
	p.Eventually("Ben still", func() bool { return p.Value(in["me.name"]) == "Ben" })
	p.Choose(in["me.who"], in["me.nobody"])
	p.Eventually("nobody", func() bool { return p.Value(in["me.name"]) == "" })
	p.nameMe("Cleo")
	p.Eventually("a new person on the server", func() bool { return strings.Contains(server.Export(), `"Cleo"`) })
}
