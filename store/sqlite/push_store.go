package sqlite

import (
	"context"
	"database/sql"
	"encoding/json"

	"rimside/store/oplog"
)

// Pushed says what became of the ops of a push. When it is returned, what it calls stored is on the disk.
type Pushed struct {
	Book, Log     string
	Stored, Known []string // ids
	Rejected      []oplog.Rejection
}

// Push adds ops that arrived from the device via to the op set, in one transaction. It is idempotent: an op that is here
// already is known and changes nothing, so whoever got no answer sends the same again. An op that cannot be taken is
// rejected on its own. The sender's log is of no consequence here: it only tells the sender, by our answer, that ours is another.
func (b *Book) Push(ctx context.Context, book, log string, ops []json.RawMessage, via string) (Pushed, error) {
	batch := parseAll(ops)
	pushed, err := b.store(ctx, book, batch, via)
	if err != nil {
		return Pushed{}, err
	}
	b.shortener.poke(b.dir)
	if batch.untidy {
		b.tidyBeside(len(batch.newlyErased) > 0)
	}
	return pushed, nil
}

// store is a push up to its commit.
func (b *Book) store(ctx context.Context, book string, batch *batch, via string) (pushed Pushed, err error) {
	err = inTx(ctx, b.write, func(tx *sql.Tx) error {
		row, err := readBookRow(ctx, tx)
		if err != nil {
			return err
		}
		adopted, err := row.adopt(book)
		if err != nil {
			return err
		}
		if err := b.compareAll(tx, batch, row.anyErased); err != nil {
			return err
		}
		if err := b.insert(tx, &row, batch, via); err != nil {
			return err
		}
		rewritten, err := eraseRecords(tx, batch.newlyErased)
		if err != nil {
			return err
		}
		row.stalePages = row.stalePages || rewritten > 0
		if len(batch.newlyErased) > 0 {
			row.erases++
		}
		batch.untidy = batch.untidy || row.erases > row.erasesDone
		pushed = Pushed{Book: row.book, Log: row.log, Stored: batch.stored(), Known: batch.known, Rejected: batch.rejected}
		if !adopted && len(batch.fresh) == 0 && len(batch.newlyErased) == 0 {
			return nil // nothing changed, so nothing is written
		}
		return row.save(tx)
	})
	return pushed, explain(err)
}

// insert appends the ops that are new here. Those of erased records are stored without their values.
func (b *Book) insert(tx *sql.Tx, row *bookRow, batch *batch, via string) error {
	insert := tx.Stmt(b.statements.insert)
	received := b.now().UnixMilli()
	for _, op := range batch.fresh {
		hashes := oplog.Blobs(op)
		erased := batch.erased[op.Rec]
		if erased {
			op = op.Erase()
		}
		result, err := insert.Exec(unhex(op.ID), unhex(op.Rec), op.Erased, via, received, op.Raw)
		if err != nil {
			return err
		}
		if err := noteDevice(tx, op); err != nil {
			return err
		}
		row.count++
		row.digest.Toggle(op.ID)
		if len(hashes) == 0 {
			continue
		}
		seq, err := result.LastInsertId()
		if err != nil {
			return err
		}
		if !erased {
			err = nameBlobs(tx, seq, hashes)
		} else {
			batch.untidy = true
			err = dropBlobs(tx, hashes)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
