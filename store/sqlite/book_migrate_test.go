package sqlite_test

import (
	"bytes"
	"database/sql"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

// makeDatabase runs a script into a new database file.
func makeDatabase(t testing.TB, path, script string) {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if _, err := db.Exec(script); err != nil {
		t.Fatal(err)
	}
}

func foreignDatabase(t testing.TB) []byte {
	path := filepath.Join(t.TempDir(), "other.sqlite")
	makeDatabase(t, path, "CREATE TABLE book (title TEXT)")
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return content
}

// later is this program's migrations and one more.
func later(t *testing.T, script string) fstest.MapFS {
	files := fstest.MapFS{"migrations/9999_later.sql": {Data: []byte(script)}}
	for _, name := range sqlite.MigrationNames() {
		content, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: content}
	}
	return files
}

// The formats of all versions so far, each as a script that makes the file which that version left, stay in testdata for
// ever: every later version opens them.
func TestOldFormats(t *testing.T) {
	scripts, err := filepath.Glob("testdata/format-*.sql")
	if before := len(sqlite.MigrationNames()) - 1; err != nil || len(scripts) < before {
		t.Fatalf("%d old formats (%v) of %d: keep what the last program of each left", len(scripts), err, before)
	}
	for _, name := range scripts {
		t.Run(filepath.Base(name), func(t *testing.T) {
			script, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			dir := t.TempDir()
			makeDatabase(t, filepath.Join(dir, "rimside.sqlite"), string(script))
			book := open(t, dir)
			about, err := book.About(t.Context())
			want := sqlite.About{Book: aBook, Log: "b2eea52be79961aff9eb8fba1bb9a9e9", Server: "9f4bdbbfcb2a9acb4f1a1a2f1ba4a9b6", Count: 5, Digest: about.Digest}
			if err != nil || about != want {
				t.Errorf("the book is %+v (%v), want %+v", about, err, want)
			}
			healthy(t, book) // the digest too
			log := pullAll(t, book)
			if len(log) != 5 || string(log[0]) != oldOps[0] || string(log[4]) != oldOps[4] {
				t.Errorf("the log is %s", log)
			}
			if again := push(t, book, json.RawMessage(oldOps[0]), op(idC, two, "tyre", `{}`)); len(again.Known) != 1 || len(again.Stored) != 1 {
				t.Errorf("a push into the old file: %+v", again)
			}
			if erased, err := book.BlobErased(t.Context(), oldErasedPhoto); !erased || err != nil {
				t.Errorf("the erased photo of old: %v, %v", erased, err)
			}
		})
	}
}

func TestAnOldFileKnowsItsDevices(t *testing.T) {
	script, err := os.ReadFile("testdata/format-1.sql")
	if err != nil {
		t.Fatal(err)
	}
	in, out := oplog.NewID(), oplog.NewID()
	rows := ""
	for _, each := range []json.RawMessage{
		op(oplog.NewID(), in, "device", `{"label":"x","revoked":false}`), op(oplog.NewID(), out, "device", `{"revoked":true}`),
		op(oplog.NewID(), out, "device", `{"revoked":false}`), op(oplog.NewID(), in, "tyre", `{"revoked":true}`),
	} {
		read, _ := oplog.Parse(each)
		rows += fmt.Sprintf("INSERT INTO ops (id, rec, erased, via, received_at, bytes) VALUES (x'%s', x'%s', 0, '', 0, CAST('%s' AS BLOB));", read.ID, read.Rec, each)
	}
	dir := t.TempDir()
	makeDatabase(t, filepath.Join(dir, "rimside.sqlite"), string(script)+rows)
	book := open(t, dir)
	if isRevoked(t, book, in) || !isRevoked(t, book, out) {
		t.Error("shut out is not who was shut out")
	}
	if found, err := book.Devices(t.Context()); err != nil || len(found) != 2 {
		t.Errorf("the devices are %v (%v)", found, err)
	}
}

