package sqlite_test

import (
	"os"
	"path/filepath"
	"testing"

	"rimside/store/fault"
	"rimside/store/sqlite"
)

// What is wrong with the server is never a fault of the ops that it was sent.
func TestFaultsOfTheServer(t *testing.T) {
	for code, c := range map[string]struct {
		harm string
		kind fault.Kind
	}{
		"full":      {"PRAGMA max_page_count = 1", fault.Full},
		"read_only": {"PRAGMA query_only = 1", fault.Unready},
	} {
		t.Run(code, func(t *testing.T) {
			book := open(t, t.TempDir())
			push(t, book, someOps(20)...)
			if health := book.Health(t.Context()); !health.OK() || !health.Read || !health.Write || health.Free <= 0 {
				t.Errorf("before, the health is %+v", health)
			}
			book.Exec(t, c.harm)
			_, err := book.Push(t.Context(), aBook, "", someOps(400), "")
			if said := fault.Of(err); said == nil || said.Kind != c.kind || said.Code != code {
				t.Errorf("a push fails with %v", err)
			}
			if log := pullAll(t, book); len(log) != 20 {
				t.Errorf("%d ops can still be read, want 20", len(log))
			}
			if code == "read_only" {
				book.ForgetHealth()
				if health := book.Health(t.Context()); health.OK() || health.State != code || !health.Read || health.Write {
					t.Errorf("then, the health is %+v", health)
				}
			}
			book.Exec(t, "PRAGMA query_only = 0")
			book.Exec(t, "PRAGMA max_page_count = 1000000")
		})
	}
}

// After an unclean end everything is looked at; a torn file is read, and not written any more.
func TestATornFileIsNotWritten(t *testing.T) {
	dir := t.TempDir()
	book, err := sqlite.Open(dir, options())
	if err != nil {
		t.Fatal(err)
	}
	push(t, book, someOps(2000)...)
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "rimside.sqlite")
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	clear(content[len(content)/2 : len(content)/2+3*4096])
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path+"-wal", []byte("what a crash left, and no frame of it is whole"), 0o600); err != nil {
		t.Fatal(err)
	}
	book = open(t, dir)
	_, err = book.Push(t.Context(), aBook, "", someOps(3), "")
	if said := fault.Of(err); said == nil || said.Kind != fault.Broken || said.Code != "damaged" {
		t.Errorf("a push fails with %v", err)
	}
	if health := book.Health(t.Context()); health.OK() || health.State != "damaged" {
		t.Errorf("the health is %+v", health)
	}
}
