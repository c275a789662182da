package sqlite_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"testing"

	"rimside/store/fault"
	"rimside/store/oplog"
)

// Pushes that wait for the disk at the same time share one wait; each is answered only after it, and only with what is its own.
func TestPushesShareOneWaitForTheDisk(t *testing.T) {
	syncs := countSyncs(t)
	book := open(t, t.TempDir())
	push(t, book, op(idA, rec, "note", `{}`))
	const phones, turns = 16, 12
	before := syncs.Load()
	var work sync.WaitGroup
	for phone := range phones {
		work.Go(func() {
			for turn := range turns {
				id := oplog.NewID()
				sent := []json.RawMessage{op(id, fmt.Sprintf("%032x", phone), "note", fmt.Sprintf(`{"turn":%d}`, turn)), op(idA, rec, "note", `{}`), json.RawMessage(`{"id":"` + idB + `"}`)}
				pushed, err := book.Push(t.Context(), aBook, "", sent, fmt.Sprintf("%032x", phone))
				if err != nil || len(pushed.Stored) != 1 || pushed.Stored[0] != id || len(pushed.Known) != 1 || len(pushed.Rejected) != 1 {
					t.Errorf("a push became %+v (%v)", pushed, err)
				}
				if turn == 5 {
					_, err := book.Push(t.Context(), strings.Repeat("f", 32), "", sent, "")
					if said := fault.Of(err); said == nil || said.Code != "other_book" {
						t.Errorf("another book among them: %v", err)
					}
				}
			}
		})
	}
	work.Wait()
	if waits := syncs.Load() - before; waits >= phones*turns*3/4 {
		t.Errorf("%d pushes waited for the disk %d times", phones*turns, waits)
	} else {
		t.Logf("%d pushes, %d waits", phones*turns, waits)
	}
	if log := pullAll(t, book); len(log) != phones*turns+1 {
		t.Errorf("%d ops are here, want %d", len(log), phones*turns+1)
	}
	page, err := book.Pull(t.Context(), "", "", 1, 500)
	if err != nil {
		t.Fatal(err)
	}
	for i, via := range page.Via {
		if !strings.Contains(string(page.Ops[i]), `"rec":"`+via.Device+`"`) {
			t.Errorf("op %s is said to have come by %s", page.Ops[i], via.Device)
		}
	}
	healthy(t, book)
}
