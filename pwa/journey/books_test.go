package journey

import (
	"slices"
	"strings"
	"testing"
)

// nameMe types who uses this phone.
func (p *Page) nameMe(name string) {
	p.t.Helper()
	in := words(p.t)
	p.Type(in["me.name"], name)
	p.Tap("heading", in["me.title"]) // leaves the field
	p.Eventually(name+" as who uses the phone", func() bool { return slices.Contains(p.options(in["me.who"]), name) })
}

func TestAnotherBookOnTheServerIsOpenedSeparately(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL() + "#/settings")
	p.nameMe("Cleo")
	p.See(in["sync.phase.even"])
	server.Stop()
	server.data = t.TempDir() // another team's server at the same address
	server.Start()
	TeamServer(server, pastOfATyre...)
	p.Reload()
	p.See(in["book.other"])
	p.See(in["sync.phase.otherBook"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("another book at " + size.Name)
	})
	p.Shot("other-book")
	p.nameMe("Cleo Two") // goes on working
	p.Tap("button", in["book.openOther"])
	p.See(in["sync.phase.even"])
	p.Eventually("the team on this phone", func() bool { return slices.Contains(p.options(in["me.who"]), "Ana") })
	if slices.Contains(p.options(in["me.who"]), "Cleo Two") {
		t.Error("one book's people stand in the other")
	}
	if strings.Contains(server.Export(), "Cleo") {
		t.Error("the first book went to the other team's server")
	}

	p.Tap("link", in["book.books"])
	p.See("Ana, Ben")
	p.Axe()
	p.Shot("books")
	own := p.button(in["books.take"])
	if !strings.Contains(p.Text(), "Cleo Two") {
		t.Errorf("the first book is not known by what it holds: %s", p.Text())
	}
	p.tap(own)
	p.Eventually("the first book again", func() bool {
		first, _, found := strings.Cut(p.Text(), in["books.open"])
		return found && strings.Contains(first, "Cleo Two") && !strings.Contains(first, "Ana, Ben")
	})
	p.Go("settings")
	p.holds(in["me.name"], "Cleo Two")
}
