package web_test

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"testing"
	"time"

	"rimside/server/web"
	"rimside/store/oplog"
)

const (
	bookA = "b00c0000000000000000000000000001"
	bookB = "b00c0000000000000000000000000002"
)

// opText is an op as a phone would send it; more goes before its end.
func opText(id, set, more string) string {
	return `{"id":"` + id + `","at":1790000000000,"kind":"tyre","rec":"7ec00000000000000000000000000000","set":` + set + more + `}`
}

func id(n int) string { return fmt.Sprintf("%032x", n) }

func pushText(book string, ops ...string) string {
	return `{"book":"` + book + `","log":"","ops":[` + strings.Join(ops, ",") + `]}`
}

// push sends ops and reads the answer, which must be 200.
func (r *running) push(t *testing.T, book string, ops ...string) (answer struct {
	Book, Log     string
	Stored, Known []string
	Rejected      []struct{ ID, Code, Message string }
	Now           int64
}) {
	t.Helper()
	r.json(t, scenario{method: "POST", path: "/api/ops", body: pushText(book, ops...)}, &answer)
	return answer
}

type page struct {
	Book, Log string
	Ops       []json.RawMessage
	Via       []struct {
		ID, Device string
		ReceivedAt int64 `json:"received_at"`
	}
	Next, Count, Now int64
	More             bool
	Digest           string
}

func (r *running) pull(t *testing.T, query string) (p page, body string) {
	t.Helper()
	body = r.json(t, scenario{path: "/api/ops?" + query}, &p)
	return p, body
}

func (r *running) json(t *testing.T, s scenario, into any) string {
	t.Helper()
	s.server = r
	response, body := exchange(t, r.addr, s.request())
	checkProtection(t, response)
	if response.StatusCode != 200 || response.Header.Get("Cache-Control") != "no-store" {
		t.Fatalf("%s %s: status %d, %.300s", s.method, s.path, response.StatusCode, body)
	}
	if err := json.Unmarshal([]byte(body), into); err != nil {
		t.Fatalf("%v: %.300s", err, body)
	}
	return body
}

func TestOpsComeBackAsTheyCame(t *testing.T) {
	server := start(t, web.Options{Now: func() time.Time { return time.UnixMilli(1791111111111) }})
	odd := []string{
		opText(id(1), `{ "exact" : 9007199254740993 , "text":"<&>\u003c\ud83d\udeb2" }`, `, "glow":[1.50,{"x":null}],"schema":99`),
		opText(id(2), `{"select":1,"drop table":"'; --","__proto__":2}`, ""),
		"\n  " + opText(id(3), `{"large":"`+strings.Repeat("x", 1<<20)+`"}`, "") + "\t",
	}
	answer := server.push(t, bookA, odd...)
	if len(answer.Stored) != 3 || len(answer.Rejected) != 0 || answer.Book != bookA || !oplog.IsID(answer.Log) || answer.Now != 1791111111111 {
		t.Fatalf("%+v", answer)
	}
	p, body := server.pull(t, "")
	for i, want := range odd {
		if string(p.Ops[i]) != strings.TrimSpace(want) || !strings.Contains(body, strings.TrimSpace(want)) {
			t.Errorf("op %d came back as %.120s", i, p.Ops[i])
		}
	}
	var digest oplog.Digest
	for n := range 3 {
		digest.Toggle(id(n + 1))
	}
	if p.Count != 3 || p.Digest != digest.String() || p.More || p.Next != 3 || p.Via[0].ID != id(1) || p.Via[0].ReceivedAt == 0 {
		t.Errorf("%+v", p.Via)
	}
	if again := server.push(t, bookA, odd[1], odd[1]); len(again.Stored) != 0 || len(again.Known) == 0 || len(again.Rejected) != 0 {
		t.Errorf("the same again: %+v", again)
	}
}

