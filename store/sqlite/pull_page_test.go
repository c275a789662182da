package sqlite_test

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

func TestPull(t *testing.T) {
	book := open(t, t.TempDir())
	ops := someOps(7)
	log := push(t, book, ops...).Log
	for _, c := range []struct {
		name      string
		book, log string
		since     int64
		limit     int
		ops       []json.RawMessage
		next      int64
		more      bool
	}{
		{"first of all", "", "", 0, 500, ops, 7, false},
		{"by name", aBook, log, 0, 500, ops, 7, false},
		{"a page", aBook, log, 2, 3, ops[2:5], 5, true},
		{"up to the end exactly", aBook, log, 4, 3, ops[4:], 7, false},
		{"at the end", aBook, log, 7, 500, nil, 7, false},
		{"behind the end", aBook, log, 100, 500, nil, 7, false},
		{"another log", aBook, idA, 3, 500, nil, 0, false},
		{"a senseless since", aBook, log, -5, 2, ops[:2], 2, true},
		{"a senseless limit", aBook, log, 0, 0, ops[:1], 1, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			page, err := book.Pull(t.Context(), c.book, c.log, c.since, c.limit)
			if err != nil {
				t.Fatal(err)
			}
			if !slices.EqualFunc(page.Ops, c.ops, func(a, b json.RawMessage) bool { return string(a) == string(b) }) {
				t.Errorf("ops %s, want %s", page.Ops, c.ops)
			}
			if page.Next != c.next || page.More != c.more {
				t.Errorf("next %d, more %v; want %d, %v", page.Next, page.More, c.next, c.more)
			}
			if page.Log != log || page.Book != aBook || page.Count != 7 || page.Digest == "" {
				t.Errorf("page %+v", page)
			}
			for i, via := range page.Via {
				op, _ := oplog.Parse(page.Ops[i])
				if via != (sqlite.Via{ID: op.ID, Device: "a-phone", ReceivedAt: noon.UnixMilli()}) {
					t.Errorf("op %s came via %+v", op.ID, via)
				}
			}
		})
	}
	if _, err := book.Pull(t.Context(), idB, "", 0, 1); !errors.Is(err, sqlite.ErrOtherBook) {
		t.Errorf("error %v, want that it is another book", err)
	}
}

// A server that is empty yet has no book to differ from; a pull does not give it one.
func TestPullFromAnEmptyServer(t *testing.T) {
	book := open(t, t.TempDir())
	page, err := book.Pull(t.Context(), aBook, "", 0, 500)
	if err != nil || page.Book != "" || page.More || page.Ops == nil || page.Via == nil {
		t.Errorf("page %+v, error %v", page, err)
	}
}

func TestPagesAreBounded(t *testing.T) {
	book := open(t, t.TempDir())
	large := func(id string) json.RawMessage {
		return op(id, rec, "note", `{"text":"`+strings.Repeat("x", 3<<19)+`"}`)
	} // 1.5 MiB
	ops := []json.RawMessage{large(idA), large(idB), large(idC), op(two, rec, "note", `{}`)}
	for _, each := range ops {
		push(t, book, each)
	}
	page, err := book.Pull(t.Context(), "", "", 0, 500)
	if err != nil {
		t.Fatal(err)
	}
	if len(page.Ops) != 2 || page.Next != 2 || !page.More {
		t.Errorf("%d ops, next %d, more %v; want 2 of 1.5 MiB each, and more", len(page.Ops), page.Next, page.More)
	}
	if got := pullAll(t, book); len(got) != len(ops) {
		t.Errorf("%d ops by pages, want %d", len(got), len(ops))
	}
}
