package sqlite

import (
	"database/sql"
	"encoding/hex"

	"rimside/store/oplog"
)

// compareAll tells new ops from known ones, and finds the records that are erased. Ops that come together may concern each
// other, in any order: first it is settled which ops count, then what they erase.
func (b *Book) compareAll(tx *sql.Tx, joined *joint, row bookRow) error {
	first := make(map[string]int, len(joined.arrived)) // id -> its first place in arrived
	for i, op := range joined.arrived {
		if _, twice := first[op.ID]; !twice {
			first[op.ID] = i
		}
	}
	stored, err := b.compareStored(tx, joined.arrived, first)
	if err == nil && row.anyDamaged {
		err = b.compareDamaged(tx, joined.arrived, stored)
	}
	if err != nil {
		return err
	}
	var erasing []int
	for i, op := range joined.arrived {
		verdict := isNew
		if place := first[op.ID]; place != i {
			verdict = compare(joined.arrived[place].Rec, joined.arrived[place].Raw, op)
		}
		if found, isStored := stored[i]; isStored {
			verdict = found
		}
		if joined.settle(i, verdict); verdict != isOther && op.Erases() {
			erasing = append(erasing, i)
		}
		if verdict == isNew {
			if err := b.noteVotes(tx, op, joined.of[i].via); err != nil {
				return err
			}
		}
	}
	joined.erased = map[string]bool{}
	if row.anyErased {
		if err := b.findErased(tx, joined); err != nil {
			return err
		}
	}
	if len(erasing) == 0 {
		return nil
	}
	return b.hold(tx, joined, erasing, stored)
}

// settle writes down what becomes of an op, for its sender.
func (j *joint) settle(place int, found verdict) {
	op, batch := j.arrived[place], j.of[place].batch
	switch found {
	case isNew:
		j.fresh = append(j.fresh, place)
		batch.stored = append(batch.stored, op.ID)
	case isSame:
		batch.known = append(batch.known, op.ID)
	case isOther:
		batch.reject(j.lines[place], oplog.Rejection{ID: op.ID, Code: errOtherContent.Code, Message: errOtherContent.Message})
	}
}

type verdict int

const (
	isNew verdict = iota
	isSame
	isOther
)

// compare holds an op against the one that has its id. An erased form has no values left to compare, but it still tells
// whose it is.
func compare(rec string, raw []byte, arrived oplog.Op) verdict {
	if rec == arrived.Rec && oplog.Same(raw, arrived.Raw) {
		return isSame
	}
	return isOther
}

// compareStored finds out which of the ops are stored already, by place in arrived.
func (b *Book) compareStored(tx *sql.Tx, arrived []oplog.Op, first map[string]int) (map[int]verdict, error) {
	found := map[int]verdict{}
	var again map[string][]int // later places of ids that came more than once
	for i, op := range arrived {
		if first[op.ID] != i {
			if again == nil {
				again = map[string][]int{}
			}
			again[op.ID] = append(again[op.ID], i)
		}
	}
	rows, err := tx.Stmt(b.statements.known).Query(hexList(arrived, func(op oplog.Op) string { return op.ID }))
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var id, rec, raw sql.RawBytes
		if err := rows.Scan(&id, &rec, &raw); err != nil {
			return nil, err
		}
		name := hex.EncodeToString(id)
		for _, place := range append(again[name], first[name]) {
			found[place] = compare(hex.EncodeToString(rec), raw, arrived[place])
		}
	}
	return found, rows.Err()
}

// findErased finds the records that earlier pushes erased.
func (b *Book) findErased(tx *sql.Tx, joined *joint) error {
	rows, err := tx.Stmt(b.statements.erasedAmong).Query(hexList(joined.arrived, func(op oplog.Op) string { return op.Rec }))
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var rec sql.RawBytes
		if err := rows.Scan(&rec); err != nil {
			return err
		}
		joined.erased[hex.EncodeToString(rec)] = true
	}
	return rows.Err()
}
