package journey

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
)

// A browser that ran short of space has thrown all away that the app kept. Opened again, the phone takes the book from the server,
// and what was set stands there as before.
func TestEvictedStorageComesBackFromTheServer(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	p := OpenBrowser(t).Open(server.URL())
	p.firstAnswers()
	p.Tap("button", in["set.both"])
	p.See(in["set.done"])
	p.onServer(server, `"pressure_set"`)
	if _, err := chromedp.Call(p.ctx, storage.ClearDataForOrigin, storage.ClearDataForOriginParams{Origin: strings.TrimSuffix(server.URL(), "/"), StorageTypes: "all"}); err != nil {
		t.Fatal(err)
	}
	p.Reload()
	p.number(in["side.front"])
	p.says(in["side.front"], in["act.unread"]) // what was set at home is known again
	p.See("last synced")
}
