package sqlite_test

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"rimside/store/blob"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

const aBook = "0123456789abcdef0123456789abcdef"

// noon is when everything happens, unless a test says otherwise.
var noon = time.Date(2025, 6, 1, 12, 0, 0, 0, time.UTC)

// options are what a server passes, with a clock that stands still.
func options() sqlite.Options {
	return sqlite.Options{Now: func() time.Time { return noon }, Blobs: blob.In}
}

func open(t testing.TB, dir string) *sqlite.Book {
	t.Helper()
	book, err := sqlite.Open(dir, options())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := book.Close(); err != nil {
			t.Error(err)
		}
	})
	book.Settle()
	return book
}

// op writes an op as a phone would.
func op(id, rec, kind, set string) json.RawMessage {
	return json.RawMessage(fmt.Sprintf(`{"id":%q,"at":%d,"kind":%q,"rec":%q,"set":%s,"author":"","device":"","schema":1}`, id, noon.UnixMilli(), kind, rec, set))
}

// eraseOp erases a record.
func eraseOp(rec string) json.RawMessage {
	return op(oplog.NewID(), rec, oplog.KindErase, `{"kind":"tyre"}`)
}

// push brings ops, and waits for what then goes on beside: a busy machine may need longer than a push waits by itself.
func push(t testing.TB, book *sqlite.Book, ops ...json.RawMessage) sqlite.Pushed {
	t.Helper()
	pushed, err := book.Push(t.Context(), aBook, "", ops, "a-phone")
	if err != nil {
		t.Fatal(err)
	}
	book.Settle()
	return pushed
}

// pullAll reads the whole log.
func pullAll(t testing.TB, book *sqlite.Book) (ops []json.RawMessage) {
	t.Helper()
	for since, more := int64(0), true; more; {
		page, err := book.Pull(t.Context(), "", "", since, 500)
		if err != nil {
			t.Fatal(err)
		}
		ops = append(ops, page.Ops...)
		since, more = page.Next, page.More
	}
	return ops
}

// healthy fails the test when verify finds a problem, and gives its report.
func healthy(t testing.TB, book *sqlite.Book) sqlite.Report {
	t.Helper()
	report, err := book.Verify(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	for _, problem := range report.Problems {
		t.Error(problem)
	}
	return report
}

// jpeg is something that begins like a photo.
func jpeg(content string) string { return "\xff\xd8\xff\xe0" + content }

// aPhoto brings a photo and gives its name.
func aPhoto(t testing.TB, book *sqlite.Book, content string) (hash string) {
	t.Helper()
	hash = fmt.Sprintf("%x", sha256.Sum256([]byte(jpeg(content))))
	if err := book.PutBlob(t.Context(), hash, strings.NewReader(jpeg(content))); err != nil {
		t.Fatal(err)
	}
	return hash
}
