package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"slices"
)

// How much the slow check looks at in one go (our choice): a book of 100,000 ops is through in 20 minutes.
const (
	scrubOps    = 5000
	scrubPhotos = 20
	startOps    = 2000 // at a start after a clean end, the newest
)

// Scrub checks the next stretch of the log and of the photos, beside whatever else goes on. What is damaged is taken out or
// set aside, and comes back from the phones. At the end of everything it starts anew.
func (b *Book) Scrub(ctx context.Context) error {
	var seq int64
	var photo string
	if err := b.read.QueryRowContext(ctx, `SELECT seq, photo FROM scrub`).Scan(&seq, &photo); err != nil {
		return explain(err)
	}
	if seq == 0 && photo == "" {
		if err := b.checkWhole(ctx); err != nil {
			return err
		}
	}
	damaged, checked, last, err := findDamage(ctx, b.read, seq, scrubOps)
	if err != nil {
		return explain(err)
	}
	if err := b.takeOut(ctx, damaged); err != nil {
		return err
	}
	photo, morePhotos, err := b.scrubPhotos(photo)
	if err != nil {
		return err
	}
	return b.noteScrub(ctx, last, photo, checked < scrubOps && !morePhotos)
}

// checkWhole asks SQLite whether the file holds together, and looks at the small tables.
func (b *Book) checkWhole(ctx context.Context) error {
	problems, err := texts(ctx, b.read, "PRAGMA quick_check(1)")
	if err == nil && !slices.Equal(problems, []string{"ok"}) {
		err = fmt.Errorf("%w (%v)", errUnusable, problems)
	}
	if err = explain(err); errors.Is(err, errUnusable) {
		b.noteTrouble(errUnusable, true)
	}
	if err != nil {
		return err
	}
	broken, err := brokenSeals(ctx, b.read)
	if err == nil && len(broken) > 0 {
		b.noteTrouble(errUnusable, false)
		b.log.Error("the book is damaged", "found", broken)
	}
	return explain(err)
}

// scrubPhotos checks the next photos after one, and gives the last it looked at.
func (b *Book) scrubPhotos(after string) (last string, more bool, err error) {
	all, err := b.blobs.List()
	if err != nil {
		return after, false, err
	}
	from, found := slices.BinarySearch(all, after)
	if found {
		from++
	}
	ahead := all[from:]
	next := ahead[:min(len(ahead), scrubPhotos)]
	for _, hash := range next {
		if err := b.CheckBlob(hash); err != nil {
			return after, true, err
		}
		after = hash
	}
	return after, len(ahead) > len(next), nil
}

// CheckBlob reads a photo, and sets it aside when it is damaged, so that it is asked for again.
func (b *Book) CheckBlob(hash string) error {
	damaged, err := b.blobs.Damaged(hash)
	if err != nil || !damaged {
		return err
	}
	b.log.Error("a photo is damaged and was set aside; a phone that has it brings it back", "photo", hash)
	return b.blobs.SetAside(hash)
}

func (b *Book) noteScrub(ctx context.Context, seq int64, photo string, whole bool) error {
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error {
		var err error
		if whole {
			_, err = tx.Exec(`UPDATE scrub SET seq = 0, photo = '', checked_at = ?`, b.now().UnixMilli())
		} else {
			_, err = tx.Exec(`UPDATE scrub SET seq = ?, photo = ?`, seq, photo)
		}
		return err
	}))
}

// checkStart looks at a book that is being opened: at all of it when it was not closed, for then the machine may have gone
// down with it, otherwise at the newest ops. A damaged one is opened all the same, to be read and to say so.
func (b *Book) checkStart(ctx context.Context, closed bool) error {
	err := b.checkAtStart(ctx, closed)
	if errors.Is(err, errUnusable) {
		b.noteTrouble(errUnusable, true)
		b.log.Error("the book is damaged: it is read, and not written any more", "error", err)
		return nil
	}
	return err
}

func (b *Book) checkAtStart(ctx context.Context, closed bool) error {
	since := int64(0)
	if closed {
		if err := b.read.QueryRowContext(ctx, `SELECT max(coalesce(max(seq), 0) - ?, 0) FROM ops`, startOps).Scan(&since); err != nil {
			return explain(err)
		}
	} else if err := b.checkWhole(ctx); err != nil {
		return err
	}
	damaged, _, _, err := findDamage(ctx, b.read, since, everything)
	if err != nil {
		return explain(err)
	}
	return b.takeOut(ctx, damaged)
}

// wasClosed tells whether nothing was left to fold into a database file when it was last used. A file that is not there was.
func wasClosed(path string) bool {
	info, err := os.Stat(path + "-wal")
	return err != nil || info.Size() == 0
}

func removeQuietly(path string) {
	if err := os.Remove(path); err != nil && !errors.Is(err, os.ErrNotExist) {
		return // whoever clears unfinished files comes by later
	}
}
