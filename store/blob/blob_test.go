package blob_test

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/iotest"

	"rimside/store/blob"
	"rimside/store/fault"
)

const (
	jpeg = "\xff\xd8\xff\xe0"
	png  = "\x89PNG\r\n\x1a\n"
	webp = "RIFF\x00\x00\x00\x00WEBP"
)

func sum(content string) string { return fmt.Sprintf("%x", sha256.Sum256([]byte(content))) }

func TestPut(t *testing.T) {
	largest := jpeg + strings.Repeat("x", blob.MaxBytes-len(jpeg))
	for name, c := range map[string]struct {
		hash, content string
		want          error
	}{
		"a JPEG":                {sum(jpeg + "x"), jpeg + "x", nil},
		"a PNG":                 {sum(png), png, nil},
		"a WebP":                {sum(webp), webp, nil},
		"as large as may be":    {sum(largest), largest, nil},
		"one byte more":         {sum(largest + "x"), largest + "x", blob.ErrTooLarge},
		"other bytes":           {sum(jpeg + "x"), jpeg + "y", blob.ErrWrongHash},
		"cut short":             {sum(jpeg + "xy"), jpeg + "x", blob.ErrWrongHash},
		"a text":                {sum("hello"), "hello", blob.ErrWrongType},
		"a page":                {sum("<html>"), "<html>", blob.ErrWrongType},
		"a sound in the family": {sum("RIFF\x00\x00\x00\x00WAVE"), "RIFF\x00\x00\x00\x00WAVE", blob.ErrWrongType},
		"nothing":               {sum(""), "", blob.ErrWrongType},
		"no name":               {"", jpeg, blob.ErrBadName},
		"a name in capitals":    {strings.ToUpper(sum(jpeg)), jpeg, blob.ErrBadName},
		"a way out":             {"../" + sum(jpeg)[3:], jpeg, blob.ErrBadName},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			store := blob.Open(dir)
			err := store.Put(c.hash, strings.NewReader(c.content))
			if !errors.Is(err, c.want) {
				t.Fatalf("error %v, want %v", err, c.want)
			}
			if files := filesIn(t, dir); len(files) != map[bool]int{true: 1, false: 0}[c.want == nil] {
				t.Errorf("files %q", files)
			}
			if refused := (*fault.Error)(nil); c.want != nil && (!errors.As(err, &refused) || refused.Code == "" || !strings.HasSuffix(refused.Message, ".")) {
				t.Errorf("error %v is not fit to show", err)
			}
			if c.want != nil {
				return
			}
			file, err := store.Get(c.hash)
			if err != nil {
				t.Fatal(err)
			}
			defer file.Close()
			if got, err := io.ReadAll(file); string(got) != c.content || err != nil {
				t.Errorf("%d bytes come back (%v), want %d", len(got), err, len(c.content))
			}
		})
	}
}

