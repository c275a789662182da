package sqlite

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/hex"
	"slices"

	"rimside/store/oplog"
)

// opsCheck goes through the log record by record and keeps one record's ops at a time.
type opsCheck struct {
	report *Report
	names  *sql.Stmt // which files an op is listed with
	digest oplog.Digest
	count  int64
	named  int // files named by live ops

	rec         string
	markedErase bool
	ops         []oplog.Op
	lacking     map[string]bool // records of which an op was taken out
}

func verifyOps(ctx context.Context, tx *sql.Tx, row bookRow, report *Report) error {
	names, err := tx.PrepareContext(ctx, `SELECT hash FROM named_blobs WHERE seq = ?`)
	if err != nil {
		return err
	}
	defer names.Close()
	lacking, err := damagedRecords(ctx, tx)
	if err != nil {
		return err
	}
	check := opsCheck{report: report, names: names, lacking: lacking}
	if err := check.all(ctx, tx); err != nil {
		return err
	}
	if check.count != row.count {
		report.problem("The log has %d ops, but %d are counted.", check.count, row.count)
	}
	if check.digest != row.digest {
		report.problem("The digest of the log does not match its ops.")
	}
	var listed int
	if err := tx.QueryRowContext(ctx, `SELECT count(*) FROM named_blobs`).Scan(&listed); err != nil {
		return err
	}
	if listed != check.named {
		report.problem("%d photos are listed with entries that name %d.", listed, check.named)
	}
	return nil
}

func (c *opsCheck) all(ctx context.Context, tx *sql.Tx) error {
	rows, err := tx.QueryContext(ctx, `SELECT seq, id, rec, erased, EXISTS (SELECT 1 FROM erased_records WHERE erased_records.rec = ops.rec), via, received_at, bytes, sha256, sum FROM ops ORDER BY rec, seq`)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var stored storedOp
		var marked bool
		if err := rows.Scan(&stored.seq, &stored.id, &stored.rec, &stored.erased, &marked, &stored.via, &stored.received, &stored.bytes, &stored.sha256, &stored.sum); err != nil {
			return err
		}
		if name := hex.EncodeToString(stored.rec); name != c.rec {
			c.record()
			c.rec, c.markedErase, c.ops = name, marked, c.ops[:0]
		}
		if err := c.op(stored); err != nil {
			return err
		}
	}
	c.record()
	return rows.Err()
}

// op checks one op against the columns beside it.
func (c *opsCheck) op(stored storedOp) error {
	id := hex.EncodeToString(stored.id)
	c.count++
	c.report.Ops++
	c.digest.Toggle(id)
	if !stored.bytesAreWhole() {
		c.report.problem("Op %s is damaged: its bytes are not those that came.", id)
	} else if !stored.rowIsWhole() {
		c.report.problem("What stands beside op %s is not what was written there.", id)
	}
	op, fault := oplog.Parse(stored.bytes)
	if fault != nil {
		c.report.problem("Op %s cannot be read: %s", id, fault.Message)
		return nil
	}
	if op.ID != id || op.Rec != c.rec || op.Erased != stored.erased {
		c.report.problem("Op %s is not what its row says.", id)
		return nil
	}
	c.ops = append(c.ops, op)
	return c.files(stored.seq, op)
}

// files checks that the files an op names are listed with it.
func (c *opsCheck) files(seq int64, op oplog.Op) error {
	if op.Erases() {
		return nil
	}
	hashes := oplog.Blobs(op)
	if len(hashes) == 0 {
		return nil
	}
	c.named += len(hashes)
	rows, err := c.names.Query(seq)
	if err != nil {
		return err
	}
	defer rows.Close()
	var listed []string
	for rows.Next() {
		var hash []byte
		if err := rows.Scan(&hash); err != nil {
			return err
		}
		listed = append(listed, hex.EncodeToString(hash))
	}
	slices.Sort(listed)
	if !slices.Equal(listed, hashes) {
		c.report.problem("The photos of op %s are not listed with it.", op.ID)
	}
	return rows.Err()
}

// record merges the record that was read to its end, and checks that nothing is left of an erased one.
func (c *opsCheck) record() {
	if len(c.ops) == 0 {
		return
	}
	c.report.Records++
	state := oplog.Merge(c.ops)
	if state.Rec != c.rec || state.Erased != c.markedErase && !c.lacking[c.rec] {
		c.report.problem("Record %s is erased for its ops (%v), but not for the database (%v).", c.rec, state.Erased, c.markedErase)
	}
	if !state.Erased {
		return
	}
	for _, op := range c.ops {
		if op.Kind != oplog.KindErase && !bytes.Equal(op.Raw, op.Erase().Raw) {
			c.report.problem("Op %s of an erased record still holds values.", op.ID)
		}
	}
}
