package web_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rimside/server/web"
	"rimside/store/blob"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

const bookSecret = "Zwetschgenwind"

// noteOp is a record with something in it that an erasure must take away.
func noteOp(n int) string {
	return fmt.Sprintf(`{"id":"%s","at":1790000000000,"kind":"note","rec":"%s","set":{"text":"%s %d"},"author":"","device":"","schema":1}`, id(n), id(n+5000), bookSecret, n)
}

func eraseNote(n int) string {
	return fmt.Sprintf(`{"id":"%s","at":1790000000001,"kind":"erase","rec":"%s","set":{"kind":"note"},"author":"","device":"","schema":1}`, id(n+10000), id(n+5000))
}

func many(from, to int, op func(int) string) (ops []string) {
	for n := from; n < to; n++ {
		ops = append(ops, op(n))
	}
	return ops
}

type pushAnswer struct {
	Stored, Known []string
	Rejected      []any
}

// brings pushes and gives the answer.
func (g *guarded) brings(t *testing.T, from phone, ops ...string) (answer pushAnswer) {
	t.Helper()
	g.json(t, scenario{method: "POST", path: "/api/ops", body: pushText(bookA, ops...), headers: from.headers()}, &answer)
	return answer
}

type heldAnswer struct {
	Held []struct {
		Device, Label string
		IDs, Recs     []string
		Kinds         map[string]int
		Stopped       bool
		MayAgree      bool `json:"may_agree"`
	}
}

func (g *guarded) held(t *testing.T, asks phone) (answer heldAnswer) {
	t.Helper()
	g.json(t, scenario{path: "/api/erasures", headers: asks.headers()}, &answer)
	return answer
}

// tells is how many records GET /api/book says to wait, for each device.
func (g *guarded) tells(t *testing.T, asks phone) map[string]int {
	t.Helper()
	var about struct {
		Held []struct {
			Device string
			Count  int
		}
	}
	g.json(t, scenario{path: "/api/book", headers: asks.headers()}, &about)
	found := map[string]int{}
	for _, each := range about.Held {
		found[each.Device] = each.Count
	}
	return found
}

func vote(n int, held heldAnswer, agree bool) string {
	var set = map[string]any{"agree": agree}
	set["ids"], set["recs"] = held.Held[0].IDs, held.Held[0].Recs
	raw, _ := json.Marshal(set) // plain texts
	return fmt.Sprintf(`{"id":"%s","at":1790000000002,"kind":"agreement","rec":"%s","set":%s,"author":"","device":"","schema":1}`, id(n), id(n), raw)
}

// left counts the notes whose text stands in the log that a phone would get.
func (g *guarded) left(t *testing.T, asks phone) int {
	t.Helper()
	_, text := exchange(t, g.addr, scenario{server: g.running, path: "/api/export", headers: asks.headers()}.request())
	return strings.Count(text, bookSecret)
}

func TestErasingInBulkWaitsForASecondPhone(t *testing.T) {
	dir := t.TempDir()
	book, blobs := newBook(t, dir)
	server := startLogin(t, web.Options{Book: book, Blobs: blobs})
	rogue, owner := server.pair(t, "rogue", ""), server.pair(t, "owner", "")
	server.push(t, owner, bookA, many(0, 500, noteOp)...)
	if got := server.brings(t, rogue, many(0, 500, eraseNote)...); len(got.Stored)+len(got.Known)+len(got.Rejected) > 0 {
		t.Fatalf("of 500 erasures %d were stored, %d known, %d rejected", len(got.Stored), len(got.Known), len(got.Rejected))
	}
	if left := server.left(t, owner); left != 500 {
		t.Fatalf("%d of 500 notes are left", left)
	}
	if told := server.tells(t, owner); told[rogue.Device] != 500 || len(told) != 1 {
		t.Errorf("the book tells of %v", told)
	}
	held := server.held(t, owner)
	if len(held.Held) != 1 || held.Held[0].Label != "rogue" || held.Held[0].Kinds["note"] != 500 || !held.Held[0].MayAgree || server.held(t, rogue).Held[0].MayAgree {
		t.Fatalf("waiting: %+v", held.Held)
	}
	// Whoever erased cannot agree, nor as somebody else whom it has let in since.
	server.push(t, rogue, bookA, vote(20000, held, true))
	time.Sleep(2 * time.Millisecond) // two clock readings apart: what is compared is the time of pairing
	again := server.pair(t, "the rogue once more", "")
	server.push(t, again, bookA, vote(20001, held, true))
	if got := server.brings(t, rogue, many(0, 500, eraseNote)...); len(got.Stored) > 0 {
		t.Fatalf("%d erasures passed by the vote of the phone that erases", len(got.Stored))
	}
	// A frame of a record says the same as an erasure, and waits like one.
	if server.brings(t, rogue, `{"id":"`+id(1)+`","at":1790000000000,"kind":"note","rec":"`+id(5001)+`","set":{"text":null},"erased":true}`); server.left(t, owner) != 500 {
		t.Error("a frame has erased a record that waits")
	}
	// The second phone agrees, once for all; the first sends again.
	server.push(t, owner, bookA, vote(20002, held, true))
	if got := server.brings(t, rogue, many(0, 500, eraseNote)...); len(got.Stored) != 500 {
		t.Fatalf("after the agreement %d of 500 were stored", len(got.Stored))
	}
	if left, told := server.left(t, owner), server.tells(t, owner); left != 0 || len(told) > 0 {
		t.Errorf("%d notes are left, and %v wait", left, told)
	}
	// Traces in the file's pages may be cleared beside the answer when the machine is busy.
	var found []string
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if found = holdingFiles(t, dir, bookSecret); len(found) == 0 {
			return
		}
	}
	t.Errorf("erased values stand in %v", found)
}

