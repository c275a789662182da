package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"
)

// rhythm is one kind of copy. The names carry a running number, as a clock may have been wrong for a while, and the
// time for people.
type rhythm struct {
	name   string
	layout string // of the time; while it reads the same, no further copy is due
	keep   int
}

var rhythms = []rhythm{{"hourly", "2006-01-02T15", 24}, {"daily", "2006-01-02", 7}}

// Tick does what is due: call it twice a minute.
func (b *Book) Tick(ctx context.Context) error {
	err := errors.Join(b.foldIn(ctx), b.tidy(ctx), b.Scrub(ctx))
	b.tidying.Lock()
	defer b.tidying.Unlock()
	err = errors.Join(err, b.removeUnfinished(time.Hour)) // by then no program can still be working on it
	for _, each := range rhythms {
		err = errors.Join(err, b.copyWhenDue(ctx, each))
	}
	return err
}

// copyWhenDue makes a copy once in a while, if anything changed.
func (b *Book) copyWhenDue(ctx context.Context, every rhythm) error {
	made, err := b.listRhythm(every)
	if err != nil {
		return err
	}
	when, number := b.now().UTC().Format(every.layout), 1
	if len(made) > 0 {
		last := made[len(made)-1]
		if last.when == when {
			return nil
		}
		if changed, err := b.changedSince(ctx, last); err != nil || !changed {
			return err
		}
		number = last.number + 1
	}
	if err := b.copyTo(ctx, fmt.Sprintf("%s-%06d-%s.sqlite", every.name, number, when)); err != nil {
		return err
	}
	for len(made) >= every.keep {
		if err := os.Remove(made[0].path); err != nil {
			return err
		}
		made = made[1:]
	}
	return nil
}

// changedSince tells whether the book differs from a copy. One that cannot be read is no reason to do without.
func (b *Book) changedSince(ctx context.Context, last copyFile) (bool, error) {
	now, err := readBookRow(ctx, b.read)
	if err != nil {
		return false, err
	}
	if seen, found := b.copied[last.path]; found {
		return seen != now.changes, nil
	}
	then, err := bookRowOf(ctx, last.path)
	if err != nil {
		b.log.Warn("a copy cannot be read", "copy", last.path, "error", err)
		return true, nil
	}
	b.copied[last.path] = then.changes
	return then.changes != now.changes || then.log != now.log, nil
}

// copyTo makes a copy under a name in the folder copies.
func (b *Book) copyTo(ctx context.Context, name string) error {
	dir, err := b.copiesDir()
	if err != nil {
		return err
	}
	path, err := b.soundSnapshot(ctx, dir)
	if err != nil {
		return err
	}
	defer os.Remove(path) // gone already when all went well
	return b.nameCopy(ctx, path, filepath.Join(dir, name))
}

// nameCopy gives a copy its name, but only if nothing was erased since it was begun: while the write lock is held nobody
// erases, and whoever erases later finds the copy by its name.
func (b *Book) nameCopy(ctx context.Context, path, name string) error {
	copied, err := bookRowOf(ctx, path)
	if err != nil {
		return err
	}
	return inTx(ctx, b.write, func(tx *sql.Tx) error {
		now, err := readBookRow(ctx, tx)
		if err != nil || now.erases != copied.erases {
			return err // the next tick makes another
		}
		return renameInto(path, name)
	})
}

// copyBefore keeps the file as it was before a change of its format.
func (b *Book) copyBefore(ctx context.Context, version int) error {
	dir, err := b.copiesDir()
	if err != nil {
		return err
	}
	path, err := b.snapshot(ctx, dir)
	if err != nil {
		return err
	}
	return renameInto(path, filepath.Join(dir, fmt.Sprintf("before-format-%d.sqlite", version+1)))
}
