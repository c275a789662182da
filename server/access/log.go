package access

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"
	"net/netip"
	"os"
	"slices"
	"sync"
)

// Visit is one line of the access log: what was tried at the door, by whom as far as known, and from where.
type Visit struct {
	At     int64  `json:"at"` // ms since 1970
	What   string `json:"what"`
	Device string `json:"device"` // its record, "" when nobody knows
	From   string `json:"from"`   // an address
}

// What a visit was.
const (
	Paired  = "paired"   // let in with a code
	Guessed = "guessed"  // a wrong code
	Slowed  = "slowed"   // too many codes
	Barred  = "shut_out" // shut out by another device, which is named
	Refused = "refused"  // came although it had been shut out
)

// mostLog is how large the file may grow; then its older half goes (our choice).
const mostLog = 64 << 10 // bytes

const quiet = 60_000 // ms between two notes of those who are turned away unasked

// Log is the access log in the data folder: text, one visit a line, the newest last. Names do not stand in it.
type Log struct {
	mu   sync.Mutex
	path string
	last map[string]int64 // when a turned away visit was noted last, by what it was: nobody may keep the disk busy
}

// NewLog keeps the log in a file, which is made with the first visit.
func NewLog(path string) *Log { return &Log{path: path, last: map[string]int64{}} }

// Note adds a visit. Of those who are turned away unasked it notes one a minute. The error is the file system's.
func (l *Log) Note(at int64, what, device string, from netip.Addr) error {
	line, err := json.Marshal(Visit{at, what, device, from.String()})
	if err != nil {
		return err
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	if what == Slowed || what == Refused {
		if last, noted := l.last[what]; noted && at >= last && at-last < quiet {
			return nil
		}
		l.last[what] = at
	}
	old, err := os.ReadFile(l.path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	all := append(append(old, line...), '\n')
	if len(all) > mostLog {
		all = all[len(all)-mostLog/2:]
		all = all[bytes.IndexByte(all, '\n')+1:]
	}
	next := l.path + ".new"
	if err := os.WriteFile(next, all, 0o600); err != nil {
		return err
	}
	return os.Rename(next, l.path)
}

// Last gives the newest visits first, so many at most. Lines that cannot be read are left out.
func (l *Log) Last(most int) ([]Visit, error) {
	l.mu.Lock()
	text, err := os.ReadFile(l.path)
	l.mu.Unlock()
	if errors.Is(err, fs.ErrNotExist) {
		return []Visit{}, nil
	}
	visits := []Visit{}
	for _, line := range slices.Backward(bytes.Split(bytes.TrimSpace(text), []byte("\n"))) {
		var visit Visit
		if len(visits) < most && json.Unmarshal(line, &visit) == nil {
			visits = append(visits, visit)
		}
	}
	return visits, err
}