// holdingFiles lists the files below a folder that hold a text.
func holdingFiles(t *testing.T, dir, text string) (found []string) {
	t.Helper()
	_ = filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return nil // a file that has just gone holds nothing
		}
		if content, err := os.ReadFile(path); err == nil && bytes.Contains(content, []byte(text)) {
			found = append(found, path)
		}
		return nil
	})
	return found
}

func TestErasingOneAtATimeIsImmediate(t *testing.T) {
	now := time.Now()
	book, err := sqlite.Open(t.TempDir(), sqlite.Options{Blobs: blob.In, Now: func() time.Time { return now }})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = book.Close() })
	server := startLogin(t, web.Options{Book: book, Now: func() time.Time { return now }})
	one, two := server.pair(t, "one", ""), server.pair(t, "two", "")
	server.push(t, one, bookA, many(0, 40, noteOp)...)
	for n := range sqlite.FreeErasures {
		if got := server.brings(t, one, eraseNote(n)); len(got.Stored) != 1 {
			t.Fatalf("erasure %d was held back", n+1)
		}
	}
	if got := server.brings(t, one, eraseNote(10)); len(got.Stored) != 0 {
		t.Error("the eleventh in an hour passed")
	}
	if got := server.brings(t, two, eraseNote(11)); len(got.Stored) != 1 {
		t.Error("another phone's first was held back")
	}
	now = now.Add(sqlite.ErasureTime + time.Second)
	if got := server.brings(t, one, eraseNote(10), eraseNote(12)); len(got.Stored) != 1 || got.Stored[0] != id(10012) {
		t.Errorf("an hour later: %+v, want the new one alone, as the held one waits for a person", got)
	}
	server.push(t, two, bookA, vote(20000, server.held(t, two), false))
	if told, held := server.tells(t, two), server.held(t, two); len(told) > 0 || len(held.Held) != 1 || !held.Held[0].Stopped {
		t.Errorf("after a stop %v wait: %+v", told, held)
	}
	if got := server.brings(t, one, eraseNote(10)); len(got.Stored) != 0 {
		t.Error("a stopped erasure passed")
	}
}

// A sibling server, made of a backup, believes what the first let pass. A server that is nobody's sibling asks once more.
func TestErasuresThatPassedElsewherePassHere(t *testing.T) {
	dir := t.TempDir()
	book, blobs := newBook(t, dir)
	first := startLogin(t, web.Options{Book: book, Blobs: blobs})
	rogue, owner := first.pair(t, "rogue", ""), first.pair(t, "owner", "")
	first.push(t, owner, bookA, many(0, 30, noteOp)...)
	backup, other := filepath.Join(t.TempDir(), "car.tar"), filepath.Join(t.TempDir(), "book")
	if err := book.Backup(t.Context(), backup); err != nil {
		t.Fatal(err)
	}
	if err := sqlite.Restore(t.Context(), backup, other, sqlite.Options{Blobs: blob.In}); err != nil {
		t.Fatal(err)
	}
	secondBook, secondBlobs := newBook(t, other)
	second := startLogin(t, web.Options{Book: secondBook, Blobs: secondBlobs})
	stranger := startLogin(t, web.Options{})
	carrier := stranger.pair(t, "carrier", "")
	stranger.push(t, carrier, bookA, many(0, 30, noteOp)...)

	first.brings(t, rogue, many(0, 30, eraseNote)...)
	first.push(t, owner, bookA, vote(20000, first.held(t, owner), true))
	if got := first.brings(t, rogue, many(0, 30, eraseNote)...); len(got.Stored) != 30 {
		t.Fatalf("%d of 30 passed at the first server", len(got.Stored))
	}
	var all page
	first.json(t, scenario{path: "/api/ops?book=" + bookA, headers: owner.headers()}, &all)
	var carried []string
	for _, op := range all.Ops {
		carried = append(carried, string(op))
	}
	if second.brings(t, rogue, carried...); second.left(t, owner) != 0 {
		t.Errorf("%d notes are left at the sibling", second.left(t, owner))
	}
	if stranger.brings(t, carrier, carried...); stranger.left(t, carrier) != 30 {
		t.Errorf("%d notes are left at a server that cannot know", stranger.left(t, carrier))
	}
	forged := strings.Replace(vote(20001, stranger.held(t, carrier), true), `"agree":true`, `"agree":true,"seal":"`+strings.Repeat("ab", 32)+`"`, 1)
	if stranger.brings(t, carrier, append(many(0, 30, eraseNote), forged)...); stranger.left(t, carrier) != 30 {
		t.Error("a made-up seal was believed")
	}
	if err := stranger.book.Vote(t.Context(), heldAt(t, stranger.book), true); err != nil { // rimside erasures -agree
		t.Fatal(err)
	}
	if stranger.brings(t, carrier, many(0, 30, eraseNote)...); stranger.left(t, carrier) != 0 {
		t.Error("the computer itself agreed, and notes are left")
	}
}

func heldAt(t *testing.T, book *sqlite.Book) []sqlite.HeldErasures {
	t.Helper()
	held, err := book.Held(t.Context(), "")
	if err != nil {
		t.Fatal(err)
	}
	return held
}

// A server that lost its disk has nothing to lose by what phones bring: it fills up without asking.
func TestAnEmptyServerRefillsWithoutAsking(t *testing.T) {
	server := startLogin(t, web.Options{})
	phone := server.pair(t, "phone", "")
	got := server.brings(t, phone, many(0, 40, eraseNote)...)
	if len(got.Stored) != 40 || !oplog.IsID(got.Stored[0]) {
		t.Errorf("%+v", got)
	}
}
