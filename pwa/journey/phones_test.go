package journey

import (
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

func TestPhonesAreLetInSeenAndShutOut(t *testing.T) {
	server := StartServer(t, "-login")
	in := words(t)
	browser := OpenBrowser(t)
	first := openOutside(browser, server)

	// Not paired: everything works, nothing is sent, and it says so.
	first.See(in["sync.phase.notPaired"])
	first.nameMe("Cleo")
	first.See("All saved on this phone · 2 not yet on the server · " + in["sync.phase.notPaired"])
	first.looksWell("settings of a phone that is not paired")
	first.Tap("link", in["book.pair"])
	first.Find("heading", in["pair.title"])
	first.looksWell("phones before pairing")
	first.Tap("button", in["pair.title"])
	first.See(in["pair.digits"])
	first.pairAs("12 34", "Cleo’s phone")
	first.See(in["pair.digits"])
	first.pairAs("000 000", "Cleo’s phone") // one in a million says that this is the code
	first.See(in["pair.wrong"])
	if code, label := first.Value(in["pair.code"]), first.Value(in["pair.label"]); code != "000 000" || label != "Cleo’s phone" {
		t.Errorf("after a wrong code there stands %q and %q", code, label)
	}
	first.looksWell("a wrong code")
	if strings.Contains(server.kept(), "Cleo") {
		t.Error("a phone that is not paired has sent something")
	}

	// The right code: what was written before goes out.
	first.pairAs(server.pairingCode(), "Cleo’s phone")
	first.See(in["pair.done"])
	first.lists("Cleo’s phone: this phone")
	first.Eventually("what was written before on the server", func() bool { return strings.Contains(server.kept(), `"Cleo"`) })
	cookie := first.cookie()
	if cookie == nil || !cookie.HTTPOnly {
		t.Errorf("the cookie is %+v", cookie)
	}

	// A paired phone makes a code for the next one, which has nothing of its own and takes the book.
	first.Tap("button", in["code.make"])
	first.Eventually("a code", func() bool { return codeLine.MatchString(first.figures()) })
	first.See("10 min left")
	first.See(strings.TrimSuffix(server.URL(), "/"))
	first.looksWell("a code for another phone")
	second := openOutside(browser, server)
	second.Go("settings/phones")
	second.pairAs(first.figures(), "Dora’s phone")
	second.lists("Dora’s phone: this phone", "Cleo’s phone: last seen just now")
	second.Go("settings")
	second.See(in["sync.phase.even"])
	second.Eventually("the team on this phone", func() bool { return len(second.options(in["me.who"])) == 2 })
	second.holds(in["me.phone"], "Dora’s phone")
	held := strings.Join([]string{server.kept(), first.keeps(), second.keeps()}, "\n")
	bare := regexp.MustCompile(`(^|[^0-9a-f])` + strings.ReplaceAll(first.figures(), " ", " ?") + `($|[^0-9a-f])`) // ids are full of digits
	if found := bare.FindString(held); found != "" {
		t.Errorf("the code is kept: %s", found)
	}

	// Another name, given by another phone.
	first.Online()
	first.lists("Cleo’s phone: this phone", "Dora’s phone: last seen just now")
	first.Tap("DisclosureTriangle", fill(in["phones.changeOf"], "name", "Dora’s phone"))
	first.Type(in["phones.name"], " ")
	first.Tap("button", in["phones.save"])
	first.See(in["pair.noLabel"])
	first.Type(in["phones.name"], "The car’s phone")
	first.Tap("button", in["phones.save"])
	first.See(fill(in["phones.renamed"], "name", "The car’s phone"))
	first.lists("Cleo’s phone: this phone", "The car’s phone: last seen just now")
	second.Online()
	second.holds(in["me.phone"], "The car’s phone")

	// Shut out: asked once, at once, and the phone keeps what it has.
	first.Tap("button", in["phones.shutOut"])
	first.See(fill(in["phones.means"], "name", "The car’s phone"))
	first.looksWell("before a phone is shut out")
	first.Tap("button", in["phones.leave"])
	first.NotSee(fill(in["phones.means"], "name", "The car’s phone"))
	first.Tap("button", in["phones.shutOut"])
	first.Tap("button", in["phones.forEver"])
	first.See(fill(in["phones.isOut"], "name", "The car’s phone"))
	first.lists("Cleo’s phone: this phone", "The car’s phone: shut out · last seen just now")

	second.Online()
	second.See(in["sync.phase.shutOut"])
	second.nameMe("Dora")
	second.Reload() // the server takes the cookie away and says it only once: the phone remembers
	second.See(in["sync.phase.shutOut"])
	if second.cookie() != nil {
		t.Error("the phone that was shut out still has its cookie")
	}
	second.holds(in["me.name"], "Dora")
	if second.See("not yet on the server"); strings.Contains(server.kept(), "Dora\"") {
		t.Error("a phone that is shut out has sent something")
	}
	copied := second.savedCopy()
	if !strings.Contains(copied, `"Cleo"`) || !strings.Contains(copied, `"Dora"`) {
		t.Errorf("the copy lacks what the phone has: %s", copied)
	}

	// Paired anew it is somebody new, and brings what it wrote meanwhile.
	second.Go("settings/phones")
	second.looksWell("phones when shut out")
	second.pairAs(server.pairingCode(), "Dora’s second")
	second.lists("Dora’s second: this phone", "Cleo’s phone: last seen just now", "The car’s phone: shut out · last seen just now")
	second.Eventually("what it wrote meanwhile on the server", func() bool { return strings.Contains(server.kept(), `"Dora"`) })
	second.Go("settings")
	second.See(in["sync.phase.even"])
	second.Find("link", fill(in["book.clashes"], "n", "0"))
	second.holds(in["me.phone"], "Dora’s second")
	second.Go("settings/phones")

	// With no server in reach the page says so, and comes back with it.
	server.Stop()
	second.Allow("ERR_CONNECTION_REFUSED")
	second.Go("settings")
	second.Go("settings/phones")
	second.See(in["phones.alone"])
	server.Start("-login")
	second.Online()
	second.lists("Dora’s second: this phone", "Cleo’s phone: last seen just now", "The car’s phone: shut out · last seen just now")
}

// A phone that has a book of its own and is paired with a team's server opens that one separately, as the same phone.
func TestAPairedPhoneWithABookOfItsOwn(t *testing.T) {
	server := TeamServer(StartServer(t), pastOfATyre...)
	in := words(t)
	server.Stop()
	server.Start("-login")
	p := openOutside(OpenBrowser(t), server)
	p.nameMe("Cleo")
	p.Go("settings/phones")
	p.pairAs(server.pairingCode(), "Cleo’s phone")
	p.See(in["pair.done"])
	p.See(in["phones.other"])
	p.Go("settings")
	p.See(in["book.other"])
	p.Tap("button", in["book.openOther"])
	p.See(in["sync.phase.even"])
	p.nameMe("Cleo") // in this book too
	p.Go("settings/phones")
	p.Eventually("one line for this phone", func() bool {
		lines := p.phoneLines()
		return len(lines) == 3 && lines[0] == "Cleo’s phone: this phone"
	})
	if p.cookie() == nil || strings.Contains(server.kept(), `"label":"Phone"`) {
		t.Error("this phone is in the team's book twice")
	}
}

func TestNothingJumpsWhileThePageOfPhonesOpens(t *testing.T) {
	server := TeamServer(StartServer(t))
	in := words(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL() + "#/settings")
	p.See(in["sync.phase.even"])
	p.installed()
	for _, size := range []Size{Phone, Desk} {
		p := browser.Open("about:blank", shifts)
		p.Resize(size)
		p.do(chromedp.Navigate(server.URL() + "#/settings/phones"))
		p.See("Ana’s phone")
		if jumped := Eval[float64](p, "globalThis.jumped"); jumped > 0.01 {
			t.Errorf("at %s it jumps by %v: %v", size.Name, jumped, Eval[[]string](p, "globalThis.jumps"))
		}
	}
}

func TestWithoutStorageThePageOfPhonesSaysWhyItIsEmpty(t *testing.T) {
	p := OpenBrowser(t).Open(StartServer(t).URL()+"#/settings/phones", `Object.defineProperty(globalThis, "indexedDB", {
		get() { throw new DOMException("storage is off", "SecurityError"); }})`)
	in := words(t)
	p.Eventually("the reason on the page itself", func() bool {
		return strings.Contains(Eval[string](p, `document.querySelector("main .phones")?.innerText ?? ""`), in["status.cannot.refused"])
	})
	p.NotSee(in["trouble.title"])
}
