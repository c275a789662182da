package sqlite_test

import (
	"context"
	"encoding/json"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"rimside/store/blob"
	"rimside/store/oplog"
	"rimside/store/oplog/history"
	"rimside/store/sqlite"
)

// shelf is a data folder that a history may wipe, copy and put back.
type shelf struct {
	t    *testing.T
	dir  string
	kept string
	book *sqlite.Book
}

const historyBook = "b00c0000000000000000000000000001"

func newShelf(t *testing.T) *shelf {
	s := &shelf{t: t, dir: t.TempDir()}
	s.open()
	return s
}

func (s *shelf) open() {
	book, err := sqlite.Open(s.dir, sqlite.Options{Blobs: blob.In})
	if err != nil {
		s.t.Fatal(err)
	}
	s.book = book
}

func (s *shelf) shut() {
	if err := s.book.Close(); err != nil {
		s.t.Error(err)
	}
}

func (s *shelf) Push(log string, ops [][]byte) (string, []string, error) {
	raws := make([]json.RawMessage, len(ops))
	for i, raw := range ops {
		raws[i] = raw
	}
	pushed, err := s.book.Push(context.Background(), historyBook, log, raws, "")
	var rejected []string
	for _, each := range pushed.Rejected {
		rejected = append(rejected, each.ID)
	}
	return pushed.Log, rejected, err
}

func (s *shelf) Pull(log string, since int64, limit int) (history.Page, error) {
	page, err := s.book.Pull(context.Background(), historyBook, log, since, limit)
	out := history.Page{Log: page.Log, Next: page.Next, More: page.More, Count: page.Count, Digest: page.Digest}
	for _, raw := range page.Ops {
		out.Ops = append(out.Ops, raw)
	}
	return out, err
}

func (s *shelf) Wipe() error {
	s.shut()
	err := os.RemoveAll(s.dir)
	s.open()
	return err
}

func (s *shelf) Keep() error {
	s.shut() // so that the copy is whole
	s.kept = s.t.TempDir()
	err := copyFolder(s.kept, s.dir)
	s.open()
	return err
}

func (s *shelf) PutBack() error {
	if s.kept == "" {
		return nil
	}
	s.shut()
	err := os.RemoveAll(s.dir)
	if err == nil {
		err = copyFolder(s.dir, s.kept)
	}
	s.open()
	return err
}

func (s *shelf) Ops() ([]oplog.Op, error) {
	var ops []oplog.Op
	for since, more := int64(0), true; more; {
		page, err := s.book.Pull(context.Background(), "", "", since, 500)
		if err != nil {
			return nil, err
		}
		for _, raw := range page.Ops {
			op, fault := oplog.Parse(raw)
			if fault != nil {
				return nil, fault
			}
			ops = append(ops, op)
		}
		since, more = page.Next, page.More
	}
	report, err := s.book.Verify(context.Background())
	for _, problem := range report.Problems {
		s.t.Errorf("verify: %s", problem)
	}
	return ops, err
}

func copyFolder(to, from string) error {
	return filepath.WalkDir(from, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		if entry.IsDir() {
			return os.MkdirAll(filepath.Join(to, name), 0o700)
		}
		in, err := os.Open(path)
		if err != nil {
			return err
		}
		defer in.Close()
		out, err := os.OpenFile(filepath.Join(to, name), os.O_CREATE|os.O_WRONLY, 0o600)
		if err != nil {
			return err
		}
		defer out.Close()
		_, err = io.Copy(out, in)
		return err
	})
}

// The histories, with real files: wiped, copied and put back as somebody would do it by hand. A fixed few, as each waits
// for the disk; package history lives through many more in memory.
func TestNothingIsLostWithFiles(t *testing.T) {
	for seed := range uint64(30) {
		h := history.Draw(rand.New(rand.NewPCG(seed, 11)), history.Limits{Steps: 40, Mishaps: true})
		if err := liveWithFiles(t, h); err != nil {
			t.Fatalf("%v\n%s", err, h)
		}
	}
}

func liveWithFiles(t *testing.T, h history.History) error {
	servers := make([]history.Server, h.Servers)
	for i := range servers {
		each := newShelf(t)
		defer each.shut()
		servers[i] = each
	}
	return history.Live(h, servers, history.Broken{})
}
