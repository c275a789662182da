package journey

import (
	"testing"

	"github.com/chromedp/chromedp"
)

func TestWithoutWASMTheServerCalculates(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t, chromedp.Flag("js-flags", "--jitless"))
	in := words(t)
	p := browser.Open(server.URL())
	p.See(in["outage.server"])
	p.See(in["outage.saved"])
	p.Axe()
	p.Shot("outage-server")
	p.installed()
	server.Stop()
	p.Allow(offline)
	p.Reload()
	p.See(in["outage.none"])
	p.See(in["outage.saved"])
	p.Type(in["field.rider"], "66")
	p.See(in["status.saved"])
	p.saved("pressure")
}

func TestWithoutWorkersTheServerCalculates(t *testing.T) {
	server := StartServer(t)
	p := OpenBrowser(t).Open(server.URL(), "globalThis.Worker = class { constructor() { throw new Error('no workers here'); } }")
	p.See(words(t)["outage.server"])
}

func TestWithoutIndexedDBTheSumsStillWork(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL(), `Object.defineProperty(globalThis, "indexedDB", {
		get() { throw new DOMException("storage is off", "SecurityError"); }})`)
	p.See(in["status.cannot.refused"])
	p.See(in["status.works.sums"])
	p.EachLook(func(size Size, scheme string) {
		if !Eval[bool](p, `(() => { const box = document.querySelector("rs-status").getBoundingClientRect();
			const hit = document.elementFromPoint(box.left + box.width / 2, box.bottom - 4);
			return box.top > 0 && hit !== null && hit.closest("rs-status") !== null; })()`) {
			t.Errorf("at %s, %s: that nothing is saved is out of sight", size.Name, scheme)
		}
	})
	p.Type(in["field.rider"], "70")
	p.Tap("link", in["place.checks"])
	p.Tap("link", in["place.pressure"])
	p.Eventually("what was typed, for as long as the page is open", func() bool { return p.Value(in["field.rider"]) == "70" })
	p.Axe()
	p.Shot("storage-refused")
}

func TestFullStorageIsTold(t *testing.T) {
	server := StartServer(t)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL(), `IDBObjectStore.prototype.put = function() {
		throw new DOMException("no room", "QuotaExceededError"); }`)
	p.Type(in["field.rider"], "70")
	p.See(in["status.cannot.full"])
}

func TestAFaultIsShownWithDetailsToCopy(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.Allow("the chain fell off")
	Eval[bool](p, "setTimeout(() => { throw new Error('the chain fell off'); }), true")
	p.See(in["trouble.title"])
	p.Tap("DisclosureTriangle", in["trouble.details"])
	p.See("the chain fell off")
	p.Tap("button", in["trouble.copy"])
	p.Eventually("to be told about copying", func() bool {
		return len(p.matching("StaticText", in["trouble.copied"])) > 0 || len(p.matching("StaticText", in["trouble.marked"])) > 0
	})
	p.Axe()
	p.Shot("trouble")
	p.Tap("button", in["trouble.close"])
	p.NotSee(in["trouble.title"])
}
