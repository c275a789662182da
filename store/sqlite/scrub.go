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

// clearCopy uses only what was there in the first format, so that it works on the copies made before a change of format.
func clearCopy(ctx context.Context, path string, recs []string) (err error) {
	db, err := openCopy(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	missing, err := missingErases(ctx, db, recs)
	if err != nil {
		return err
	}
	err = inTx(ctx, db, func(tx *sql.Tx) error {
		if len(missing) == 0 {
			return nil
		}
		if err := eraseRecords(tx, missing); err != nil {
			return err
		}
		_, err := tx.Exec(`UPDATE book SET erases = erases + 1`)
		return err
	})
	if err != nil {
		return err
	}
	row, err := readStanding(ctx, db)
	if err != nil || row.erasesDone >= row.erases {
		return err
	}
	// The files of this copy's erased ops were deleted with those of the book. The last statement writes no value.
	for _, statement := range []string{`DELETE FROM leaving_blobs`, `VACUUM`, `UPDATE book SET erases_done = erases`} {
		if _, err := db.ExecContext(ctx, statement); err != nil {
			return err
		}
	}
	return nil
}

// missingErases lists which of the records are not erased in a copy yet.
func missingErases(ctx context.Context, db *sql.DB, recs []string) (missing []string, err error) {
	have, err := hexColumn(ctx, db, `SELECT rec FROM erased_records`)
	if err != nil {
		return nil, err
	}
	known := make(map[string]bool, len(have))
	for _, rec := range have {
		known[rec] = true
	}
	for _, rec := range recs {
		if !known[rec] {
			missing = append(missing, rec)
		}
	}
	return missing, nil
}
