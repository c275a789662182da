package journey

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// run runs another command of the binary beside the server, on its data.
func (s *Server) run(arguments ...string) string {
	s.t.Helper()
	command := append([]string{arguments[0], "-data", s.data}, arguments[1:]...)
	said, err := exec.Command(s.binary, command...).CombinedOutput()
	if err != nil {
		s.t.Fatalf("rimside %s: %v: %s", strings.Join(command, " "), err, said)
	}
	return string(said)
}

var codeLine = regexp.MustCompile(`\d{3} \d{3}`)

// pairingCode is a code as the terminal shows it.
func (s *Server) pairingCode() string {
	s.t.Helper()
	code := codeLine.FindString(s.run("pair"))
	if code == "" {
		s.t.Fatal("rimside pair shows no code")
	}
	return code
}

// kept is everything that a server has which lets nobody in without being paired.
func (s *Server) kept() string {
	s.t.Helper()
	file := filepath.Join(s.t.TempDir(), "book.ndjson")
	s.run("export", file)
	text, err := os.ReadFile(file)
	if err != nil {
		s.t.Fatal(err)
	}
	return string(text)
}

// openOutside opens the app as a phone that is not paired: the browser notes each refusal in its console.
func openOutside(browser *Browser, server *Server) *Page {
	p := browser.OpenApart(server.URL() + "#/settings")
	p.Allow("status of 401", "status of 403")
	return p
}

// pairAs types a code and a name into the form.
func (p *Page) pairAs(code, label string) {
	p.t.Helper()
	in := words(p.t)
	p.Type(in["pair.code"], code)
	p.Type(in["pair.label"], label)
	p.Tap("button", in["pair.title"])
}

// phoneLines are the phones on the page, as they are read from top to bottom.
func (p *Page) phoneLines() []string {
	return Eval[[]string](p, `[...document.querySelectorAll("rs-phone-line > p")].map((line) => [...line.children].map((each) => each.innerText).join(": "))`)
}

func (p *Page) lists(lines ...string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("the phones %q", lines), func() bool {
		return strings.Join(p.phoneLines(), "\n") == strings.Join(lines, "\n")
	})
}

func (p *Page) looksWell(where string) {
	p.t.Helper()
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide(where + " at " + size.Name)
	})
	p.fits(where)
	p.Shot(strings.ReplaceAll(where, " ", "-"))
}

// cookie is what a browser has been given to be known by.
func (p *Page) cookie() *network.Cookie {
	p.t.Helper()
	found, err := chromedp.Call(p.ctx, network.GetCookies, network.GetCookiesParams{})
	if err != nil {
		p.t.Fatal(err)
	}
	for _, each := range found.Cookies {
		if strings.HasPrefix(each.Name, "rs-") {
			return each
		}
	}
	return nil
}

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

func (p *Page) figures() string {
	return strings.TrimSpace(Eval[string](p, `document.querySelector(".figures")?.innerText ?? ""`))
}

// keeps is what a page has put anywhere on the phone.
func (p *Page) keeps() string {
	p.t.Helper()
	return Eval[string](p, `(async () => {
		const held = [JSON.stringify(localStorage), JSON.stringify(sessionStorage), location.href];
		for (const {name} of await indexedDB.databases()) {
			const db = await new Promise((resolve) => { indexedDB.open(name).onsuccess = (event) => resolve(event.target.result); });
			for (const store of db.objectStoreNames) {
				const rows = await new Promise((resolve) => { db.transaction(store).objectStore(store).getAll().onsuccess = (event) => resolve(event.target.result); });
				held.push(JSON.stringify(rows));
			}
			db.close();
		}
		return held.join("\n");
	})()`)
}

// savedCopy is the file that "Save a copy" hands over.
func (p *Page) savedCopy() string {
	p.t.Helper()
	in := words(p.t)
	Eval[bool](p, `(() => {
		const make = URL.createObjectURL;
		URL.createObjectURL = (file) => { file.text().then((text) => { globalThis.handed = text; }); return make.call(URL, file); };
		return true;
	})()`)
	p.Tap("button", in["copies.save"])
	p.Eventually("the copy", func() bool { return Eval[bool](p, `"handed" in globalThis`) })
	return Eval[string](p, "globalThis.handed")
}

