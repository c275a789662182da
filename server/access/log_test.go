package access_test

import (
	"net/netip"
	"os"
	"path/filepath"
	"testing"

	"rimside/server/access"
)

func TestTheAccessLogIsBoundedAndTellsTheNewestFirst(t *testing.T) {
	path := filepath.Join(t.TempDir(), "access.log")
	log := access.NewLog(path)
	if visits, err := log.Last(5); err != nil || len(visits) != 0 {
		t.Fatal(visits, err)
	}
	const many = 1500 // lines of some 80 bytes: more than fit
	for n := range many {
		if err := log.Note(int64(n), access.Guessed, "", netip.MustParseAddr("192.0.2.1")); err != nil {
			t.Fatal(err)
		}
	}
	visits, err := log.Last(3)
	if err != nil || len(visits) != 3 || visits[0].At != many-1 || visits[2].At != many-3 || visits[0].From != "192.0.2.1" || visits[0].What != access.Guessed {
		t.Errorf("%+v %v", visits, err)
	}
	if about, err := os.Stat(path); err != nil || about.Size() > 64<<10 || about.Mode().Perm()&0o077 != 0 {
		t.Errorf("%+v %v", about, err)
	}
}
