package sqlite_test

import (
	"archive/tar"
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rimside/store/blob"
	"rimside/store/sqlite"
)

// aBackup is a backup of a book with ops, a photo and a key, and that book.
func aBackup(t *testing.T) (path string, book *sqlite.Book) {
	t.Helper()
	dir := t.TempDir()
	book = open(t, dir)
	push(t, book, op(idA, rec, "photo", `{"blob":"`+aPhoto(t, book, "kept")+`"}`), op(idB, rec, "tyre", `{"x":9007199254740993}`))
	if err := os.MkdirAll(filepath.Join(dir, "trust", "deep"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "trust", "deep", "ca.key"), []byte("a key"), 0o600); err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "backup.tar")
	if err := book.Backup(t.Context(), path); err != nil {
		t.Fatal(err)
	}
	return path, book
}

func restore(t *testing.T, backup, dir string) error {
	t.Helper()
	return sqlite.Restore(t.Context(), backup, dir, options())
}

func TestBackupAndRestore(t *testing.T) {
	path, book := aBackup(t)
	push(t, book, op(idC, two, "tyre", `{}`)) // after the backup
	dir := filepath.Join(t.TempDir(), "new", "home")
	if err := restore(t, path, dir); err != nil {
		t.Fatal(err)
	}
	again := open(t, dir)
	was, _ := book.About(t.Context())
	is, err := again.About(t.Context())
	if err != nil || is.Book != was.Book || is.Server != was.Server || is.Log == was.Log || is.Count != 2 {
		t.Errorf("the restored book is %+v (%v), the old one %+v", is, err, was)
	}
	if report := healthy(t, again); report.Blobs != 1 || len(report.Remarks) > 0 {
		t.Errorf("the report is %+v", report)
	}
	if log := pullAll(t, again); !slices.EqualFunc(log, pullAll(t, book)[:2], func(a, b json.RawMessage) bool { return string(a) == string(b) }) {
		t.Errorf("the log is %s", log)
	}
	if key, err := os.ReadFile(filepath.Join(dir, "trust", "deep", "ca.key")); string(key) != "a key" {
		t.Errorf("the key is %q (%v)", key, err)
	}
	entries, err := os.ReadDir(dir)
	for _, entry := range entries {
		if strings.HasPrefix(entry.Name(), ".") {
			t.Errorf("%s was left behind", entry.Name())
		}
	}
	if pushed := push(t, again, pullAll(t, book)...); len(pushed.Known) != 2 || len(pushed.Stored) != 1 {
		t.Errorf("what a phone brings: %+v", pushed)
	}
	if err != nil {
		t.Error(err)
	}
}

func TestBackupReplacesOnlyByAWholeOne(t *testing.T) {
	path, book := aBackup(t)
	first, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	push(t, book, op(idC, two, "tyre", `{}`))
	if err := book.Backup(t.Context(), path); err != nil {
		t.Fatal(err)
	}
	second, err := os.ReadFile(path)
	if err != nil || bytes.Equal(first, second) {
		t.Errorf("the backup did not change (%v)", err)
	}
	if err := book.Backup(t.Context(), filepath.Join(filepath.Dir(path), "no", "such", "folder.tar")); err == nil {
		t.Error("a backup into a folder that is not there succeeded")
	}
	if left, err := os.ReadDir(filepath.Dir(path)); err != nil || len(left) != 1 {
		t.Errorf("%v is beside the backup (%v)", left, err)
	}
}

// A photo that was damaged on the disk must not make the whole backup worthless.
func TestBackupLeavesOutDamagedPhotos(t *testing.T) {
	dir := t.TempDir()
	book := open(t, dir)
	hash := aPhoto(t, book, "damaged")
	damage(t, dir, hash)
	path := filepath.Join(t.TempDir(), "backup.tar")
	if err := book.Backup(t.Context(), path); err != nil {
		t.Fatal(err)
	}
	home := t.TempDir()
	if err := restore(t, path, home); err != nil {
		t.Error(err)
	}
	if has, err := blob.Open(home).Has(hash); has || err != nil {
		t.Errorf("the damaged photo is here: %v, %v", has, err)
	}
}