func filesIn(t *testing.T, dir string) (files []string) {
	t.Helper()
	err := filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			files = append(files, path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func TestPutThatBreaksOff(t *testing.T) {
	dir := t.TempDir()
	torn := io.MultiReader(strings.NewReader(jpeg), iotest.ErrReader(io.ErrClosedPipe))
	if err := blob.Open(dir).Put(sum(jpeg), torn); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("error %v", err)
	}
	if files := filesIn(t, dir); len(files) > 0 {
		t.Errorf("%q was left behind", files)
	}
}

// A file that was damaged on the disk is mended by the phone that still has it.
func TestPutMends(t *testing.T) {
	dir := t.TempDir()
	store := blob.Open(dir)
	put(t, store, jpeg)
	harm(t, dir, sum(jpeg))
	if damaged, err := store.VerifyAll(); err != nil || !slices.Equal(damaged, []string{sum(jpeg)}) {
		t.Errorf("damaged %q (%v)", damaged, err)
	}
	put(t, store, jpeg)
	if damaged, err := store.VerifyAll(); err != nil || len(damaged) > 0 {
		t.Errorf("still damaged %q (%v)", damaged, err)
	}
}

func put(t *testing.T, store *blob.Store, content string) {
	t.Helper()
	if err := store.Put(sum(content), strings.NewReader(content)); err != nil {
		t.Fatal(err)
	}
}

func harm(t *testing.T, dir, hash string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, "blobs", hash[:2], hash), []byte("other"), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestWhatIsHere(t *testing.T) {
	dir := t.TempDir()
	store := blob.Open(dir)
	a, b, never := sum(jpeg+"a"), sum(jpeg+"b"), sum("never")
	if list, err := store.List(); len(list) > 0 || err != nil {
		t.Errorf("the list is %q (%v)", list, err)
	}
	put(t, store, jpeg+"a")
	put(t, store, jpeg+"b")
	for _, stray := range []string{".unfinished-1", "notes.txt", a} { // the last one in the wrong folder
		if err := os.WriteFile(filepath.Join(dir, "blobs", b[:2], stray), []byte("x"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	want := []string{a, b}
	slices.Sort(want)
	if list, err := store.List(); err != nil || !slices.Equal(list, want) {
		t.Errorf("the list is %q (%v), want %q", list, err, want)
	}
	if missing, err := store.Missing([]string{never, a, "../x", b}); err != nil || !slices.Equal(missing, []string{never}) {
		t.Errorf("missing %q (%v), want %q", missing, err, never)
	}
	if missing, err := store.Missing(nil); err != nil || missing == nil {
		t.Errorf("missing %#v (%v), want an empty list", missing, err)
	}
	for range 2 { // one that is gone is as good as deleted
		if err := store.Delete(a); err != nil {
			t.Error(err)
		}
	}
	if has, err := store.Has(a); has || err != nil {
		t.Errorf("deleted, but here: %v, %v", has, err)
	}
	if _, err := store.Get(a); !errors.Is(err, blob.ErrNotFound) {
		t.Errorf("error %v, want that it is not here", err)
	}
	for _, name := range []string{"", "..", "../../etc/passwd", strings.Repeat("g", 64)} {
		if _, err := store.Get(name); !errors.Is(err, blob.ErrBadName) {
			t.Errorf("get %q: %v", name, err)
		}
		if err := store.Delete(name); !errors.Is(err, blob.ErrBadName) {
			t.Errorf("delete %q: %v", name, err)
		}
		if has, err := store.Has(name); has || err != nil {
			t.Errorf("has %q: %v, %v", name, has, err)
		}
	}
}

// A crash while a photo arrived leaves a part of it; erasing the photo takes that away too.
func TestDeleteTakesUnfinishedParts(t *testing.T) {
	dir := t.TempDir()
	store := blob.Open(dir)
	put(t, store, jpeg)
	part := filepath.Join(dir, "blobs", sum(jpeg)[:2], ".unfinished-"+sum(jpeg)+"-123")
	if err := os.WriteFile(part, []byte(jpeg[:2]), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := store.Delete(sum(jpeg)); err != nil {
		t.Fatal(err)
	}
	if files := filesIn(t, dir); len(files) > 0 {
		t.Errorf("files %q", files)
	}
}

func TestManyPutsOfOneFile(t *testing.T) {
	dir := t.TempDir()
	store := blob.Open(dir)
	content := jpeg + strings.Repeat("x", 100_000)
	var work sync.WaitGroup
	for range 8 {
		work.Go(func() {
			if err := store.Put(sum(content), strings.NewReader(content)); err != nil {
				t.Error(err)
			}
			file, err := store.Get(sum(content))
			if err != nil {
				t.Error(err)
				return
			}
			defer file.Close()
			if got, err := io.ReadAll(file); err != nil || !bytes.Equal(got, []byte(content)) {
				t.Errorf("%d bytes read (%v)", len(got), err)
			}
		})
	}
	work.Wait()
	if files := filesIn(t, dir); len(files) != 1 {
		t.Errorf("files %q", files)
	}
}

func TestTypeOf(t *testing.T) {
	for content, want := range map[string]string{jpeg: "image/jpeg", png: "image/png", webp: "image/webp", "": "", "RIFF": "", "\xff\xd8": ""} {
		if got := blob.TypeOf([]byte(content)); got != want {
			t.Errorf("%q is %q, want %q", content, got, want)
		}
	}
}
