package sqlite

import (
	"context"
	"database/sql"
	"encoding/hex"
	"errors"
	"time"
)

// patience is how long clearing the traces of an erase waits for somebody who still reads, and how long whoever erased
// waits for it.
const patience = 3 * time.Second

var errStillRead = errors.New("somebody still reads the write-ahead log")

// tidyBeside clears the traces of erases beside whatever else goes on. Whoever erased waits for it a little, as it is
// nearly always quick.
func (b *Book) tidyBeside(wait bool) {
	done := make(chan struct{})
	b.background.Go(func() {
		defer close(done)
		if err := b.tidy(b.life); err != nil {
			b.log.Warn("the traces of an erased record are cleared later", "error", err)
		}
	})
	if !wait {
		return
	}
	select {
	case <-done:
	case <-time.After(patience):
	}
}

// tidy clears the traces of erases: files, old pages, the write-ahead log, copies. What it does not get done stays marked
// in the database, for the next push, tick or start.
func (b *Book) tidy(ctx context.Context) error {
	b.tidying.Lock()
	defer b.tidying.Unlock()
	if err := b.deleteLeavingBlobs(ctx); err != nil {
		return err
	}
	row, err := readBookRow(ctx, b.write)
	if err != nil || row.erasesDone >= row.erases {
		return err
	}
	if row.stalePages {
		if err := errors.Join(b.clearPages(ctx, row.erases), b.truncateLog(ctx)); err != nil {
			return err
		}
	}
	if err := b.clearCopies(ctx); err != nil {
		return err
	}
	return inTx(ctx, b.write, func(tx *sql.Tx) error {
		if _, err := tx.Exec(`UPDATE book SET erases_done = max(erases_done, ?1), stale_pages = stale_pages AND erases > ?1`, row.erases); err != nil {
			return err
		}
		return seal(tx, "book", "only = 1")
	})
}

// deleteLeavingBlobs deletes the files that no live op names any more.
func (b *Book) deleteLeavingBlobs(ctx context.Context) error {
	leaving, err := hexColumn(ctx, b.write, `SELECT hash FROM leaving_blobs WHERE hash NOT IN (SELECT hash FROM named_blobs)`)
	if err != nil {
		return err
	}
	for _, hash := range leaving {
		if err := b.blobs.Delete(hash); err != nil {
			return err
		}
	}
	return inTx(ctx, b.write, func(tx *sql.Tx) error {
		for _, hash := range leaving {
			if _, err := tx.Exec(`DELETE FROM leaving_blobs WHERE hash = unhex(?)`, hash); err != nil {
				return err
			}
		}
		_, err := tx.Exec(`DELETE FROM leaving_blobs WHERE hash IN (SELECT hash FROM named_blobs)`)
		return err
	})
}

// clearPages overwrites what secure_delete leaves in the pages of the file. What is found once the erase has been committed is
// all there is: what is left behind later was never erased. So pushes wait only while the pages found are written.
func (b *Book) clearPages(ctx context.Context, erases int64) error {
	if b.cleared >= erases {
		return nil
	}
	holding, err := pagesHolding(ctx, b.read)
	if err != nil {
		return err
	}
	if err := inTx(ctx, b.write, func(tx *sql.Tx) error { return clearPagesIn(tx, holding) }); err != nil {
		return err
	}
	b.cleared = erases
	return nil
}

// truncateLog empties the write-ahead log, which needs a moment in which nobody reads it.
func (b *Book) truncateLog(ctx context.Context) error {
	for deadline := time.Now().Add(patience); ; {
		empty, err := b.tryTruncate(ctx)
		if err != nil || empty {
			return err
		}
		if !time.Now().Before(deadline) {
			return errStillRead
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// tryTruncate waits for readers only shortly, as nobody can write meanwhile.
func (b *Book) tryTruncate(ctx context.Context) (empty bool, err error) {
	conn, err := b.write.Conn(ctx)
	if err != nil {
		return false, err
	}
	defer conn.Close()
	if _, err := conn.ExecContext(ctx, "PRAGMA busy_timeout = 50"); err != nil {
		return false, err
	}
	var busy, frames, folded int
	err = conn.QueryRowContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)").Scan(&busy, &frames, &folded)
	_, restored := conn.ExecContext(ctx, "PRAGMA busy_timeout = 5000")
	return busy == 0, errors.Join(err, restored)
}

// hexColumn reads a list of hashes or ids.
func hexColumn(ctx context.Context, from rowsQuerier, query string) (list []string, err error) {
	rows, err := from.QueryContext(ctx, query)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var hash []byte
		if err := rows.Scan(&hash); err != nil {
			return nil, err
		}
		list = append(list, hex.EncodeToString(hash))
	}
	return list, rows.Err()
}
