package sqlite_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"rimside/store/fault"
	"rimside/store/sqlite"
)

func TestEveryConnectionIsSetUp(t *testing.T) {
	book := open(t, t.TempDir())
	for _, writes := range []bool{true, false} {
		for pragma, want := range map[string]string{
			"busy_timeout": "5000", "journal_mode": "wal", "synchronous": "2", "foreign_keys": "1", "secure_delete": "1",
			"wal_autocheckpoint": "0", "query_only": map[bool]string{true: "0", false: "1"}[writes],
		} {
			if got := book.Value(t, writes, "PRAGMA "+pragma); got != want {
				t.Errorf("writes %v: %s is %s, want %s", writes, pragma, got, want)
			}
		}
	}
}

func TestOnlyTheOwnerReads(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no such permissions; a user's folder there is private by itself")
	}
	dir := filepath.Join(t.TempDir(), "new", "folder")
	book := open(t, dir)
	push(t, book, op(idA, rec, "photo", `{"blob":"`+aPhoto(t, book, "x")+`"}`))
	if err := book.Tick(t.Context()); err != nil {
		t.Fatal(err)
	}
	if err := book.Backup(t.Context(), filepath.Join(dir, "backup.tar")); err != nil {
		t.Fatal(err)
	}
	files := 0
	err := filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := entry.Info()
		if err != nil {
			return err
		}
		if info.Mode().Perm()&0o077 != 0 {
			t.Errorf("%s has the permissions %v", path, info.Mode())
		}
		files++
		return nil
	})
	if err != nil || files < 10 {
		t.Errorf("%d files and folders seen (%v): this test shows nothing", files, err)
	}
}

func TestFolderNamesWithSigns(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a ?%20#&=é")
	push(t, open(t, dir), op(idA, rec, "tyre", `{}`))
	if _, err := os.Stat(filepath.Join(dir, "rimside.sqlite-wal")); err != nil {
		t.Error(err)
	}
}

func TestBookIsThereAgain(t *testing.T) {
	dir := t.TempDir()
	book, err := sqlite.Open(dir, options())
	if err != nil {
		t.Fatal(err)
	}
	push(t, book, someOps(30)...)
	before, _ := book.About(t.Context())
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	if after, err := open(t, dir).About(t.Context()); err != nil || after != before || after.Count != 30 {
		t.Errorf("the book is %+v (%v), want %+v", after, err, before)
	}
}

func TestUnusableFiles(t *testing.T) {
	for name, c := range map[string]struct {
		content []byte
		code    string
	}{
		"no database":      {[]byte(strings.Repeat("this is a text. ", 1000)), "damaged"},
		"another database": {foreignDatabase(t), "not_rimside"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			path := filepath.Join(dir, "rimside.sqlite")
			if err := os.WriteFile(path, c.content, 0o600); err != nil {
				t.Fatal(err)
			}
			_, err := sqlite.Open(dir, options())
			wantRefusal(t, err, c.code)
		})
	}
	if _, err := sqlite.Open(t.TempDir(), sqlite.Options{}); err == nil {
		t.Error("a book was opened that would keep erased photos")
	}
}

// wantRefusal checks that the error is one to show, and that it says what to do.
func wantRefusal(t testing.TB, err error, code string) {
	t.Helper()
	if refused := (*fault.Error)(nil); !errors.As(err, &refused) || refused.Code != code || !strings.HasSuffix(strings.TrimSpace(refused.Message), ".") {
		t.Errorf("error %v, want one of the code %s", err, code)
	}
}
