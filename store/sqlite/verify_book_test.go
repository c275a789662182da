package sqlite_test

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rimside/store/sqlite"
)

// TestVerifyFinds damages a healthy book in one way each and wants a problem that says so.
func TestVerifyFinds(t *testing.T) {
	hash := fmt.Sprintf("%x", sha256.Sum256([]byte(jpeg("named"))))
	other := strings.Repeat("cd", 32)
	for name, c := range map[string]struct {
		harm  func(t *testing.T, book *sqlite.Book, dir string)
		finds string
	}{
		"nothing": {func(*testing.T, *sqlite.Book, string) {}, ""},
		"a lost op": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "DELETE FROM ops WHERE id = unhex(?)", idA)
		}, "are counted"},
		"a wrong count":      {running("UPDATE book SET count = count + 1"), "are counted"},
		"a wrong digest":     {running("UPDATE book SET digest = zeroblob(32)"), "digest"},
		"a digest cut short": {running("UPDATE book SET digest = x'00'"), "damaged"},
		"an op that is no JSON": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "UPDATE ops SET bytes = x'7b' WHERE id = unhex(?)", idA)
		}, "cannot be read"},
		"an op under another id": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "UPDATE ops SET bytes = (SELECT bytes FROM ops WHERE id = unhex(?)) WHERE id = unhex(?)", idA, idB)
		}, "not what its row says"},
		"an op in another record": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "UPDATE ops SET rec = unhex(?) WHERE id = unhex(?)", idA, idA)
		}, "not what its row says"},
		"an op called erased": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "UPDATE ops SET erased = 1 WHERE id = unhex(?)", idA)
		}, "not what its row says"},
		"an erased record with a value":      {running("UPDATE ops SET bytes = CAST(replace(CAST(bytes AS TEXT), 'null', '1') AS BLOB) WHERE erased = 1"), "still holds values"},
		"an erased record that is forgotten": {running("DELETE FROM erased_records"), "not for the database"},
		"a record erased by nobody": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "INSERT INTO erased_records VALUES (unhex(?))", rec)
		}, "not for the database"},
		"a photo that is not listed": {running("DELETE FROM named_blobs"), "not listed with it"},
		"another photo listed": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "UPDATE named_blobs SET hash = unhex(?)", other)
		}, "not listed with it"},
		"a photo too many": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "INSERT INTO named_blobs SELECT unhex(?), seq FROM ops WHERE id = unhex(?)", other, idA)
		}, "that name 1"},
		"a photo listed with no op": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "PRAGMA foreign_keys = 0")
			book.Exec(t, "INSERT INTO named_blobs VALUES (unhex(?), 99)", other)
		}, "not there"},
		"a damaged photo": {func(t *testing.T, _ *sqlite.Book, dir string) { damage(t, dir, hash) }, "is damaged"},
		"an erased photo is back": {func(t *testing.T, book *sqlite.Book, _ string) {
			if err := book.Blobs().Put(erasedPhoto(), strings.NewReader(jpeg("erased"))); err != nil {
				t.Fatal(err)
			}
		}, "still here"},
		"an index that lacks a row": {func(t *testing.T, book *sqlite.Book, _ string) {
			book.Exec(t, "PRAGMA writable_schema = 1")
			book.Exec(t, "UPDATE sqlite_schema SET sql = 'CREATE INDEX ops_by_rec ON ops (rec) WHERE seq > 1' WHERE name = 'ops_by_rec'")
			book.Exec(t, "PRAGMA writable_schema = RESET")
			book.Exec(t, "REINDEX ops_by_rec")
			book.Exec(t, "PRAGMA writable_schema = 1")
			book.Exec(t, "UPDATE sqlite_schema SET sql = 'CREATE INDEX ops_by_rec ON ops (rec)' WHERE name = 'ops_by_rec'")
			book.Exec(t, "PRAGMA writable_schema = RESET")
		}, "ops_by_rec"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			book := open(t, dir)
			push(t, book, op(idA, rec, "tyre", `{"x":1}`), op(idB, rec, "photo", `{"blob":"`+aPhoto(t, book, "named")+`"}`),
				op(idC, two, "photo", `{"blob":"`+aPhoto(t, book, "erased")+`"}`))
			push(t, book, eraseOp(two))
			healthy(t, book)
			c.harm(t, book, dir)
			report, err := book.Verify(t.Context())
			if err != nil {
				t.Fatal(err)
			}
			if found := strings.Join(report.Problems, "\n"); (c.finds == "") != (found == "") || !strings.Contains(found, c.finds) {
				t.Errorf("found %q, want %q in it", found, c.finds)
			}
		})
	}
}

func running(query string) func(*testing.T, *sqlite.Book, string) {
	return func(t *testing.T, book *sqlite.Book, _ string) { book.Exec(t, query) }
}

func erasedPhoto() string { return fmt.Sprintf("%x", sha256.Sum256([]byte(jpeg("erased")))) }

// Bytes that changed on the disk are found, or SQLite finds that it cannot read on.
func TestVerifyFindsBrokenPages(t *testing.T) {
	dir := t.TempDir()
	book, err := sqlite.Open(dir, options())
	if err != nil {
		t.Fatal(err)
	}
	push(t, book, someOps(500)...)
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "rimside.sqlite")
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for i := 4096 * 30; i < 4096*40; i += 3 {
		content[i] ^= 0x5a
	}
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	if report, err := open(t, dir).Verify(t.Context()); err != nil || len(report.Problems) == 0 {
		t.Errorf("the report is %+v (%v)", report, err)
	}
}

// Photos come after the entries that name them, and may come before: neither is damage.
func TestVerifyRemarks(t *testing.T) {
	book := open(t, t.TempDir())
	missing := strings.Repeat("ab", 32)
	unnamed := aPhoto(t, book, "unnamed")
	push(t, book, op(idA, rec, "photo", `{"blob":"`+missing+`"}`))
	report := healthy(t, book)
	want := []string{"Photo " + missing + " is not here yet: the phone that took it has not sent it.", "No entry names photo " + unnamed + "."}
	if !slices.Equal(report.Remarks, want) || report.Ops != 1 || report.Records != 1 || report.Blobs != 1 {
		t.Errorf("the report is %+v", report)
	}
}

func TestReportsAreBounded(t *testing.T) {
	book := open(t, t.TempDir())
	push(t, book, someOps(300)...)
	book.Exec(t, "UPDATE ops SET bytes = x'7b'")
	report, err := book.Verify(t.Context())
	if err != nil || len(report.Problems) != 100 || report.More < 200 {
		t.Errorf("%d problems and %d more (%v)", len(report.Problems), report.More, err)
	}
}
