package sqlite

import (
	"context"
	"os"
	"path/filepath"
	"sync"
)

// walLimit is the size in bytes from which the write-ahead log is folded into the database file.
const walLimit = 4 << 20

// shortener keeps the write-ahead log short, between pushes instead of within them.
type shortener struct {
	wanted  chan struct{}
	stopped sync.WaitGroup
}

func (s *shortener) start(b *Book) {
	wanted := make(chan struct{}, 1)
	s.wanted = wanted
	s.stopped.Go(func() {
		for range wanted {
			if _, err := b.write.ExecContext(context.Background(), "PRAGMA wal_checkpoint(PASSIVE)"); err != nil {
				b.log.Error("the write-ahead log could not be shortened", "error", err)
			}
		}
	})
}

// poke asks for it when the log has grown.
func (s *shortener) poke(dir string) {
	info, err := os.Stat(filepath.Join(dir, fileName+"-wal"))
	if err != nil || info.Size() < walLimit {
		return
	}
	select {
	case s.wanted <- struct{}{}:
	default: // asked for already
	}
}

func (s *shortener) stop() {
	if s.wanted != nil {
		close(s.wanted)
		s.stopped.Wait()
		s.wanted = nil
	}
}
