package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	lib "modernc.org/sqlite/lib"
)

// clearCopies erases in every copy what is erased in the book. A copy that cannot be read as a database cannot be
// cleared, and is of no use: it is deleted.
func (b *Book) clearCopies(ctx context.Context) error {
	recs, err := hexColumn(ctx, b.write, `SELECT rec FROM erased_records`)
	if err != nil {
		return err
	}
	if err := b.removeUnfinished(0); err != nil {
		return err
	}
	copies, err := b.listCopies()
	if err != nil {
		return err
	}
	for _, each := range copies {
		err := clearCopy(ctx, each.path, recs)
		if isHopeless(err) {
			b.log.Warn("a copy could not be read and was deleted, as it may hold erased values", "copy", each.path, "error", err)
			err = os.Remove(each.path)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", each.path, err)
		}
	}
	return nil
}

// isHopeless tells a broken file from passing trouble such as a full disk.
func isHopeless(err error) bool {
	switch code(err) {
	case lib.SQLITE_NOTADB, lib.SQLITE_CORRUPT, lib.SQLITE_ERROR:
		return true
	}
	return errors.Is(err, sql.ErrNoRows) || errors.Is(err, errUnusable)
}

// clearCopy puts a cleared one in the place of a copy that lacks an erase. It uses only what was there in the first format,
// so that it works on the copies made before a change of format.
func clearCopy(ctx context.Context, path string, recs []string) error {
	missing, err := missingErases(ctx, path, recs)
	if err != nil || len(missing) == 0 {
		return err
	}
	cleared, err := duplicate(path)
	if err != nil {
		return err
	}
	defer os.Remove(cleared) // gone already when all went well
	if err := eraseIn(ctx, cleared, missing); err != nil {
		return err
	}
	if err := syncFile(cleared); err != nil {
		return err
	}
	return renameInto(cleared, path)
}

// duplicate copies a file beside it, under an unfinished name.
func duplicate(path string) (name string, err error) {
	from, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer from.Close()
	to, err := os.CreateTemp(filepath.Dir(path), unfinished+"*.sqlite") // readable by its owner only
	if err != nil {
		return "", err
	}
	_, err = io.Copy(to, from)
	return to.Name(), errors.Join(err, to.Close())
}

// eraseIn erases records in a file that counts for nothing yet, then writes its pages anew. The files that its ops named
// were deleted with those of the book.
func eraseIn(ctx context.Context, path string, recs []string) (err error) {
	db, err := openScratch(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	err = inTx(ctx, db, func(tx *sql.Tx) error {
		var format int
		if err := tx.QueryRow("PRAGMA user_version").Scan(&format); err != nil {
			return err
		}
		if _, err := (&eraser{tx: tx, format: format}).records(recs); err != nil {
			return err
		}
		_, err := tx.Exec(`DELETE FROM leaving_blobs`)
		return err
	})
	if err != nil {
		return err
	}
	_, err = db.ExecContext(ctx, `VACUUM`)
	return err
}

// missingErases lists which of the records still have values in a copy.
func missingErases(ctx context.Context, path string, recs []string) (missing []string, err error) {
	db, err := openCopy(path)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	asked, err := db.PrepareContext(ctx, `SELECT EXISTS (SELECT 1 FROM ops WHERE rec = ?1 AND erased = 0) AND NOT EXISTS (SELECT 1 FROM erased_records WHERE rec = ?1)`)
	if err != nil {
		return nil, err
	}
	defer asked.Close()
	for _, rec := range recs {
		var holds bool
		if err := asked.QueryRowContext(ctx, unhex(rec)).Scan(&holds); err != nil {
			return nil, err
		}
		if holds {
			missing = append(missing, rec)
		}
	}
	return missing, nil
}
