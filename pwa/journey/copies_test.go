package journey

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/chromedp"
)

// bringIn chooses a file of these lines, as a person does with the phone's own chooser.
func (p *Page) bringIn(lines ...members) {
	p.t.Helper()
	var text strings.Builder
	for _, line := range lines {
		bytes, err := json.Marshal(line)
		if err != nil {
			p.t.Fatal(err)
		}
		fmt.Fprintf(&text, "%s\n", bytes)
	}
	file := filepath.Join(p.t.TempDir(), "copy.txt")
	if err := os.WriteFile(file, []byte(text.String()), 0o600); err != nil {
		p.t.Fatal(err)
	}
	p.pickFile(file)
}

func (p *Page) pickFile(file string) {
	p.t.Helper()
	chooser := p.Find("button", words(p.t)["copies.bring"])
	params := dom.SetFileInputFilesParams{Files: []string{file}, BackendNodeID: chooser.backend}
	if _, err := chromedp.Call(p.ctx, dom.SetFileInputFiles, params); err != nil {
		p.t.Fatal(err)
	}
}

// copiedLongAgo has the phone's last copy be of 31 days ago.
const copiedLongAgo = `new Promise((resolve) => {
	indexedDB.open("rimside-" + localStorage.getItem("rimside-book")).onsuccess = ({target: {result: db}}) => {
		const tx = db.transaction("meta", "readwrite");
		tx.objectStore("meta").put({name: "copied", value: Date.now() - 31.5 * 86400000});
		tx.oncomplete = () => { db.close(); resolve(true) };
	};
})`

// A copy leaves one phone and comes into another that has never met a server.
func TestACopyGoesToAnotherPhone(t *testing.T) {
	server := TeamServer(StartServer(t), pastOfATyre...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings")
	p.See(in["sync.phase.even"])
	folder := t.TempDir()
	if _, err := chromedp.Call(p.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: folder,
	}); err != nil {
		t.Fatal(err)
	}
	p.Tap("button", in["copies.save"])
	name := "rimside-" + time.Now().UTC().Format("2006-01-02") + ".txt"
	p.See(fill(in["copies.saved"], "name", name))
	file := filepath.Join(folder, name)
	var text string
	p.Eventually("the copy on the disk", func() bool {
		bytes, err := os.ReadFile(file)
		text = string(bytes)
		return err == nil && strings.Contains(text, "Ochre 40s")
	})

	alone := StartServer(t) // hands out the app and is then gone
	q := OpenBrowser(t).Open(alone.URL() + "#/settings")
	q.installed()
	alone.Stop()
	q.Allow("ERR_CONNECTION_REFUSED")
	q.pickFile(file) // nothing was ever written there: the file's book is taken at once
	lines := strings.Count(strings.TrimSpace(text), "\n")
	q.See(fill(in["copies.read"], "fresh", fmt.Sprint(lines), "known", "0", "bad", "0"))
	q.NotSee(in["copies.otherBook"])
	q.Shot("copies-brought")
	q.pickFile(file)
	q.See(fill(in["copies.read"], "fresh", "0", "known", fmt.Sprint(lines), "bad", "0"))
	q.bringIn(members{"rimside": 1, "book": strings.Repeat("c", 32)}) // now there is something: a person chooses
	q.See(in["copies.otherBook"])
	q.Axe()
	q.Shot("copies-other-book")
	q.NotSee("days ago")
	Eval[bool](q, copiedLongAgo)
	q.Reload()
	q.See("31 days ago") // the last copy outside this phone
	q.Axe()
	q.Shot("copies-reminder")
	q.Tap("button", in["copies.save"])
	q.NotSee("31 days ago")
	q.Go("settings/records")
	q.Find("link", "Ochre 40s")
}

func TestAFileThatIsNoCopyIsToldSo(t *testing.T) {
	server := TeamServer(StartServer(t))
	in := words(t)
	p := OpenBrowser(t).Open(server.URL() + "#/settings")
	p.See(in["sync.phase.even"])
	p.bringIn(members{"other": 1})
	p.See(in["copies.notOurs"])
	p.bringIn(members{"rimside": 2, "book": teamBook})
	p.See(in["copies.newer"])
	good := deed{id: "n", rec: "tyre", kind: "tyre", set: members{"name": "Ochre 40s"}}.op()
	early := deed{id: "e", rec: "tyre", kind: "tyre", set: members{}, others: members{"at": 7}}.op()
	p.bringIn(members{"rimside": 1, "book": teamBook}, good, early, members{"id": "x"})
	p.See(fill(in["copies.read"], "fresh", "1", "known", "0", "bad", "2"))
	p.See(fill(in["copies.badLine"], "line", "3", "reason", in["refused.at_out_of_range"]))
	p.See(fill(in["copies.badLine"], "line", "4", "reason", in["refused.op_malformed"]))
	p.Axe()
	p.ShotNow("copies-bad-lines")
}

func TestACopyGoesThroughTheShareSheet(t *testing.T) {
	server := TeamServer(StartServer(t))
	in := words(t)
	play := func(share string) *Page {
		return OpenBrowser(t).Open(server.URL()+"#/settings", `
			Navigator.prototype.canShare = (what) => what.files?.length === 1;
			Navigator.prototype.share = `+share)
	}
	p := play("async (what) => void (globalThis.shared = await what.files[0].text())")
	p.See(in["sync.phase.even"])
	p.Tap("button", in["copies.save"])
	p.See(in["copies.shared"])
	if shared := Eval[string](p, "globalThis.shared"); !strings.HasPrefix(shared, `{"rimside":1,"book":"`+teamBook) || !strings.Contains(shared, `"Ana"`) {
		t.Errorf("shared was %s", shared)
	}
	p = play(`async () => { throw new DOMException("", "AbortError") }`)
	p.See(in["sync.phase.even"])
	p.Tap("button", in["copies.save"])
	p.See(in["copies.kept"])
}