func TestMigrationAfterACopy(t *testing.T) {
	dir := t.TempDir()
	book, err := sqlite.Open(dir, options())
	if err != nil {
		t.Fatal(err)
	}
	push(t, book, op(idA, rec, "tyre", `{"name":"`+secret+`"}`))
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	sqlite.UseMigrations(t, later(t, "ALTER TABLE ops ADD COLUMN later TEXT; CREATE TABLE things (x)"))
	book = open(t, dir)
	if got := book.Value(t, false, "SELECT count(later) FROM ops"); got != "0" {
		t.Errorf("the new column holds %s values", got)
	}
	copies, err := os.ReadDir(filepath.Join(dir, "copies"))
	formats, _ := filepath.Glob("migrations/*.sql")
	if err != nil || len(copies) != 1 || copies[0].Name() != fmt.Sprintf("before-format-%d.sqlite", len(formats)+1) {
		t.Fatalf("the copies are %v (%v), want one of before", copies, err)
	}
	// That copy is cleared of erased values as well, although its format is older.
	push(t, book, eraseOp(rec))
	if found := holding(t, dir, secret); len(found) > 0 {
		t.Errorf("the erased value stands in %v", found)
	}
	healthy(t, book)
}

func TestNoCopyOfANewFile(t *testing.T) {
	dir := t.TempDir()
	sqlite.UseMigrations(t, later(t, "CREATE TABLE things (x)"))
	open(t, dir)
	if _, err := os.ReadDir(filepath.Join(dir, "copies")); !os.IsNotExist(err) {
		t.Errorf("copies of nothing: %v", err)
	}
}

func TestFailedMigrationChangesNothing(t *testing.T) {
	dir := t.TempDir()
	ops := someOps(3)
	book, err := sqlite.Open(dir, options())
	if err != nil {
		t.Fatal(err)
	}
	push(t, book, ops...)
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	t.Run("with the later program", func(t *testing.T) {
		sqlite.UseMigrations(t, later(t, "CREATE TABLE things (x); DELETE FROM ops; SELECT no_such_function()"))
		if book, err := sqlite.Open(dir, options()); err == nil {
			t.Error("it opened")
			_ = book.Close()
		}
	})
	book = open(t, dir)
	if log := pullAll(t, book); !slices.EqualFunc(log, ops, func(a, b json.RawMessage) bool { return string(a) == string(b) }) {
		t.Errorf("the log is %s", log)
	}
	if got := book.Value(t, false, "SELECT count(*) FROM sqlite_schema WHERE name = 'things'"); got != "0" {
		t.Error("half of the migration stayed")
	}
}

func TestNewerFormatIsRefused(t *testing.T) {
	dir := t.TempDir()
	t.Run("made by a later program", func(t *testing.T) {
		sqlite.UseMigrations(t, later(t, "CREATE TABLE things (x)"))
		push(t, open(t, dir), someOps(3)...)
	})
	before, err := os.ReadFile(filepath.Join(dir, "rimside.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	_, err = sqlite.Open(dir, options())
	wantRefusal(t, err, "newer_format")
	known := len(sqlite.MigrationNames())
	for _, words := range []string{fmt.Sprintf("format %d,", known+1), fmt.Sprintf("up to %d.", known)} {
		if !strings.Contains(err.Error(), words) {
			t.Errorf("the refusal lacks %q: %v", words, err)
		}
	}
	if after, err := os.ReadFile(filepath.Join(dir, "rimside.sqlite")); err != nil || !bytes.Equal(before, after) {
		t.Errorf("the refused file changed (%v)", err)
	}
	if copies, err := os.ReadDir(filepath.Join(dir, "copies")); len(copies) > 0 {
		t.Errorf("a refusal made copies: %v (%v)", copies, err)
	}
}

// What the old files hold.
var oldOps = []string{
	`{"id":"10000000000000000000000000000001","at":1748779200000,"kind":"tyre","rec":"20000000000000000000000000000001","set":{"measured_mm":41.5,"exact":9007199254740993},"author":"","device":"","schema":1,"later":[]}`,
	`{"id":"10000000000000000000000000000002","at":1748779200001,"kind":"photo","rec":"20000000000000000000000000000002","set":{"blob":"abababababababababababababababababababababababababababababababab"},"author":"","device":"","schema":1}`,
	`{"id":"10000000000000000000000000000003","at":1748779200002,"kind":"photo","rec":"20000000000000000000000000000003","set":{"blob":null},"erased":true}`,
	`{"id":"10000000000000000000000000000004","at":1748779200003,"kind":"erase","rec":"20000000000000000000000000000003","set":{"kind":"photo"},"author":"","device":"","schema":1}`,
	`{"id":"10000000000000000000000000000005","at":1748779200004,"kind":"tyre","rec":"20000000000000000000000000000001","set":{"deleted":true},"bases":{},"seen":["10000000000000000000000000000001"],"author":"","device":"","schema":1}`,
}

const oldErasedPhoto = "2d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a4881"
