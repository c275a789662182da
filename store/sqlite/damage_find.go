package sqlite

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
)

// storedOp is a row of the table ops.
type storedOp struct {
	seq, received int64
	id, rec       []byte
	erased        bool
	via           string
	bytes, sha256 []byte
	sum           sql.NullInt64
}

const storedOpQuery = `SELECT seq, id, rec, erased, via, received_at, bytes, sha256, sum FROM ops `

func scanStoredOp(rows interface{ Scan(...any) error }) (op storedOp, err error) {
	err = rows.Scan(&op.seq, &op.id, &op.rec, &op.erased, &op.via, &op.received, &op.bytes, &op.sha256, &op.sum)
	return op, err
}

// bytesAreWhole tells whether the op's bytes are those that came.
func (op storedOp) bytesAreWhole() bool {
	sum := sha256.Sum256(op.bytes)
	return bytes.Equal(sum[:], op.sha256)
}

// rowIsWhole tells so of what stands beside them.
func (op storedOp) rowIsWhole() bool {
	return op.sum.Valid && op.sum.Int64 == rowSum(op.id, op.rec, op.erased, op.via, op.received)
}

// findDamage checks at most so many ops after a place, and gives the places of those that are damaged, how many it checked
// and the last of them.
func findDamage(ctx context.Context, from rowsQuerier, since int64, most int) (damaged []int64, checked int, last int64, err error) {
	rows, err := from.QueryContext(ctx, storedOpQuery+`WHERE seq > ? ORDER BY seq LIMIT ?`, since, most)
	if err != nil {
		return nil, 0, since, err
	}
	defer rows.Close()
	for last = since; rows.Next(); checked++ {
		op, err := scanStoredOp(rows)
		if err != nil {
			return nil, checked, last, err
		}
		if last = op.seq; !op.bytesAreWhole() || !op.rowIsWhole() {
			damaged = append(damaged, op.seq)
		}
	}
	return damaged, checked, last, rows.Err()
}

// everything is more ops than there are.
const everything = 1 << 40

// soundSnapshot is a snapshot whose every op was checked. What is damaged leaves the log first: the phones bring it back, and
// a copy must not carry it on.
func (b *Book) soundSnapshot(ctx context.Context, dir string) (path string, err error) {
	for range 2 {
		if path, err = b.snapshot(ctx, dir); err != nil {
			return "", err
		}
		damaged, err := damageIn(ctx, path)
		if err == nil && len(damaged) == 0 {
			return path, nil
		}
		removeQuietly(path)
		if err != nil {
			return "", explain(err)
		}
		if err := b.takeOut(ctx, damaged); err != nil {
			return "", err
		}
	}
	return "", errUnusable
}

// damageIn checks a file that nobody uses.
func damageIn(ctx context.Context, path string) (damaged []int64, err error) {
	db, err := openCopy(path)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	damaged, _, _, err = findDamage(ctx, db, 0, everything)
	return damaged, err
}

// lostID is the id of a damaged op: what its row says, unless the row is what was damaged.
func (op storedOp) lostID() string { return hex.EncodeToString(op.id) }
