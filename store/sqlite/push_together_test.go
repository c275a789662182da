package sqlite_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

// TestManyAtOnce lets phones push and pull while somebody exports, verifies, backs up and copies, by two programs.
func TestManyAtOnce(t *testing.T) {
	dir := t.TempDir()
	programs := []*sqlite.Book{open(t, dir), open(t, dir)}
	const phones, pushes = 6, 12
	var work sync.WaitGroup
	for phone := range phones {
		book := programs[phone%2]
		work.Go(func() {
			rec := fmt.Sprintf("%032x", phone)
			for turn := range pushes {
				pushTogether(t, book, op(oplog.NewID(), rec, "note", fmt.Sprintf(`{"text":"%s %d"}`, secret, turn)), op(oplog.NewID(), rec, "note", `{"x":1}`))
				if _, err := book.Pull(t.Context(), aBook, "", int64(turn), 50); err != nil {
					t.Error(err)
				}
			}
			pushTogether(t, book, eraseOp(rec))
		})
	}
	for each, do := range []func(book *sqlite.Book) error{
		func(book *sqlite.Book) error { var out bytes.Buffer; return book.Export(t.Context(), &out) },
		func(book *sqlite.Book) error { _, err := book.Verify(t.Context()); return err },
		func(book *sqlite.Book) error {
			return book.Backup(t.Context(), filepath.Join(t.TempDir(), "backup.tar"))
		},
		func(book *sqlite.Book) error {
			hash := aPhoto(t, book, "together")
			_, err := book.BlobErased(t.Context(), hash)
			return err
		},
	} {
		work.Go(func() {
			for range 4 {
				if err := do(programs[each%2]); err != nil {
					t.Errorf("%d: %v", each, err)
				}
			}
		})
	}
	work.Wait()
	for _, book := range programs {
		if err := book.Tick(t.Context()); err != nil {
			t.Error(err)
		}
	}
	report := healthy(t, programs[0])
	if want := phones * (2*pushes + 1); report.Ops != want || report.Records != phones {
		t.Errorf("the report is %+v, want %d ops of %d records", report, want, phones)
	}
	if found := holding(t, dir, secret); len(found) > 0 {
		t.Errorf("erased values stand in %v", found)
	}
}

// pushTogether may run beside the test's own goroutine.
func pushTogether(t *testing.T, book *sqlite.Book, ops ...json.RawMessage) {
	if pushed, err := book.Push(t.Context(), aBook, "", ops, strings.Repeat("d", 32)); err != nil || len(pushed.Stored) != len(ops) {
		t.Errorf("stored %v (%v)", pushed.Stored, err)
	}
}

// Two programs that make one folder's book at the same moment make one book.
func TestOpenedTwiceAtOnce(t *testing.T) {
	for range 10 {
		openTogether(t, t.TempDir())
	}
}

func openTogether(t *testing.T, dir string) {
	t.Helper()
	var abouts [4]sqlite.About
	var work sync.WaitGroup
	for i := range abouts {
		work.Go(func() {
			book, err := sqlite.Open(dir, options())
			if err != nil {
				t.Error(err)
				return
			}
			defer book.Close()
			if abouts[i], err = book.About(t.Context()); err != nil {
				t.Error(err)
			}
		})
	}
	work.Wait()
	for _, about := range abouts {
		if about != abouts[0] {
			t.Errorf("the books are %+v", abouts)
		}
	}
}
