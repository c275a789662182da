package sqlite

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/json"

	"rimside/store/oplog"
)

// Pushed says what became of the ops of a push. When it is returned, what it calls stored is on the disk.
type Pushed struct {
	Book, Log     string
	Stored, Known []string // ids
	Rejected      []oplog.Rejection
	passed        []oplog.Op // what erases, and was let pass
}

// Push adds ops that arrived from the device via to the op set, all of them or none. It is idempotent: an op that is here
// already is known and changes nothing, so whoever got no answer sends the same again. An op that cannot be taken is
// rejected on its own. The sender's log is of no consequence here: it only tells the sender, by our answer, that ours is
// another.
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

// insertAll appends the ops that are new here. Those of erased records are stored without their values.
func (b *Book) insertAll(tx *sql.Tx, row *bookRow, joined *joint) error {
	insert := tx.Stmt(b.statements.insert)
	received := b.now().UnixMilli()
	for _, place := range joined.fresh {
		op, via := joined.arrived[place], joined.of[place].via
		hashes := oplog.Blobs(op)
		erased := joined.erased[op.Rec]
		if erased {
			op = op.Erase()
		}
		id, rec, sum := unhex(op.ID), unhex(op.Rec), sha256.Sum256(op.Raw)
		result, err := insert.Exec(id, rec, op.Erased, via, received, op.Raw, sum[:], rowSum(id, rec, op.Erased, via, received))
		if err != nil {
			return err
		}
		if err := noteDevice(tx, op); err != nil {
			return err
		}
		row.with(op.ID)
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
			joined.untidy = true
			err = (eraser{tx: tx, format: knownFormats()}).dropBlobs(hashes)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
