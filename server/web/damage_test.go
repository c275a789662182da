package web_test

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"rimside/server/web"
)

// A damaged server answers 5xx: a phone must not take that for a fault of its ops, and never drop them for it.
func TestADamagedServerIsNoFaultOfAnOp(t *testing.T) {
	dir := t.TempDir()
	t.Run("before", func(t *testing.T) {
		book, blobs := newBook(t, dir)
		var ops []string
		for n := range 400 {
			ops = append(ops, opText(id(n+1), `{"name":"`+strings.Repeat("x", 300)+`"}`, ""))
		}
		start(t, web.Options{Book: book, Blobs: blobs}).push(t, bookA, ops...)
	})
	overwritePages(t, dir)
	book, blobs := newBook(t, dir)
	server := start(t, web.Options{Book: book, Blobs: blobs})
	play(t, []scenario{
		{name: "push", server: server, method: "POST", path: "/api/ops", body: pushText(bookA, opText(id(9999), `{}`, ""), opText(id(1), `{}`, "")), status: 500, json: true, has: []string{`"damaged"`}},
		{name: "pull", server: server, path: "/api/ops", status: 500, json: true, has: []string{`"damaged"`}},
		{name: "health", server: server, path: "/api/health", status: 200, has: []string{`"ok":false`, `"state":"damaged"`}},
	})
}

// overwritePages puts a text over many pages.
func overwritePages(t *testing.T, dir string) {
	t.Helper()
	path := filepath.Join(dir, "rimside.sqlite")
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	// The schema and the small tables are in the first half, what is read at a start is at the end.
	const page = 4096
	from, to := len(content)/(2*page)*page, len(content)/page*9/10*page
	copy(content[from:to], bytes.Repeat([]byte("no page "), (to-from)/8))
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestWhatTheServerCanIsNamed(t *testing.T) {
	server := start(t, web.Options{})
	var about struct{ Can []string }
	server.json(t, scenario{path: "/api/book"}, &about)
	if want := []string{"health", "page_hash", "wanted", "parts", "erasures", "access"}; !slices.Equal(about.Can, want) {
		t.Errorf("the server can %q, want %q", about.Can, want)
	}
	ops := []string{opText(id(1), `{"name":"Ochre"}`, ""), opText(id(2), `{ "name" : "Blue" }`, "")}
	server.push(t, bookA, ops...)
	var page struct{ Hash string }
	server.json(t, scenario{path: "/api/ops"}, &page)
	one, two := sha256.Sum256([]byte(ops[0])), sha256.Sum256([]byte(ops[1]))
	if want := sha256.Sum256(append(one[:], two[:]...)); page.Hash != hex.EncodeToString(want[:]) {
		t.Errorf("the page's hash is %s, want %x", page.Hash, want)
	}
	photo := strings.Repeat("ab", 32)
	server.push(t, bookA, opText(id(3), `{"sha256":"`+photo+`"}`, ""))
	play(t, []scenario{{name: "wanted", server: server, path: "/api/wanted", status: 200, has: []string{`{"ops":[],"photos":["` + photo + `"]}`}}})
}

// A page goes out compressed to whoever takes that, and is the same page.
func TestAPageIsCompressed(t *testing.T) {
	server := start(t, web.Options{})
	var ops []string
	for n := range 400 {
		ops = append(ops, opText(id(n+1), fmt.Sprintf(`{"measured_mm":%d.5}`, 20+n%40), `,"author":"","device":"`+id(7)+`","schema":1`))
	}
	server.push(t, bookA, ops...)
	_, plain := server.pull(t, "limit=500")
	response, packed := exchange(t, server.addr, scenario{server: server, path: "/api/ops?limit=500", headers: map[string]string{"Accept-Encoding": "gzip, deflate, br"}}.request())
	if response.Header.Get("Content-Encoding") != "gzip" || response.Header.Get("Vary") != "Accept-Encoding" {
		t.Fatalf("the headers are %v", response.Header)
	}
	reader, err := gzip.NewReader(strings.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(reader)
	if err != nil {
		t.Fatal(err)
	}
	if withoutNow(t, string(body)) != withoutNow(t, plain) {
		t.Error("the page is another one when it is compressed")
	}
	if t.Logf("%d bytes became %d", len(plain), len(packed)); len(packed)*4 > len(plain) {
		t.Errorf("%d bytes became %d", len(plain), len(packed))
	}
}

func withoutNow(t *testing.T, body string) string {
	t.Helper()
	var page map[string]json.RawMessage
	if err := json.Unmarshal([]byte(body), &page); err != nil {
		t.Fatal(err)
	}
	delete(page, "now")
	out, err := json.Marshal(page)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// A photo comes in parts, with breaks and overlaps; what came before a break counts.
func TestAPhotoInParts(t *testing.T) {
	server := start(t, web.Options{})
	photo := "\xff\xd8\xff\xe0" + strings.Repeat("a photo of a rim. ", 4000)
	at := "/api/blobs/" + sumOf(photo)
	add := func(from, to, size int) scenario {
		return scenario{server: server, method: "PATCH", path: fmt.Sprintf("%s/part?from=%d&size=%d", at, from, size), body: photo[from:to]}
	}
	held := func(s scenario, have int, whole bool) {
		t.Helper()
		var answer struct {
			Have  int
			Whole bool
		}
		if server.json(t, s, &answer); answer.Have != have || answer.Whole != whole {
			t.Errorf("%s %s: %+v, want %d, %v", s.method, s.path, answer, have, whole)
		}
	}
	held(scenario{server: server, path: at + "/part"}, 0, false)
	held(add(0, 1000, len(photo)), 1000, false)
	held(add(5000, 6000, len(photo)), 1000, false) // a gap
	held(add(500, 3000, len(photo)), 3000, false)  // an overlap
	breakOff(t, server.addr, add(3000, len(photo), len(photo)).request(), 20000)
	var answer struct{ Have int }
	for deadline := time.Now().Add(10 * time.Second); answer.Have <= 3000 && time.Now().Before(deadline); {
		server.json(t, scenario{server: server, path: at + "/part"}, &answer)
	}
	if answer.Have <= 3000 || answer.Have >= len(photo) {
		t.Fatalf("after the break %d bytes are here", answer.Have)
	}
	held(add(answer.Have, len(photo), len(photo)), len(photo), true)
	held(scenario{server: server, path: at + "/part"}, len(photo), true)
	play(t, []scenario{
		{name: "the photo", server: server, path: at, status: 200, has: []string{photo}},
		{name: "of other bytes", server: server, method: "PATCH", path: "/api/blobs/" + strings.Repeat("cd", 32) + "/part?from=0&size=4", body: photo[:4], status: 422, json: true, has: []string{`"blob_wrong_hash"`}},
		{name: "which then begins anew", server: server, path: "/api/blobs/" + strings.Repeat("cd", 32) + "/part", status: 200, has: []string{`{"have":0,"whole":false}`}},
		{name: "no size", server: server, method: "PATCH", path: at + "/part?from=0", status: 422, json: true},
		{name: "too large", server: server, method: "PATCH", path: at + "/part?from=0&size=99999999", status: 422, json: true},
	})
}

// breakOff sends so many bytes of a request and cuts the connection.
func breakOff(t *testing.T, addr, request string, bytes int) {
	t.Helper()
	connection, err := net.Dial("tcp", addr)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.WriteString(connection, request[:bytes]); err != nil {
		t.Fatal(err)
	}
	if err := connection.Close(); err != nil {
		t.Fatal(err)
	}
}
