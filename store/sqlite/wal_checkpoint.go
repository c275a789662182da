package sqlite

import (
	"context"
	"os"
	"path/filepath"
	"sync"
)

// walLimit is the size in bytes from which the write-ahead log is folded into the database file: in a large book a push
// changes up to 2 MiB of pages, many of them those of the push before. The file shrinks to half of it when it begins anew
// (journal_size_limit), which is how poke sees that it did.
const walLimit = 16 << 20

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
			if err := b.shorten(context.Background()); err != nil {
				b.log.Error("the write-ahead log could not be shortened", "error", err)
			}
		}
	})
}

// shorten folds the log into the database file. Whoever writes first afterwards begins the log anew, which costs a wait
// for the disk more; so that is done here, by a change of the counter alone.
func (b *Book) shorten(ctx context.Context) error {
	conn, err := b.write.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	var busy, frames, folded int
	if err := conn.QueryRowContext(ctx, "PRAGMA wal_checkpoint(PASSIVE)").Scan(&busy, &frames, &folded); err != nil || folded < frames {
		return err // somebody still reads it; the next push asks again
	}
	tx, err := conn.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer func() { _ = tx.Rollback() }() // after a commit there is nothing to roll back
	if err := changed(tx); err != nil {
		return err
	}
	return tx.Commit()
}

// foldIn folds the log into the database file, so that a copy of that file alone is the book as of a minute ago. Nothing waits
// for it; while somebody reads what is older, it is done the next time.
func (b *Book) foldIn(ctx context.Context) error {
	var busy, frames, folded int
	return explain(b.write.QueryRowContext(ctx, "PRAGMA wal_checkpoint(PASSIVE)").Scan(&busy, &frames, &folded))
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