func TestOnePoisonedOpAmongGoodOnes(t *testing.T) {
	server := start(t, web.Options{})
	server.push(t, bookA, opText(id(9), `{"x":1}`, ""))
	year3000 := strings.Replace(opText(id(3), `{}`, ""), "1790000000000", "32503680000000", 1)
	answer := server.push(t, bookA, opText(id(1), `{"x":1}`, ""), `{"id":7}`, year3000, opText(id(9), `{"x":2}`, ""), `"text"`, opText(id(2), `{"x":1}`, ""))
	if len(answer.Stored) != 2 {
		t.Errorf("the good ones must be stored: %+v", answer)
	}
	codes := map[string]string{}
	for _, each := range answer.Rejected {
		codes[each.Code] += each.ID
		if each.Message == "" {
			t.Errorf("rejected without a word: %+v", each)
		}
	}
	if len(answer.Rejected) != 4 || codes[oplog.AtOutOfRange] != id(3) || codes[oplog.OtherContent] != id(9) || codes[oplog.Malformed] != "" {
		t.Errorf("%+v", answer.Rejected)
	}
	if p, _ := server.pull(t, "since=1"); p.Count != 3 || len(p.Ops) != 2 {
		t.Errorf("rejected ops are outside count and log: %+v", p)
	}
}

func TestPullsGoPageByPage(t *testing.T) {
	server := start(t, web.Options{})
	if p, _ := server.pull(t, ""); p.Book != "" || len(p.Ops) != 0 || p.More || p.Count != 0 {
		t.Fatalf("an empty server: %+v", p)
	}
	var ops []string
	for n := range 7 {
		ops = append(ops, opText(id(n+1), `{"x":1}`, ""))
	}
	log := server.push(t, bookA, ops...).Log
	seen := map[string]bool{}
	for since, more := int64(0), true; more; {
		p, _ := server.pull(t, fmt.Sprintf("book=%s&log=%s&since=%d&limit=3", bookA, log, since))
		for _, raw := range p.Ops {
			op, fault := oplog.Parse(raw)
			if fault != nil || seen[op.ID] {
				t.Fatalf("%s %v", raw, fault)
			}
			seen[op.ID] = true
		}
		since, more = p.Next, p.More
	}
	if len(seen) != 7 {
		t.Errorf("%d ops arrived, want 7", len(seen))
	}
	if p, _ := server.pull(t, "log="+bookB+"&since=3"); len(p.Ops) != 0 || p.Log != log || p.Next != 0 {
		t.Errorf("an unknown log: %+v", p)
	}
	if p, _ := server.pull(t, "log="+log+"&since=99"); len(p.Ops) != 0 || p.Next != 7 || p.Count != 7 {
		t.Errorf("behind the end: %+v", p)
	}
}

func TestABookIsAdoptedOnceAndNoOtherTaken(t *testing.T) {
	server := start(t, web.Options{})
	server.push(t, bookA)
	var about struct {
		Book, Log, Server, Name, Digest, Version string
		Count, Now                               int64
	}
	server.json(t, scenario{path: "/api/book"}, &about)
	if about.Book != bookA || !oplog.IsID(about.Server) || about.Version == "" || len(about.Digest) != 64 || about.Now == 0 {
		t.Errorf("%+v", about)
	}
	foreign := []string{`"other_book"`, "another book"}
	play(t, []scenario{
		{name: "push", server: server, method: "POST", path: "/api/ops", body: pushText(bookB, opText(id(1), "{}", "")), status: 409, json: true, has: foreign},
		{name: "pull", server: server, path: "/api/ops?book=" + bookB, status: 409, json: true, has: foreign},
		{name: "import", server: server, method: "POST", path: "/api/import", body: `{"rimside":1,"book":"` + bookB + `"}` + "\n" + opText(id(1), "{}", "") + "\n", status: 409, json: true, has: foreign},
		{name: "nothing came in", server: server, path: "/api/ops", status: 200, has: []string{`"count":0`}},
	})
}

