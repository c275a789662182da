package history

import (
	"errors"
	"fmt"
	"slices"

	"rimside/store/oplog"
)

// Server is what a phone can do with a server.
type Server interface {
	Push(log string, ops [][]byte) (log2 string, rejected []string, err error)
	Pull(log string, since int64, limit int) (Page, error)
	Wipe() error
	Keep() error
	PutBack() error
	Ops() ([]oplog.Op, error) // everything it holds
}

// Page is an answer to a pull.
type Page struct {
	Log    string
	Ops    [][]byte
	Next   int64
	More   bool
	Count  int64
	Digest string
}

// Memory is the simplest server: a list, by the rules of the log.
type Memory struct {
	log    string
	ops    []oplog.Op
	kept   *Memory
	Skips  bool // broken: every page leaves out its second op
	pulled int
}

// NewMemory makes an empty one.
func NewMemory() *Memory { return &Memory{log: oplog.NewID()} }

// Push appends what is new.
func (m *Memory) Push(_ string, raws [][]byte) (string, []string, error) {
	var rejected []string
	for _, raw := range raws {
		op, fault := oplog.Parse(raw)
		if fault != nil {
			return "", nil, fault
		}
		if at := slices.IndexFunc(m.ops, func(held oplog.Op) bool { return held.ID == op.ID }); at >= 0 {
			if !oplog.Same(m.ops[at].Raw, raw) {
				rejected = append(rejected, op.ID)
			}
			continue
		}
		m.ops = append(m.ops, op)
	}
	eraseAll(m.ops)
	return m.log, rejected, nil
}

// eraseAll takes the values of erased records away.
func eraseAll(ops []oplog.Op) {
	erased := map[string]bool{}
	for _, op := range ops {
		erased[op.Rec] = erased[op.Rec] || op.Erases()
	}
	for i, op := range ops {
		if erased[op.Rec] {
			ops[i] = op.Erase()
		}
	}
}

// Pull gives a page.
func (m *Memory) Pull(log string, since int64, limit int) (Page, error) {
	page := Page{Log: m.log, Count: int64(len(m.ops)), Digest: digestOf(m.ops)}
	if log != "" && log != m.log {
		return page, nil
	}
	from := min(since, int64(len(m.ops)))
	to := min(from+int64(limit), int64(len(m.ops)))
	for _, op := range m.ops[from:to] {
		if m.pulled++; m.Skips && m.pulled%7 == 0 {
			continue
		}
		page.Ops = append(page.Ops, op.Raw)
	}
	page.Next, page.More = to, to < int64(len(m.ops))
	return page, nil
}

func digestOf(ops []oplog.Op) string {
	var digest oplog.Digest
	for _, op := range ops {
		digest.Toggle(op.ID)
	}
	return digest.String()
}

// Wipe starts anew, as a new log.
func (m *Memory) Wipe() error {
	m.ops, m.log = nil, oplog.NewID()
	return nil
}

// Keep remembers how things stand.
func (m *Memory) Keep() error {
	m.kept = &Memory{log: m.log, ops: slices.Clone(m.ops)}
	return nil
}

// PutBack goes back to what was kept, log id and all.
func (m *Memory) PutBack() error {
	if m.kept != nil {
		m.ops, m.log = slices.Clone(m.kept.ops), m.kept.log
	}
	return nil
}

// Ops lists everything.
func (m *Memory) Ops() ([]oplog.Op, error) { return m.ops, nil }

// errLost is an answer that never arrived.
var errLost = errors.New("the answer got lost")

// flaky loses one answer, after the server has done its work.
type flaky struct {
	Server
	lost, asked int
}

func (f *flaky) answer() error {
	if f.asked++; f.asked == f.lost {
		return fmt.Errorf("request %d: %w", f.asked, errLost)
	}
	return nil
}

func (f *flaky) Push(log string, ops [][]byte) (string, []string, error) {
	real, rejected, err := f.Server.Push(log, ops)
	return real, rejected, errors.Join(err, f.answer())
}

func (f *flaky) Pull(log string, since int64, limit int) (Page, error) {
	page, err := f.Server.Pull(log, since, limit)
	return page, errors.Join(err, f.answer())
}
