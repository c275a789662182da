// Package sqlite keeps a book's log in one SQLite file: ops as they were received, in order of arrival, never changed
// but to erase. Beside it lie the copies and, in the caller's hands, the files that ops name. Several programs may have
// one folder open: nothing that the database knows is remembered outside it.
package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"
	"sync"
	"time"

	lib "modernc.org/sqlite/lib"

	"rimside/store/oplog"
)

// Options are what a book needs from outside.
type Options struct {
	Now   func() time.Time       // the clock; time.Now when nil
	Log   *slog.Logger           // what went wrong while nobody waited; nowhere when nil
	Blobs func(dir string) Blobs // the store of files in a data folder; needed
}

// Book is an open data folder.
type Book struct {
	dir   string
	write *sql.DB // one connection
	read  *sql.DB
	blobs Blobs
	now   func() time.Time
	log   *slog.Logger

	statements statements
	shortener  shortener
	pushes     group
	health     health

	life       context.Context // ends with Close, and with it what runs beside the pushes
	end        context.CancelFunc
	background sync.WaitGroup

	tidying sync.Mutex       // one at a time: clearing the traces of erases, making copies
	cleared int64            // the last erase whose traces left the file's pages
	copied  map[string]int64 // of a copy, the changes that it holds
}

// Open opens the book in a folder, or makes one there. Another program that opens it at the same moment is waited for,
// also where SQLite itself does not wait: while a file becomes one with a write-ahead log, and while that is read anew.
func Open(dir string, options Options) (*Book, error) {
	book, err := openOnce(dir, options)
	for end := time.Now().Add(openPatience); code(err) == lib.SQLITE_BUSY && time.Now().Before(end); {
		time.Sleep(openPatience / 200)
		book, err = openOnce(dir, options)
	}
	return book, err
}

const openPatience = 10 * time.Second

func openOnce(dir string, options Options) (*Book, error) {
	if options.Blobs == nil {
		return nil, errNoBlobs
	}
	b := &Book{dir: dir, now: options.Now, log: options.Log, blobs: options.Blobs(dir), copied: map[string]int64{}}
	b.life, b.end = context.WithCancel(context.Background())
	if b.now == nil {
		b.now = time.Now
	}
	if b.log == nil {
		b.log = slog.New(slog.DiscardHandler)
	}
	if err := b.open(context.Background()); err != nil {
		return nil, errors.Join(err, b.Close())
	}
	return b, nil
}

func (b *Book) open(ctx context.Context) (err error) {
	if err := os.MkdirAll(b.dir, 0o700); err != nil {
		return fmt.Errorf("the data folder cannot be made: %w", err)
	}
	path := filepath.Join(b.dir, fileName)
	if stray, err := setAsideStray(b.dir); err != nil {
		return fmt.Errorf("what an earlier file left cannot be set aside: %w", err)
	} else if stray {
		b.log.Warn("the write-ahead log of an earlier file was set aside, as it does not belong to this one", "folder", b.dir)
	}
	if err := makePrivate(path); err != nil {
		return fmt.Errorf("the book's file cannot be made: %w", err)
	}
	closed := wasClosed(path)
	if b.write, err = openWriter(path); err != nil {
		return err
	}
	before := func(version int) error { return b.copyBefore(ctx, version) }
	if err := migrate(ctx, b.write, before); err != nil {
		return err
	}
	if err := b.introduce(ctx); err != nil {
		return err
	}
	if b.read, err = openReaders(path); err != nil {
		return err
	}
	if err := b.statements.prepare(ctx, b.write, b.read); err != nil {
		return err
	}
	if err := b.checkStart(ctx, closed); err != nil {
		return err
	}
	b.shortener.start(b)
	b.tidyBeside(true) // what a crash left
	return nil
}

// introduce gives a new file its identity.
func (b *Book) introduce(ctx context.Context) error {
	return inTx(ctx, b.write, func(tx *sql.Tx) error {
		none := oplog.Digest{}
		_, err := tx.Exec(`INSERT OR IGNORE INTO book (only, server, log, digest) VALUES (1, ?, ?, ?)`, oplog.NewID(), oplog.NewID(), none[:])
		if err != nil {
			return err
		}
		return seal(tx, "book", "only = 1 AND sum IS NULL")
	})
}

// Close waits for what is being written and closes the files.
func (b *Book) Close() error {
	b.end()
	b.background.Wait()
	b.shortener.stop()
	err := b.statements.close()
	for _, db := range []*sql.DB{b.read, b.write} { // the writer last: it folds the write-ahead log into the file
		if db != nil {
			err = errors.Join(err, db.Close())
		}
	}
	return err
}
