package sqlite

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"errors"

	"rimside/store/oplog"
)

// takeOut takes damaged ops out of the log. To phones it is then as if they had never come: the digest differs, so that a
// phone that has them sends them again, with whatever it is written in. Their rows are kept aside until then.
func (b *Book) takeOut(ctx context.Context, seqs []int64) error {
	if len(seqs) == 0 {
		return nil
	}
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error {
		row, err := b.rowIn(tx)
		if err != nil {
			return err
		}
		for _, seq := range seqs {
			op, err := scanStoredOp(tx.QueryRow(storedOpQuery+`WHERE seq = ?`, seq))
			if errors.Is(err, sql.ErrNoRows) {
				continue // somebody was quicker
			}
			if err != nil {
				return err
			}
			if err := b.takeOutOne(tx, &row, op); err != nil {
				return err
			}
		}
		return b.saveRow(tx, row)
	}))
}

func (b *Book) takeOutOne(tx *sql.Tx, row *bookRow, op storedOp) error {
	switch {
	case op.bytesAreWhole() && op.rowIsWhole():
		return nil
	case op.bytesAreWhole():
		b.log.Error("the row of an op was damaged and has been made anew from the op", "op", op.lostID())
		b.noteRenewed(op.lostID())
		return b.renewRow(tx, op)
	}
	b.log.Error("an op is damaged and was taken out of the log; a phone that has it brings it back", "op", op.lostID(), "place", op.seq)
	if _, err := tx.Exec(`INSERT OR REPLACE INTO damaged_ops (id, rec, sha256, found_at, bytes) VALUES (?, ?, ?, ?, ?)`,
		op.id, op.rec, op.sha256, b.now().UnixMilli(), op.bytes); err != nil {
		return err
	}
	if err := removeOp(tx, op); err != nil {
		return err
	}
	row.without([]string{op.lostID()})
	return nil
}

// removeOp deletes a row. Where the row itself is damaged its indexes know it by other values.
func removeOp(tx *sql.Tx, op storedOp) error {
	if _, err := tx.Exec(`DELETE FROM named_blobs WHERE seq = ?`, op.seq); err != nil {
		return err
	}
	if _, err := tx.Exec(`DELETE FROM ops WHERE seq = ?`, op.seq); err != nil || op.rowIsWhole() {
		return err
	}
	_, err := tx.Exec(`REINDEX ops`)
	return err
}

// renewRow writes the columns of an op anew that is whole itself. Who brought it and when is kept as it is, as nobody else
// knows.
func (b *Book) renewRow(tx *sql.Tx, stored storedOp) error {
	op, fault := oplog.Parse(stored.bytes)
	if fault != nil {
		return fault
	}
	if err := removeOp(tx, stored); err != nil {
		return err
	}
	id, rec := unhex(op.ID), unhex(op.Rec)
	if _, err := tx.Exec(`INSERT INTO ops (seq, id, rec, erased, via, received_at, bytes, sha256, sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`, stored.seq, id, rec, op.Erased,
		stored.via, stored.received, stored.bytes, stored.sha256, rowSum(id, rec, op.Erased, stored.via, stored.received)); err != nil {
		return err
	}
	if op.Erases() {
		return nil
	}
	return nameBlobs(tx, stored.seq, oplog.Blobs(op))
}

// compareDamaged judges ops that were taken out as damaged: one is taken back when it is what its hash says, or what is left
// of it, and refused when it is anything else.
func (b *Book) compareDamaged(tx *sql.Tx, arrived []oplog.Op, verdicts map[int]verdict) error {
	for place, op := range arrived {
		var sum, left []byte
		err := tx.QueryRow(`SELECT sha256, bytes FROM damaged_ops WHERE id = ?`, unhex(op.ID)).Scan(&sum, &left)
		if errors.Is(err, sql.ErrNoRows) {
			continue
		}
		if err != nil {
			return err
		}
		if !isWhatWasLost(op, sum, left) {
			verdicts[place] = isOther
			continue
		}
		if _, err := tx.Exec(`DELETE FROM damaged_ops WHERE id = ?`, unhex(op.ID)); err != nil {
			return err
		}
		b.log.Info("a damaged op is whole again", "op", op.ID)
	}
	return nil
}

func isWhatWasLost(op oplog.Op, sum, left []byte) bool {
	whole, frame := sha256.Sum256(op.Raw), sha256.Sum256(op.Erase().Raw)
	return bytes.Equal(whole[:], sum) || bytes.Equal(frame[:], sum) || bytes.Equal(op.Raw, left)
}

// Wanted is what this server would like to be sent again, or at last.
type Wanted struct {
	Ops    []string `json:"ops"`    // ids of ops that were damaged here
	Photos []string `json:"photos"` // hashes of photos that ops name and that are not here
}

// Wanted lists it, so many at most of each.
func (b *Book) Wanted(ctx context.Context, most int) (wanted Wanted, err error) {
	if wanted.Ops, err = hexColumn(ctx, b.read, `SELECT id FROM damaged_ops`); err != nil {
		return wanted, explain(err)
	}
	wanted.Ops = wanted.Ops[:min(len(wanted.Ops), most)]
	named, err := hexColumn(ctx, b.read, `SELECT DISTINCT hash FROM named_blobs`)
	if err != nil {
		return wanted, explain(err)
	}
	for _, hash := range named {
		has, err := b.blobs.Has(hash)
		if err != nil {
			return wanted, err
		}
		if !has && len(wanted.Photos) < most {
			wanted.Photos = append(wanted.Photos, hash)
		}
	}
	return wanted, nil
}

// takeOutBeside does so beside whatever else goes on.
func (b *Book) takeOutBeside(seqs []int64) {
	if len(seqs) == 0 {
		return
	}
	b.background.Go(func() {
		if err := b.takeOut(b.life, seqs); err != nil {
			b.log.Error("damaged ops could not be taken out", "error", err)
		}
	})
}

// damagedRecords are those that lack an op which was taken out.
func damagedRecords(ctx context.Context, from rowsQuerier) (map[string]bool, error) {
	list, err := hexColumn(ctx, from, `SELECT rec FROM damaged_ops`)
	recs := make(map[string]bool, len(list))
	for _, rec := range list {
		recs[rec] = true
	}
	return recs, err
}