func TestRestoreRefuses(t *testing.T) {
	good, _ := aBackup(t)
	whole, err := os.ReadFile(good)
	if err != nil {
		t.Fatal(err)
	}
	members := unpacked(t, whole)
	database := members["rimside.sqlite"]
	broken := bytes.Clone(database)
	for i := 4096 * 2; i < len(broken); i += 7 {
		broken[i] ^= 0xff
	}
	for name, c := range map[string]struct {
		backup []byte
		code   string
	}{
		"no backup":              {[]byte("just a text"), "not_rimside"},
		"an empty file":          {nil, "not_rimside"},
		"cut in the database":    {whole[:len(database)/2], "damaged"},
		"cut in a photo":         {whole[:bytes.Index(whole, []byte("\xff\xd8\xff"))+5], "damaged"},
		"no database":            {packed(t, "trust/x", "y"), "not_rimside"},
		"a damaged database":     {packed(t, "rimside.sqlite", string(broken)), "damaged"},
		"a text for a database":  {packed(t, "rimside.sqlite", strings.Repeat("text", 2000)), "damaged"},
		"another database":       {packed(t, "rimside.sqlite", string(foreignDatabase(t))), "not_rimside"},
		"a newer database":       {packed(t, "rimside.sqlite", newerDatabase(t)), "newer_format"},
		"an unknown member":      {packed(t, "rimside.sqlite", string(database), "later/x", "y"), "newer_format"},
		"a way out of trust":     {packed(t, "rimside.sqlite", string(database), "trust/../../x", "y"), "newer_format"},
		"one name twice":         {packed(t, "rimside.sqlite", string(database), "trust/x", "y", "trust/x", "z"), "not_rimside"},
		"a photo of other bytes": {packed(t, "rimside.sqlite", string(database), "blobs/"+strings.Repeat("ab", 32), jpeg("x")), ""},
		"a way out of blobs":     {packed(t, "rimside.sqlite", string(database), "blobs/../x", jpeg("x")), ""},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "backup.tar")
			if err := os.WriteFile(path, c.backup, 0o600); err != nil {
				t.Fatal(err)
			}
			above := t.TempDir()
			dir := filepath.Join(above, "home")
			err := restore(t, path, dir)
			if c.code != "" {
				wantRefusal(t, err, c.code)
			} else if err == nil {
				t.Error("it was restored")
			}
			if left, _ := os.ReadDir(above); len(left) > 0 {
				t.Errorf("%v was left behind", left)
			}
		})
	}
	t.Run("a folder with a book", func(t *testing.T) {
		dir := t.TempDir()
		push(t, open(t, dir), op(idC, rec, "tyre", `{}`))
		wantRefusal(t, restore(t, good, dir), "folder_taken")
	})
	t.Run("but not what a crash left of an earlier try", func(t *testing.T) {
		dir := t.TempDir()
		left := filepath.Join(dir, ".unfinished-restore-1", "blobs")
		if err := os.MkdirAll(left, 0o700); err != nil {
			t.Fatal(err)
		}
		if err := restore(t, good, dir); err != nil {
			t.Error(err)
		}
		if _, err := os.Stat(left); !os.IsNotExist(err) {
			t.Errorf("the leftover is still there: %v", err)
		}
	})
	t.Run("a file that is not there", func(t *testing.T) {
		if err := restore(t, filepath.Join(t.TempDir(), "none"), t.TempDir()); err == nil {
			t.Error("it was restored")
		}
	})
}

// packed makes a tar file of names and contents.
func packed(t *testing.T, members ...string) []byte {
	t.Helper()
	var out bytes.Buffer
	archive := tar.NewWriter(&out)
	for pair := range slices.Chunk(members, 2) {
		if err := archive.WriteHeader(&tar.Header{Typeflag: tar.TypeReg, Name: pair[0], Size: int64(len(pair[1])), Mode: 0o600}); err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(archive, pair[1]); err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func unpacked(t *testing.T, content []byte) map[string][]byte {
	t.Helper()
	members := map[string][]byte{}
	for archive := tar.NewReader(bytes.NewReader(content)); ; {
		header, err := archive.Next()
		if err == io.EOF {
			return members
		}
		if err != nil {
			t.Fatal(err)
		}
		if members[header.Name], err = io.ReadAll(archive); err != nil {
			t.Fatal(err)
		}
	}
}

// newerDatabase is the content of a database that a later program made.
func newerDatabase(t *testing.T) (content string) {
	t.Run("by a later program", func(t *testing.T) {
		sqlite.UseMigrations(t, later(t, "CREATE TABLE things (x)"))
		path := filepath.Join(t.TempDir(), "backup.tar")
		if err := open(t, t.TempDir()).Backup(t.Context(), path); err != nil {
			t.Fatal(err)
		}
		whole, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		content = string(unpacked(t, whole)["rimside.sqlite"])
	})
	return content
}

// damage changes a photo on the disk.
func damage(t *testing.T, dir, hash string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, "blobs", hash[:2], hash), []byte(jpeg("other")), 0o600); err != nil {
		t.Fatal(err)
	}
}
