package journey

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"

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
