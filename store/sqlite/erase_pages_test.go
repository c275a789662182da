package sqlite_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

// Values of every size come and go in every order, with copies made in between: nothing of an erased one stays in any page
// of any file.
func TestErasedValuesLeaveEveryPage(t *testing.T) {
	book, dir, at := ticking(t)
	chance := rand.New(rand.NewPCG(3, 9))
	var alive []string
	for turn := range 7 {
		var ops []json.RawMessage
		for range 20 {
			rec := oplog.NewID()
			alive = append(alive, rec)
			ops = append(ops, op(oplog.NewID(), rec, "note", `{"text":"`+strings.Repeat(secret+rec, 1+chance.IntN(chance.IntN(90)+1))+`"}`))
		}
		push(t, book, ops...)
		at(noon.Add(time.Duration(turn) * time.Hour))
		var gone []string
		for range 1 + chance.IntN(8) {
			place := chance.IntN(len(alive))
			gone = append(gone, alive[place])
			alive = append(alive[:place], alive[place+1:]...)
			push(t, book, eraseOp(gone[len(gone)-1]))
		}
		for _, rec := range gone {
			if found := holding(t, dir, secret+rec); len(found) > 0 {
				t.Fatalf("turn %d: what was erased stands in %v", turn, found)
			}
		}
	}
	if names := copiesIn(t, dir, ""); len(names) < 7 {
		t.Errorf("only %d copies: this test shows little", len(names))
	}
	for _, name := range copiesIn(t, dir, "") {
		home := t.TempDir()
		content, err := os.ReadFile(filepath.Join(dir, "copies", name))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(home, "rimside.sqlite"), content, 0o600); err != nil {
			t.Fatal(err)
		}
		healthy(t, open(t, home))
	}
	healthy(t, book)
}

// The file alone is the book once it was folded in: whoever copies it without what lies beside it has everything.
func TestTheFileAloneIsTheBook(t *testing.T) {
	book, dir, at := ticking(t)
	ops := someOps(3000)
	for start := 0; start < len(ops); start += 500 {
		push(t, book, ops[start:start+500]...)
	}
	at(noon)
	content, err := os.ReadFile(filepath.Join(dir, "rimside.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	home := t.TempDir()
	if err := os.WriteFile(filepath.Join(home, "rimside.sqlite"), content, 0o600); err != nil {
		t.Fatal(err)
	}
	alone := open(t, home)
	if got := len(pullAll(t, alone)); got != 3000 {
		t.Errorf("the file alone holds %d ops of 3000", got)
	}
	healthy(t, alone)
}

// BenchmarkEraseWithCopies erases an old record from a book of 16 MB with its 31 copies, and tells how much went to the disk.
func BenchmarkEraseWithCopies(b *testing.B) {
	dir := b.TempDir()
	now := noon
	settings := options()
	settings.Now = func() time.Time { return now }
	book, err := sqlite.Open(dir, settings)
	if err != nil {
		b.Fatal(err)
	}
	defer book.Close()
	var old []string
	for range 20 {
		old = append(old, oplog.NewID())
		push(b, book, op(oplog.NewID(), old[len(old)-1], "note", `{"text":"an old one"}`))
	}
	fill(b, book, someOps(40_000))
	for turn := range 40 {
		now = noon.Add(time.Duration(turn) * 7 * time.Hour)
		push(b, book, op(oplog.NewID(), rec, "note", `{"text":"x"}`))
		if err := book.Tick(b.Context()); err != nil {
			b.Fatal(err)
		}
	}
	info, _ := os.Stat(filepath.Join(dir, "rimside.sqlite"))
	copies, _ := os.ReadDir(filepath.Join(dir, "copies"))
	before, erased := bytesWritten(b), 0
	var longest time.Duration
	for b.Loop() {
		stop, told := make(chan bool), make(chan time.Duration)
		go func() {
			var most time.Duration
			for {
				select {
				case <-stop:
					told <- most
					return
				default:
				}
				start := time.Now()
				if _, err := book.Push(b.Context(), aBook, "", []json.RawMessage{op(oplog.NewID(), rec, "note", `{}`)}, ""); err != nil {
					b.Error(err)
				}
				most = max(most, time.Since(start))
				time.Sleep(2 * time.Millisecond)
			}
		}()
		push(b, book, eraseOp(old[erased%len(old)]))
		erased++
		close(stop)
		longest = max(longest, <-told)
	}
	b.ReportMetric(float64(bytesWritten(b)-before)/1e6/float64(erased), "MB-written/erase")
	b.ReportMetric(float64(longest.Milliseconds()), "ms-longest-push")
	b.ReportMetric(float64(len(copies)), "copies")
	b.ReportMetric(float64(info.Size())/1e6, "MB-book")
}

// bytesWritten is what this process has sent to the disk so far, where the system tells.
func bytesWritten(b *testing.B) (count int64) {
	content, err := os.ReadFile("/proc/self/io")
	if err != nil {
		b.Skip("this system does not tell what a process writes")
	}
	for line := range bytes.Lines(content) {
		if _, err := fmt.Sscanf(string(line), "write_bytes: %d", &count); err == nil {
			return count
		}
	}
	return 0
}
