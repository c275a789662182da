package web_test

import (
	"encoding/json"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"rimside/server/access"
	"rimside/server/web"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

// mustPair is a server that everybody must be paired with.
var mustPair = web.Access{Policy: access.Policy{Login: true}}

// guarded is a server that everybody must be paired with, and its book.
type guarded struct {
	*running
	book *sqlite.Book
}

// phone is a paired device and what it sends along.
type phone struct{ Device, Book, cookie string }

func (p phone) headers() map[string]string { return map[string]string{"Cookie": p.cookie} }

func (p phone) name() string { name, _, _ := strings.Cut(p.cookie, "="); return name }

// startLogin runs a server that everybody must be paired with.
func startLogin(t *testing.T, options web.Options) *guarded {
	t.Helper()
	if options.Book == nil {
		options.Book, options.Blobs = newBook(t, t.TempDir())
	}
	options.Access.Policy.Login = true
	return &guarded{start(t, options), options.Book}
}

// code makes a pairing code known.
func (g *guarded) code(t *testing.T, code string) string {
	t.Helper()
	if err := g.book.AddCode(t.Context(), code, time.Now().Add(sqlite.CodeTime), web.MostCodes); err != nil {
		t.Fatal(err)
	}
	return code
}

// pair lets a phone in, as the device that it says it is.
func (g *guarded) pair(t *testing.T, label, device string) phone {
	t.Helper()
	return g.pairBy(t, label, device, nil)
}

// pairAgain pairs a phone that still has its session.
func (g *guarded) pairAgain(t *testing.T, p phone, label string) phone {
	t.Helper()
	return g.pairBy(t, label, p.Device, p.headers())
}

func (g *guarded) pairBy(t *testing.T, label, device string, headers map[string]string) phone {
	t.Helper()
	body := `{"code":"` + g.code(t, "123456") + `","label":"` + label + `","device":"` + device + `"}`
	response, text := exchange(t, g.addr, scenario{server: g.running, method: "POST", path: "/api/pair", headers: headers, body: body}.request())
	cookies := response.Cookies()
	if response.StatusCode != http.StatusOK || len(cookies) != 1 {
		t.Fatalf("pairing: status %d, %s", response.StatusCode, text)
	}
	checkProtection(t, response)
	var p phone
	if err := json.Unmarshal([]byte(text), &p); err != nil || !oplog.IsID(p.Device) {
		t.Fatalf("pairing answered %s (%v)", text, err)
	}
	p.cookie = cookies[0].Name + "=" + cookies[0].Value
	return p
}

// push sends ops from a phone; they must be taken.
func (g *guarded) push(t *testing.T, from phone, book string, ops ...string) {
	t.Helper()
	var answer struct{ Rejected []any }
	g.json(t, scenario{method: "POST", path: "/api/ops", body: pushText(book, ops...), headers: from.headers()}, &answer)
	if len(answer.Rejected) > 0 {
		t.Fatalf("rejected: %v", answer.Rejected)
	}
}

// devices is the list that a phone sees.
func (g *guarded) devices(t *testing.T, to phone) map[string]shownDevice {
	t.Helper()
	var answer struct{ Devices []shownDevice }
	g.json(t, scenario{path: "/api/devices", headers: to.headers()}, &answer)
	found := map[string]shownDevice{}
	for _, each := range answer.Devices {
		found[each.ID] = each
	}
	return found
}

type shownDevice struct {
	ID, Label string
	PairedAt  int64 `json:"paired_at"`
	SeenAt    int64 `json:"seen_at"`
	Revoked   bool
	Here      bool
}

// handlerOf makes the whole server, to be called without a network.
func handlerOf(t testing.TB, options web.Options) http.Handler {
	t.Helper()
	if options.Book == nil {
		options.Book, options.Blobs = newBook(t, t.TempDir())
	}
	if options.Listen == nil {
		options.Listen = &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 7467}
	}
	options.Dist, options.Calculations, options.Log = builtApp(), calculations, slog.New(slog.DiscardHandler)
	handler, err := web.New(t.Context(), options)
	if err != nil {
		t.Fatal(err)
	}
	return handler
}

// deviceOp is an op on a device's record.
func deviceOp(n int, device, set string) string {
	return strings.NewReplacer(`"kind":"tyre"`, `"kind":"device"`, "7ec00000000000000000000000000000", device).Replace(opText(id(n), set, ""))
}
