package sqlite_test

import (
	"bytes"
	"database/sql"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"rimside/store/sqlite"
)

// oldBook is what the program of then answered about the folder testdata/book-2: two phones, ops of every kind, one spread
// over several lines, photos, an erased record, a revoked phone. The same folder is there as a kill left it, with most of it
// in the write-ahead log, and as a backup. None of these files ever changes: every later version opens them.
type oldBook struct {
	Book struct {
		Book, Log, Server, Digest string
		Count                     int64
	}
	Via     []sqlite.Via
	Devices []struct {
		ID, Label string
		PairedAt  int64 `json:"paired_at"`
		SeenAt    int64 `json:"seen_at"`
		Revoked   bool
	}
	Photos, Erased []string
}

func readOldBook(t *testing.T) (old oldBook) {
	t.Helper()
	text, err := os.ReadFile("testdata/book-2.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &old); err != nil {
		t.Fatal(err)
	}
	if len(old.Via) < 90 || len(old.Devices) < 2 || len(old.Photos) < 1 || len(old.Erased) < 1 {
		t.Fatalf("the old book is small: %+v", old)
	}
	return old
}

// rowsBefore reads the table ops with the bare driver, each row as one text.
func rowsBefore(t *testing.T, folder string) (rows []string) {
	t.Helper()
	dir := t.TempDir() // SQLite writes beside a database that it reads
	if err := os.CopyFS(dir, os.DirFS(folder)); err != nil {
		t.Fatal(err)
	}
	db, err := sql.Open("sqlite", filepath.Join(dir, "rimside.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	read, err := db.Query(opRows)
	if err != nil {
		t.Fatal(err)
	}
	defer read.Close()
	for read.Next() {
		var row string
		if err := read.Scan(&row); err != nil {
			t.Fatal(err)
		}
		rows = append(rows, row)
	}
	return rows
}

const opRows = `SELECT seq || ' ' || hex(id) || ' ' || hex(rec) || ' ' || erased || ' ' || via || ' ' || received_at || ' ' || hex(bytes) FROM ops ORDER BY seq`

func TestAnOldBookReadsTheSame(t *testing.T) {
	old := readOldBook(t)
	for _, folder := range []string{"testdata/book-2", "testdata/book-2-killed"} {
		t.Run(filepath.Base(folder), func(t *testing.T) {
			before := rowsBefore(t, folder)
			dir := t.TempDir()
			if err := os.CopyFS(dir, os.DirFS(folder)); err != nil {
				t.Fatal(err)
			}
			book := open(t, dir)
			checkOldBook(t, book, old, old.Book.Log)
			if after := rowsBefore(t, dir); len(before) != len(old.Via) || !reflect.DeepEqual(before, after) {
				t.Errorf("the rows of ops changed: %d of them before, %d after", len(before), len(after))
			}
			got, err := book.Devices(t.Context())
			if err != nil || len(got) != len(old.Devices) {
				t.Fatalf("%d devices (%v), want %d", len(got), err, len(old.Devices))
			}
			for i, want := range old.Devices {
				if got[i] != (sqlite.Device{ID: want.ID, Label: want.Label, PairedAt: want.PairedAt, SeenAt: want.SeenAt, Revoked: want.Revoked}) {
					t.Errorf("a device is %+v, want %+v", got[i], want)
				}
			}
		})
	}
}

func TestAnOldBackupIsRestored(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "home")
	if err := restore(t, "testdata/book-2.tar", dir); err != nil {
		t.Fatal(err)
	}
	checkOldBook(t, open(t, dir), readOldBook(t), "")
}

// checkOldBook compares everything that a book answers; a log of "" is one that was renewed.
func checkOldBook(t *testing.T, book *sqlite.Book, old oldBook, log string) {
	t.Helper()
	about, err := book.About(t.Context())
	want := sqlite.About{Book: old.Book.Book, Log: log, Server: old.Book.Server, Count: old.Book.Count, Digest: old.Book.Digest}
	if log == "" {
		want.Log = about.Log
	}
	if err != nil || about != want || log == "" && about.Log == old.Book.Log {
		t.Errorf("the book is %+v (%v), want %+v", about, err, want)
	}
	page, err := book.Pull(t.Context(), old.Book.Book, about.Log, 0, 500)
	if err != nil || !reflect.DeepEqual(page.Via, old.Via) {
		t.Errorf("who brought the ops changed (%v)", err)
	}
	exported, err := os.ReadFile("testdata/book-2.ndjson")
	if err != nil {
		t.Fatal(err)
	}
	var now bytes.Buffer
	if err := book.Export(t.Context(), &now); err != nil || !bytes.Equal(now.Bytes(), exported) {
		t.Errorf("the export changed (%v):\n%s", err, now.Bytes())
	}
	for _, hash := range old.Photos {
		if has, err := book.Blobs().Has(hash); !has || err != nil {
			t.Errorf("photo %s is here: %v (%v)", hash, has, err)
		}
	}
	for _, hash := range old.Erased {
		if erased, err := book.BlobErased(t.Context(), hash); !erased || err != nil {
			t.Errorf("photo %s is erased: %v (%v)", hash, erased, err)
		}
	}
	if secret, err := book.Secret(t.Context(), "cookies", func() ([]byte, error) { return nil, os.ErrNotExist }); err != nil || len(secret) == 0 {
		t.Errorf("the keys of the cookies are gone (%v)", err)
	}
	if report := healthy(t, book); report.Ops != len(old.Via) || report.Blobs != len(old.Photos) {
		t.Errorf("the report is %+v", report)
	}
	var pushed []json.RawMessage
	for _, op := range page.Ops {
		pushed = append(pushed, bytes.Clone(op))
	}
	if again, err := book.Push(t.Context(), old.Book.Book, about.Log, pushed, ""); err != nil || len(again.Known) != len(old.Via) {
		t.Errorf("the same ops anew: %d known, %v rejected (%v)", len(again.Known), again.Rejected, err)
	}
}
