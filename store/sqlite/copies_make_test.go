package sqlite_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

// ticking is a book whose clock a test sets.
func ticking(t *testing.T) (book *sqlite.Book, dir string, at func(time.Time)) {
	dir = t.TempDir()
	now := noon
	settings := options()
	settings.Now = func() time.Time { return now }
	book, err := sqlite.Open(dir, settings)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = book.Close() })
	return book, dir, func(moment time.Time) {
		t.Helper()
		now = moment
		if err := book.Tick(t.Context()); err != nil {
			t.Fatal(err)
		}
	}
}

func copiesIn(t *testing.T, dir, of string) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(filepath.Join(dir, "copies"))
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		if strings.HasPrefix(entry.Name(), of) {
			names = append(names, entry.Name())
		}
	}
	return names
}

func TestCopies(t *testing.T) {
	book, dir, at := ticking(t)
	change := func() { push(t, book, op(oplog.NewID(), rec, "tyre", `{"x":1}`)) }
	change()
	for _, step := range []struct {
		minutes       int
		change        bool
		hourly, daily int // copies then
	}{
		{0, false, 1, 1},
		{1, true, 1, 1},       // this hour has its copy
		{60, false, 2, 1},     // the change of before
		{120, false, 2, 1},    // nothing changed since
		{180, true, 3, 1},     // something did
		{-600, true, 4, 1},    // a clock that was set back stops nothing
		{24 * 60, true, 5, 2}, // tomorrow
	} {
		if step.change {
			change()
		}
		at(noon.Add(time.Duration(step.minutes) * time.Minute))
		if hourly, daily := copiesIn(t, dir, "hourly-"), copiesIn(t, dir, "daily-"); len(hourly) != step.hourly || len(daily) != step.daily {
			t.Errorf("after %d minutes: %q and %q, want %d and %d", step.minutes, hourly, daily, step.hourly, step.daily)
		}
	}
	if names := copiesIn(t, dir, "hourly-"); names[0] != "hourly-000001-2025-06-01T12.sqlite" {
		t.Errorf("the first copy is %s", names[0])
	}
}

func TestOldCopiesGo(t *testing.T) {
	book, dir, at := ticking(t)
	for turn := range 36 { // of six hours
		push(t, book, op(oplog.NewID(), rec, "tyre", `{"x":1}`))
		at(noon.Add(time.Duration(turn) * 6 * time.Hour))
	}
	hourly, daily := copiesIn(t, dir, "hourly-"), copiesIn(t, dir, "daily-")
	if len(hourly) != 24 || len(daily) != 7 {
		t.Fatalf("%d hourly and %d daily copies, want 24 and 7", len(hourly), len(daily))
	}
	if want := "hourly-000013-2025-06-04T12.sqlite"; hourly[0] != want {
		t.Errorf("the oldest hourly copy is %s, want %s", hourly[0], want)
	}
}

// A copy put in the place of the file is a book as it was then.
func TestCopyInPlaceOfTheFile(t *testing.T) {
	book, dir, at := ticking(t)
	ops := someOps(12)
	push(t, book, ops[:10]...)
	at(noon)
	push(t, book, ops[10:]...)
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	name := copiesIn(t, dir, "hourly-")[0]
	if err := os.Rename(filepath.Join(dir, "copies", name), filepath.Join(dir, "rimside.sqlite")); err != nil {
		t.Fatal(err)
	}
	again := open(t, dir)
	if got := len(pullAll(t, again)); got != 10 {
		t.Errorf("%d ops in the old copy, want 10", got)
	}
	healthy(t, again)
	if pushed := push(t, again, ops...); len(pushed.Known) != 10 || len(pushed.Stored) != 2 {
		t.Errorf("what the phone brings back: %+v", pushed)
	}
}

func TestLeftoversOfACrashGo(t *testing.T) {
	book, dir, at := ticking(t)
	push(t, book, op(idA, rec, "tyre", `{}`))
	at(noon)
	path := filepath.Join(dir, "copies", ".unfinished-123.sqlite")
	if err := os.WriteFile(path, []byte("x"), 0o600); err != nil {
		t.Fatal(err)
	}
	at(noon)
	if _, err := os.Stat(path); err != nil {
		t.Errorf("a copy that may be in the making is gone: %v", err)
	}
	if err := os.Chtimes(path, time.Time{}, time.Now().Add(-2*time.Hour)); err != nil {
		t.Fatal(err)
	}
	at(noon)
	if _, err := os.Stat(path); !os.IsNotExist(err) {
		t.Errorf("the leftover is still there: %v", err)
	}
}

// A copy begun before an erase and finished after it would bring the values back.
func TestCopyDuringAnErase(t *testing.T) {
	dir := t.TempDir()
	book, another := open(t, dir), open(t, dir) // as of two programs
	push(t, book, op(idA, rec, "tyre", `{"name":"`+secret+`"}`))
	path := book.BeginCopy(t)
	late, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(late), secret) {
		t.Fatalf("the copy does not hold the value (%v): this test shows nothing", err)
	}
	push(t, another, eraseOp(rec))
	if found := holding(t, dir, secret); len(found) > 0 {
		t.Errorf("the erased value stands in %v", found)
	}
	// The copy is finished by SQLite only now.
	if err := os.WriteFile(path, late, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := book.EndCopy(t, path, "hourly-000001-x.sqlite"); err != nil {
		t.Error(err)
	}
	if names := copiesIn(t, dir, "hourly"); len(names) > 0 {
		t.Errorf("it got its name all the same: %q", names)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := book.Tick(t.Context()); err != nil {
		t.Fatal(err)
	}
	if names := copiesIn(t, dir, ""); len(names) != 2 || len(holding(t, dir, secret)) > 0 {
		t.Errorf("the copies are %q", names)
	}
}
