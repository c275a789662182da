package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"

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
	if err := b.removeOldLogs(); err != nil {
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
	return errors.Is(err, sql.ErrNoRows) || errors.Is(err, errPage) || errors.Is(err, errUnusable)
}

// clearCopy erases in a copy that lacks an erase, in its place: a copy is large, and what changes in it is small. Then its pages
// are looked at, also where a crash came in between. It uses only what was there in the first format, so that it works on the
// copies made before a change of format. The files that its ops named were deleted with those of the book.
func clearCopy(ctx context.Context, path string, recs []string) (err error) {
	missing, err := missingErases(ctx, path, recs)
	if err != nil {
		return err
	}
	db, err := openCopy(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	if len(missing) > 0 {
		if err := inTx(ctx, db, func(tx *sql.Tx) error { return eraseInCopy(tx, missing) }); err != nil {
			return err
		}
	}
	holding, err := pagesHoldingIn(path)
	if err != nil || len(holding) == 0 {
		return err
	}
	return inTx(ctx, db, func(tx *sql.Tx) error { return clearPagesIn(tx, holding) })
}

// eraseInCopy erases records in a copy of any format.
func eraseInCopy(tx *sql.Tx, recs []string) error {
	var format int
	if err := tx.QueryRow("PRAGMA user_version").Scan(&format); err != nil {
		return err
	}
	work := eraser{tx: tx, format: format}
	if _, err := work.records(recs); err != nil {
		return err
	}
	if err := work.countWithoutRemoved(); err != nil {
		return err
	}
	_, err := tx.Exec(`DELETE FROM leaving_blobs`)
	return err
}

// countWithoutRemoved keeps a copy's sums right when damaged ops left it.
func (e *eraser) countWithoutRemoved() error {
	if len(e.removed) == 0 {
		return nil
	}
	row, err := readBookRow(context.Background(), e.tx)
	if err != nil {
		return err
	}
	row.without(e.removed)
	if _, err := e.tx.Exec(`UPDATE book SET count = ?, digest = ?`, row.count, row.digest[:]); err != nil || e.format < sumsSince {
		return err
	}
	return seal(e.tx, "book", "only = 1")
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