// nasty are names that would do harm if they were ever taken for more than text.
var nasty = []deed{
	{id: "n1", rec: "evil person", kind: "person", ago: time.Hour, by: "Ana", set: members{"name": `<script>hurt()</script>Pia`}},
	{id: "n2", rec: "evil bike", kind: "bike", ago: time.Hour, by: "Ana", set: members{"name": `<img src=x onerror=hurt()>`, "rider": hexOf("evil person")}},
	{id: "n3", rec: "evil wheel", kind: "wheel", ago: time.Hour, by: "Ana", set: members{"name": `"><svg onload=hurt()>`}},
	{id: "n4", rec: "evil tyre", kind: "tyre", ago: time.Hour, by: "Ana", set: members{"name": `<iframe srcdoc="<script>parent.hurt()</script>">`, "note": `<a href="javascript:hurt()">`}},
	{id: "n5", rec: "evil pump", kind: "pump", ago: time.Hour, by: "Ana", set: members{"name": `javascript:hurt()//<b>`}},
	{id: "n6", rec: "evil phone", kind: "device", ago: time.Hour, by: "Ana", set: members{"label": `<img src=x onerror=hurt()>`}},
}

func TestABookFullOfScriptsIsShownAsText(t *testing.T) {
	server := TeamServer(StartServer(t), nasty...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/settings", "globalThis.hurt = () => { globalThis.hurts = true; };")
	p.See(in["sync.phase.even"])
	tags := []string{"<script>hurt()", "<img src=x", `"><svg onload`, "<iframe srcdoc", "javascript:hurt()"}
	pages := map[string][]string{
		"settings/phones":  {"<img src=x onerror=hurt()>"},
		"settings/records": tags,
		"settings":         nil,
		"wheels":           tags,
		"pressure":         {"<img src=x"},
		"settings/history/" + hexOf("evil phone"): {"<img src=x onerror=hurt()>"},
		"settings/history/" + hexOf("evil tyre"):  {"<iframe srcdoc", `<a href="javascript:hurt()">`},
		"settings/history/" + hexOf("evil bike"):  {"<img src=x", "<script>hurt()"},
	}
	for page, texts := range pages {
		p.Go(page)
		for _, text := range texts {
			p.seeOrRead(text)
		}
		p.harmless(page)
	}
	p.Go("settings")
	p.Eventually("who uses the phone to be offered as text", func() bool {
		return strings.Contains(strings.Join(p.options(in["me.who"]), "\n"), "<script>hurt()</script>Pia")
	})
	p.Go("settings/phones")
	p.Tap("DisclosureTriangle", fill(in["phones.changeOf"], "name", "<img src=x onerror=hurt()>"))
	p.Tap("button", in["phones.shutOut"])
	p.See("<img src=x onerror=hurt()> is turned away at once")
	p.Tap("button", in["phones.forEver"])
	p.See(fill(in["phones.isOut"], "name", "<img src=x onerror=hurt()>"))
	p.harmless("phones after one was shut out")
}

// seeOrRead waits until a text stands on the page, in a field or in a list, folded away or not.
func (p *Page) seeOrRead(text string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("to find %q as text", text), func() bool {
		return strings.Contains(Eval[string](p, `document.body.textContent + [...document.querySelectorAll("input, textarea")].map((each) => each.value).join("\n")`), text)
	})
}

// harmless fails when a text of the book has become part of the page.
func (p *Page) harmless(where string) {
	p.t.Helper()
	found := Eval[string](p, `[...document.querySelectorAll("img[src=x], iframe, [onerror], [onload], [srcdoc], a[href^='javascript:'], main script")].map((each) => each.outerHTML).join("\n")`)
	if found != "" || Eval[bool](p, "globalThis.hurts === true") {
		p.t.Errorf("on %s a text of the book became part of the page: %s", where, found)
	}
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