func TestBadPushesAndPulls(t *testing.T) {
	server := start(t, web.Options{})
	many := make([]string, oplog.MaxPush+1)
	for n := range many {
		many[n] = opText(id(n+1), "{}", "")
	}
	post := func(name, body string, status int, has ...string) scenario {
		return scenario{name: name, server: server, method: "POST", path: "/api/ops", body: body, status: status, json: true, has: has}
	}
	get := func(query string, status int, has ...string) scenario {
		return scenario{name: query, server: server, path: "/api/ops?" + query, status: status, json: true, has: has}
	}
	form := post("as a form", "{}", 415)
	form.headers = map[string]string{"Content-Type": "text/plain"}
	bomb := post("compressed", "\x1f\x8b\x08", 415, `"wrong_content_encoding"`)
	bomb.headers = map[string]string{"Content-Encoding": "gzip", "Content-Type": "application/json"}
	foreign := post("from another site", pushText(bookA), 403)
	foreign.headers = map[string]string{"Origin": "https://elsewhere.example", "Sec-Fetch-Site": "cross-site", "Content-Type": "application/json"}
	rebound := scenario{name: "another host", server: server, host: "evil.example:7467", path: "/api/ops", status: 421, json: true}
	reboundPush := post("a push to another host", pushText(bookA), 421)
	reboundPush.host = "evil.example"
	play(t, []scenario{
		form, bomb, foreign, rebound, reboundPush,
		post("nothing", "", 422, `"bad_request"`), post("not JSON", "{", 422), post("a list", "[]", 422), post("null", "null", 422), post("trailing", pushText(bookA)+"{}", 422),
		post("no book", `{"ops":[]}`, 422, `"field":"book"`), post("book by another case", `{"Book":"`+bookA+`","ops":[]}`, 422, `"field":"book"`),
		post("book too short", `{"book":"ab","ops":[]}`, 422, `"field":"book"`), post("log a number", `{"book":"`+bookA+`","log":7,"ops":[]}`, 422, `"field":"log"`),
		post("no ops", `{"book":"`+bookA+`"}`, 422, `"field":"ops"`), post("ops null", `{"book":"`+bookA+`","ops":null}`, 422, `"field":"ops"`),
		post("too many", pushText(bookA, many...), 422, `"too_many_ops"`, "500"),
		post("too large", pushText(bookA, strings.Repeat(" ", 9<<20)+"1"), 413, "8 MiB"),
		get("since=-1", 422, `"field":"since"`), get("since=x", 422), get("since=1e3", 422), get("limit=0", 422, `"field":"limit"`), get("limit=501", 422, "500"), get("book=ab", 422, `"field":"book"`),
		{name: "still empty", server: server, path: "/api/book", status: 200, has: []string{`"book":""`, `"count":0`}},
		{name: "DELETE", server: server, method: "DELETE", path: "/api/ops", status: 405, json: true, wantHeaders: map[string]string{"Allow": "GET, HEAD, POST"}},
	})
}

func TestExportAndImportCarryTheWholeLog(t *testing.T) {
	from, to := start(t, web.Options{}), start(t, web.Options{})
	ops := []string{opText(id(1), `{"exact":9007199254740993}`, ""), opText(id(2), `{"x":"ü"}`, `,"glow":1`)}
	from.push(t, bookA, ops...)
	response, file := exchange(t, from.addr, scenario{server: from, path: "/api/export"}.request())
	if want := `{"rimside":1,"book":"` + bookA + `"}` + "\n" + strings.Join(ops, "\n") + "\n"; response.StatusCode != 200 || file != want {
		t.Fatalf("%d\n%s\nwant\n%s", response.StatusCode, file, want)
	}
	if kind := response.Header.Get("Content-Type"); kind != "application/x-ndjson" {
		t.Errorf("Content-Type %q", kind)
	}
	for _, want := range []string{`"stored":["` + id(1) + `"`, `"known":["` + id(1) + `"`} {
		play(t, []scenario{{name: "import", server: to, method: "POST", path: "/api/import", body: file, status: 200, has: []string{want, `"rejected":[]`}}})
	}
	a, _ := from.pull(t, "")
	b, _ := to.pull(t, "")
	if a.Digest != b.Digest || a.Count != b.Count {
		t.Errorf("%+v and %+v differ", a, b)
	}
	play(t, []scenario{
		{name: "not ours", server: to, method: "POST", path: "/api/import", body: "dear diary\n", status: 422, json: true},
		{name: "empty", server: to, method: "POST", path: "/api/import", body: "", status: 422, json: true},
		{name: "compressed", server: to, method: "POST", path: "/api/import", headers: map[string]string{"Content-Encoding": "gzip"}, body: "\x1f\x8b", status: 415, json: true},
		{name: "a bad line", server: to, method: "POST", path: "/api/import", body: `{"rimside":1,"book":"` + bookA + `"}` + "\n{}\n" + opText(id(3), "{}", "") + "\n", status: 200, has: []string{id(3), "Line 2"}},
	})
}

