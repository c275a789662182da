package journey

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// oldPhone gives a page of the app's address the database and the memory that a phone with the app of before has. The app
// itself does not run there yet.
func (p *Page) oldPhone(file string) {
	p.t.Helper()
	text, err := os.ReadFile(filepath.Join(moduleRoot(p.t), "pwa", "src", "log", "testdata", file))
	if err != nil {
		p.t.Fatal(err)
	}
	var dump json.RawMessage
	if err := json.Unmarshal(text, &dump); err != nil {
		p.t.Fatal(err)
	}
	Eval[bool](p, `new Promise((resolve, reject) => {
		const dump = `+string(dump)+`;
		localStorage.setItem("rimside-book", dump.name.replace("rimside-", ""));
		const request = indexedDB.open(dump.name, dump.version);
		request.onerror = () => reject(request.error);
		request.onupgradeneeded = () => {
			for (const [name, { keyPath, indexes, rows }] of Object.entries(dump.stores)) {
				const store = request.result.createObjectStore(name, { keyPath });
				for (const [index, path] of Object.entries(indexes)) store.createIndex(index, path);
				for (const row of rows) store.put(row);
			}
		};
		request.onsuccess = () => (request.result.close(), resolve(true));
	})`)
}

// A phone that was left in the middle of everything by the app of before goes on where it was: a question of Pressure with
// something in it that is no number, a walk-around just begun, a trip with three steps done, a width that nobody could ride.
func TestOldPhoneGoesOn(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "version.json")
	p.oldPhone("v2.json")
	p.Allow("favicon.ico") // the bare file has none
	p.do(chromedp.Navigate(server.URL() + "#/pressure/setup"))
	p.holds(in["field.rider"], "72.5")
	p.holds(in["field.bike"], "nine")
	p.Go("checks")
	p.tap(p.link(strings.Split(in["checks.goOn"], "{")[0]))
	p.Tap("button", in["checks.back"])
	p.See("! ride with care")
	p.Go("pressure")
	p.unfold("2 more reasons")
	p.See("lever is loose")
	p.Go("packing")
	p.tap(p.link("Island"))
	p.See("3 of ")
	p.Go("wheels/" + hexOf("Ochre f"))
	p.holds(in["recField.inner_mm"], "240")
	p.onServer(server, "Island") // and what no server had yet goes to one
	p.onServer(server, "lever is loose")
	if held := server.Export(); strings.Count(held, "\n") != 19 {
		t.Errorf("the server has\n%s", held)
	}
}
