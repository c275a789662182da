package sqlite_test

import (
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

// everyTable writes out what a database file holds, but for how far the slow check has come.
func everyTable(t *testing.T, path string) string {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	var all strings.Builder
	for _, table := range []string{"book", "ops", "erased_records", "named_blobs", "dropped_blobs", "leaving_blobs", "secrets", "pair_codes", "devices", "damaged_ops"} {
		rows, err := db.Query("SELECT * FROM " + table)
		if err != nil {
			return "cannot be read: " + err.Error()
		}
		columns, err := rows.Columns()
		if err != nil {
			t.Fatal(err)
		}
		for rows.Next() {
			values, into := make([]any, len(columns)), make([]any, len(columns))
			for i := range values {
				into[i] = &values[i]
			}
			if err := rows.Scan(into...); err != nil {
				return "cannot be read: " + err.Error()
			}
			fmt.Fprintf(&all, "%s %x\n", table, values)
		}
		if err := rows.Err(); err != nil {
			return "cannot be read: " + err.Error()
		}
	}
	return all.String()
}

// One bit flips anywhere in the file: either somebody says so, or it lay where nothing is written.
func TestEveryFlippedBitIsNoticed(t *testing.T) {
	dir := t.TempDir()
	book, err := sqlite.Open(dir, options())
	if err != nil {
		t.Fatal(err)
	}
	push(t, book, someOps(60)...)
	push(t, book, op(idA, rec, "photo", `{"blob":"`+aPhoto(t, book, "named")+`","note":"`+strings.Repeat("long ", 2000)+`"}`), op(idB, two, "photo", `{"blob":"`+aPhoto(t, book, "erased")+`"}`))
	push(t, book, eraseOp(two))
	if err := book.Pair(t.Context(), strings.Repeat("d", 32), "Blue phone"); err != nil {
		t.Fatal(err)
	}
	if _, err := book.Secret(t.Context(), "cookies", func() ([]byte, error) { return []byte("a key of some length"), nil }); err != nil {
		t.Fatal(err)
	}
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	whole, err := os.ReadFile(filepath.Join(dir, "rimside.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	before := everyTable(t, filepath.Join(dir, "rimside.sqlite"))
	chance := rand.New(rand.NewPCG(7, uint64(len(whole))))
	noticed, idle := 0, 0
	for range 150 {
		place, bit := chance.IntN(len(whole)), byte(1)<<chance.IntN(8)
		flipped := slices.Clone(whole)
		flipped[place] ^= bit
		path := filepath.Join(t.TempDir(), "rimside.sqlite")
		if err := os.WriteFile(path, flipped, 0o600); err != nil {
			t.Fatal(err)
		}
		switch {
		case isNoticed(t, filepath.Dir(path)):
			noticed++
		case everyTable(t, path) == before:
			idle++
		default:
			t.Errorf("bit %#x of byte %d flipped, and nobody noticed: %s", bit, place, firstChange(before, everyTable(t, path)))
		}
	}
	if t.Logf("%d noticed, %d where nothing is written", noticed, idle); noticed < 40 {
		t.Errorf("only %d flips were noticed: this test shows little", noticed)
	}
}

func firstChange(before, after string) string {
	was, is := strings.Split(before, "\n"), strings.Split(after, "\n")
	for i := range min(len(was), len(is)) {
		if was[i] != is[i] {
			return fmt.Sprintf("%.300s is now %.300s", was[i], is[i])
		}
	}
	return fmt.Sprintf("%d rows are now %d", len(was), len(is))
}

func isNoticed(t *testing.T, dir string) bool {
	t.Helper()
	book, err := sqlite.Open(dir, options())
	if err != nil {
		return true
	}
	defer book.Close()
	report, err := book.Verify(t.Context())
	return err != nil || len(report.Problems) > 0
}

// flip changes one bit of an op's stored bytes behind the book's back.
func flip(t *testing.T, book *sqlite.Book, id string) {
	t.Helper()
	book.Exec(t, "UPDATE ops SET bytes = CAST(replace(CAST(bytes AS TEXT), '41.5', '41.4') AS BLOB) WHERE id = unhex(?)", id)
}

// An op whose value changed on the disk goes to nobody. It leaves the log, which phones see by the digest, and a phone's
// bytes bring it back if they are those that came.
func TestADamagedOpComesBackFromAPhone(t *testing.T) {
	book := open(t, t.TempDir())
	a, b := op(idA, rec, "tyre", `{"measured_mm":41.5}`), op(idB, rec, "tyre", `{"measured_mm":42}`)
	push(t, book, a, b)
	whole, err := book.About(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	flip(t, book, idA)
	if log := pullAll(t, book); len(log) != 1 || string(log[0]) != string(b) {
		t.Errorf("the log is %s, want the whole op alone", log)
	}
	book.Settle()
	lacking, err := book.About(t.Context())
	if err != nil || lacking.Count != 1 || lacking.Digest == whole.Digest {
		t.Errorf("without the damaged op the book is %+v (%v)", lacking, err)
	}
	if wanted, err := book.Wanted(t.Context(), 10); err != nil || !slices.Equal(wanted.Ops, []string{idA}) {
		t.Errorf("wanted are %+v (%v)", wanted, err)
	}
	if health := book.Health(t.Context()); health.OK() || health.State != "damaged" || health.Damaged != 1 {
		t.Errorf("the health is %+v", health)
	}
	if pushed := push(t, book, op(idA, rec, "tyre", `{"measured_mm":50}`)); len(pushed.Rejected) != 1 || pushed.Rejected[0].Code != oplog.OtherContent {
		t.Errorf("other bytes under its id: %+v", pushed)
	}
	if pushed := push(t, book, a); !slices.Equal(pushed.Stored, []string{idA}) {
		t.Errorf("the bytes that came: %+v", pushed)
	}
	if again, err := book.About(t.Context()); err != nil || again != whole {
		t.Errorf("the book is %+v (%v), want %+v", again, err, whole)
	}
	if log := pullAll(t, book); len(log) != 2 || string(log[1]) != string(a) {
		t.Errorf("the log is %s: phones that read on must meet the op", log)
	}
	healthy(t, book)
}

// The slow check finds what nobody reads, photos too.
func TestScrub(t *testing.T) {
	dir := t.TempDir()
	book := open(t, dir)
	hash := aPhoto(t, book, "named")
	push(t, book, op(idA, rec, "tyre", `{"measured_mm":41.5}`), op(idB, rec, "photo", `{"blob":"`+hash+`"}`))
	flip(t, book, idA)
	damage(t, dir, hash)
	if err := book.Scrub(t.Context()); err != nil {
		t.Fatal(err)
	}
	wanted, err := book.Wanted(t.Context(), 10)
	if err != nil || !slices.Equal(wanted.Ops, []string{idA}) || !slices.Equal(wanted.Photos, []string{hash}) {
		t.Errorf("wanted are %+v (%v)", wanted, err)
	}
	if health := book.Health(t.Context()); health.CheckedAt != noon.UnixMilli() {
		t.Errorf("the last check was at %d", health.CheckedAt)
	}
	aPhoto(t, book, "named")
	push(t, book, op(idA, rec, "tyre", `{"measured_mm":41.5}`))
	if wanted, err := book.Wanted(t.Context(), 10); err != nil || len(wanted.Ops)+len(wanted.Photos) > 0 {
		t.Errorf("still wanted are %+v (%v)", wanted, err)
	}
	healthy(t, book)
}

// A damaged op never goes into a copy or a backup, and never out in an export.
func TestCopiesAreSound(t *testing.T) {
	dir := t.TempDir()
	book := open(t, dir)
	push(t, book, op(idA, rec, "tyre", `{"measured_mm":41.5}`), op(idB, rec, "tyre", `{"x":1}`))
	flip(t, book, idA)
	backup := filepath.Join(t.TempDir(), "backup.tar")
	if err := book.Backup(t.Context(), backup); err != nil {
		t.Fatal(err)
	}
	home := filepath.Join(t.TempDir(), "home")
	if err := restore(t, backup, home); err != nil {
		t.Fatal(err)
	}
	again := open(t, home)
	if log := pullAll(t, again); len(log) != 1 {
		t.Errorf("the log is %s", log)
	}
	if pushed := push(t, again, op(idA, rec, "tyre", `{"measured_mm":41.5}`)); len(pushed.Stored) != 1 {
		t.Errorf("a phone brings it back: %+v", pushed)
	}
	healthy(t, again)
}

// A row that is damaged beside an op that is not is made anew from the op.
func TestADamagedRowIsMadeAnew(t *testing.T) {
	book := open(t, t.TempDir())
	photo := aPhoto(t, book, "named")
	a := op(idA, rec, "photo", `{"blob":"`+photo+`"}`)
	push(t, book, a)
	repairs := 0
	for _, harm := range []string{"rec = unhex('" + two + "')", "id = unhex('" + idC + "')", "erased = 1", "via = 'somebody else'"} {
		book.Exec(t, "UPDATE ops SET "+harm)
		if err := book.Scrub(t.Context()); err != nil {
			t.Fatal(err)
		}
		if log := pullAll(t, book); len(log) != 1 || string(log[0]) != string(a) {
			t.Errorf("%s: the log is %s", harm, log)
		}
		repairs++
		report, err := book.Verify(t.Context())
		if err != nil || len(report.Problems) != repairs || !strings.Contains(report.Problems[0], "made anew") {
			t.Errorf("%s: after %d repairs the report is %+v (%v)", harm, repairs, report, err)
		}
	}
}

func TestAPageCarriesOneHash(t *testing.T) {
	book := open(t, t.TempDir())
	ops := someOps(30)
	push(t, book, ops...)
	push(t, book, op(idA, rec, "note", `{"text":"x"}`))
	push(t, book, eraseOp(rec))
	page, err := book.Pull(t.Context(), "", "", 0, 500)
	if err != nil || page.Hash != hashOf(page.Ops) || len(page.Ops) != 32 {
		t.Errorf("the hash of %d ops is %s (%v), want %s", len(page.Ops), page.Hash, err, hashOf(page.Ops))
	}
	if page, err := book.Pull(t.Context(), "", "", 99, 500); err != nil || page.Hash != hashOf(nil) {
		t.Errorf("the hash of nothing is %s (%v)", page.Hash, err)
	}
}

// hashOf is what a phone computes.
func hashOf(ops []json.RawMessage) string {
	var row []byte
	for _, op := range ops {
		sum := sha256.Sum256(op)
		row = append(row, sum[:]...)
	}
	sum := sha256.Sum256(row)
	return hex.EncodeToString(sum[:])
}

// An erase leaves nothing of an op that was damaged and taken out, either.
func TestEraseOfADamagedOp(t *testing.T) {
	dir := t.TempDir()
	book := open(t, dir)
	push(t, book, op(idA, rec, "note", `{"measured_mm":41.5,"text":"`+secret+`"}`), op(idB, rec, "note", `{"text":"`+secret+` 2"}`))
	flip(t, book, idA)
	if err := book.Scrub(t.Context()); err != nil {
		t.Fatal(err)
	}
	book.Exec(t, "UPDATE ops SET bytes = CAST('{' || CAST(bytes AS TEXT) AS BLOB) WHERE id = unhex(?)", idB) // and this one nobody has found yet
	push(t, book, eraseOp(rec))
	if found := holding(t, dir, secret); len(found) > 0 {
		t.Errorf("the erased value stands in %v", found)
	}
	push(t, book, op(idA, rec, "note", `{"measured_mm":41.5,"text":"`+secret+`"}`), op(idB, rec, "note", `{"text":"`+secret+` 2"}`))
	if found := holding(t, dir, secret); len(found) > 0 {
		t.Errorf("a late phone brought the erased value back into %v", found)
	}
	if log := pullAll(t, book); len(log) != 3 {
		t.Errorf("the log is %s", log)
	}
	healthy(t, book)
}