func sumOf(body string) string {
	sum := sha256.Sum256([]byte(body))
	return hex.EncodeToString(sum[:])
}

func TestBlobs(t *testing.T) {
	server := start(t, web.Options{})
	photo := "\xff\xd8\xff\xe0 a photo"
	sum, absent := sumOf(photo), sumOf("absent")
	large := "\xff\xd8\xff" + strings.Repeat("x", 4<<20)
	put := func(name, sum, body string, status int, has ...string) scenario {
		return scenario{name: name, server: server, method: "PUT", path: "/api/blobs/" + sum, body: body, status: status, json: status >= 400, has: has}
	}
	missing := func(name, body string, status int, has ...string) scenario {
		return scenario{name: name, server: server, method: "POST", path: "/api/blobs/missing", body: body, status: status, json: status >= 400, has: has}
	}
	play(t, []scenario{
		{name: "none yet", server: server, path: "/api/blobs/" + sum, status: 404, json: true},
		put("wrong hash", absent, photo, 422, `"blob_wrong_hash"`), put("wrong type", sumOf("<html>"), "<html>", 415, `"blob_wrong_type"`),
		put("too large", sumOf(large), large, 413), put("no hash", "abc", photo, 404), put("way out", "..%2f..%2fx", photo, 404),
		put("put", sum, photo, 204), put("put again", sum, photo, 204),
		{name: "get", server: server, path: "/api/blobs/" + sum, status: 200, has: []string{photo}, wantHeaders: map[string]string{"Content-Type": "image/jpeg", "Content-Length": strconv.Itoa(len(photo))}},
		{name: "head", server: server, method: "HEAD", path: "/api/blobs/" + sum, status: 200, hasNot: []string{"photo"}},
		missing("missing", `{"sha256":["`+sum+`","`+absent+`"]}`, 200, `{"missing":["`+absent+`"]}`),
		missing("none asked", `{"sha256":[]}`, 200, `{"missing":[]}`),
		missing("no list", `{}`, 422), missing("no hash", `{"sha256":["../x"]}`, 422), missing("not JSON", `x`, 422),
	})
}

func TestAnErasedPhotoIsGoneAndNotTakenAgain(t *testing.T) {
	server := start(t, web.Options{})
	photo := "\xff\xd8\xff\xe0 of a person"
	sum := sumOf(photo)
	server.push(t, bookA, opText(id(1), `{"sha256":"`+sum+`"}`, ""))
	play(t, []scenario{
		{name: "put", server: server, method: "PUT", path: "/api/blobs/" + sum, body: photo, status: 204},
		{name: "erase", server: server, method: "POST", path: "/api/ops", body: pushText(bookA, strings.Replace(opText(id(2), `{"kind":"photo"}`, ""), "tyre", "erase", 1)), status: 200},
		{name: "gone", server: server, path: "/api/blobs/" + sum, status: 404, json: true},
		{name: "not again", server: server, method: "PUT", path: "/api/blobs/" + sum, body: photo, status: 410, json: true, has: []string{`"erased"`}},
		{name: "no value left", server: server, path: "/api/ops", status: 200, hasNot: []string{sum}, has: []string{`"erased":true`}},
	})
}
