package journey

import (
	"bytes"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"net/http"
	"strings"
	"time"
)

// members are what an op sets, or any other part of it.
type members map[string]any

// deed is an op that somebody wrote on a phone that this test does not play.
type deed struct {
	id     string
	rec    string
	kind   string
	ago    time.Duration
	by     string // "Ana" stands for her record and her phone's
	set    members
	others members // further members
}

// hexOf makes an id that can be told from others in a message.
func hexOf(name string) string {
	return fmt.Sprintf("%-32.32s", hex.EncodeToString([]byte(name))+strings.Repeat("0", 32))
}

// teamBook is the book of the invented team.
var teamBook = hexOf("team")

func (d deed) op() members {
	op := members{
		"id": hexOf(d.id), "rec": hexOf(d.rec), "kind": d.kind, "at": time.Now().Add(-d.ago).UnixMilli(), "set": d.set, "schema": 1,
		"author": "", "device": "",
	}
	if d.by != "" {
		op["author"], op["device"] = hexOf(d.by), hexOf(d.by+"'s phone")
	}
	maps.Copy(op, d.others)
	return op
}

// replacing says which op each field of an op was written over.
func replacing(id string, names ...string) members {
	bases := map[string][]string{}
	for _, name := range names {
		bases[name] = []string{hexOf(id)}
	}
	return members{"bases": bases}
}

// knowing says which ops a delete had seen.
func knowing(ids ...string) members {
	var seen []string
	for _, id := range ids {
		seen = append(seen, hexOf(id))
	}
	return members{"seen": seen}
}

// team is who wrote what the tests read.
var team = []deed{
	{id: "a1", rec: "Ana", kind: "person", ago: 48 * time.Hour, by: "Ana", set: members{"name": "Ana"}},
	{id: "b1", rec: "Ben", kind: "person", ago: 48 * time.Hour, by: "Ben", set: members{"name": "Ben"}},
	{id: "p1", rec: "Ana's phone", kind: "device", ago: 48 * time.Hour, by: "Ana", set: members{"label": "Ana’s phone"}},
	{id: "p2", rec: "Ben's phone", kind: "device", ago: 48 * time.Hour, by: "Ben", set: members{"label": "Ben’s phone"}},
}

// Push brings entries to the server, as a phone of the team would.
func (s *Server) Push(entries ...deed) {
	s.t.Helper()
	var ops []members
	for _, each := range entries {
		ops = append(ops, each.op())
	}
	s.push(teamBook, ops)
}

func (s *Server) push(book string, ops []members) {
	s.t.Helper()
	body, err := json.Marshal(members{"book": book, "log": "", "ops": ops})
	if err != nil {
		s.t.Fatal(err)
	}
	answer, err := http.Post(s.URL()+"api/ops", "application/json", bytes.NewReader(body))
	if err != nil {
		s.t.Fatal(err)
	}
	defer answer.Body.Close()
	said, _ := io.ReadAll(answer.Body)
	var read struct{ Rejected []any }
	if json.Unmarshal(said, &read) != nil || answer.StatusCode != http.StatusOK || len(read.Rejected) > 0 {
		s.t.Fatalf("pushing: status %d: %s", answer.StatusCode, said)
	}
}

// Export is everything the server has.
func (s *Server) Export() string {
	s.t.Helper()
	answer, err := http.Get(s.URL() + "api/export")
	if err != nil {
		s.t.Fatal(err)
	}
	defer answer.Body.Close()
	said, err := io.ReadAll(answer.Body)
	if err != nil {
		s.t.Fatal(err)
	}
	return string(said)
}

// TeamServer is a server with the team's book.
func TeamServer(s *Server, entries ...deed) *Server {
	s.t.Helper()
	s.Push(append(team, entries...)...)
	return s
}

// Online tells the page that the network is back, which a stopped server that starts again does not.
func (p *Page) Online() {
	p.t.Helper()
	Eval[bool](p, `dispatchEvent(new Event("online"))`)
}

// spaced makes a name of the accessibility tree comparable: times are written with a narrow space.
func spaced(name string) string { return strings.Join(strings.Fields(name), " ") }
