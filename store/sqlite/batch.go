package sqlite

import (
	"database/sql"
	"encoding/hex"
	"encoding/json"
	"runtime"
	"strings"
	"sync"

	"rimside/store/oplog"
)

// batch is the ops of one push on their way into the log.
type batch struct {
	arrived     []oplog.Op
	lines       []int // of each arrived op, its place in what was sent
	fresh       []oplog.Op
	known       []string
	rejected    []oplog.Rejection
	rejectedAt  []int           // of each rejection, the op's place in what was sent
	erased      map[string]bool // the records among those of this push that are erased
	newlyErased []string        // those that this push erases
	untidy      bool            // traces of erases are left to clear
}

// parseAll reads the ops outside the transaction, as it needs no lock.
func parseAll(raws []json.RawMessage) *batch {
	b := &batch{arrived: make([]oplog.Op, 0, len(raws)), known: []string{}, rejected: []oplog.Rejection{}, erased: map[string]bool{}}
	for i, each := range parseTogether(raws) {
		if each.fault != nil {
			b.reject(i, *each.fault)
			continue
		}
		b.arrived = append(b.arrived, each.op)
		b.lines = append(b.lines, i)
	}
	return b
}

type parsed struct {
	op    oplog.Op
	fault *oplog.Rejection
}

// parseTogether shares the reading among the processors, as it takes longer than the storing.
func parseTogether(raws []json.RawMessage) []parsed {
	const worthIt = 32 // ops for one goroutine
	all := make([]parsed, len(raws))
	share := max(worthIt, (len(raws)+runtime.GOMAXPROCS(0)-1)/runtime.GOMAXPROCS(0))
	var work sync.WaitGroup
	for start := 0; start < len(raws); start += share {
		work.Go(func() {
			for i := start; i < min(start+share, len(raws)); i++ {
				all[i].op, all[i].fault = oplog.Parse(raws[i])
			}
		})
	}
	work.Wait()
	return all
}

func (b *batch) reject(place int, fault oplog.Rejection) {
	b.rejected = append(b.rejected, fault)
	b.rejectedAt = append(b.rejectedAt, place)
}

func (b *batch) stored() []string {
	ids := make([]string, len(b.fresh))
	for i, op := range b.fresh {
		ids[i] = op.ID
	}
	return ids
}

// sort tells new ops from known ones, and finds the records that are erased. Ops of one push may concern each other, in
// any order: first it is settled which ops count, then what they erase.
func (b *Book) sort(tx *sql.Tx, batch *batch) error {
	first := make(map[string]int, len(batch.arrived)) // id -> its first place in arrived
	for i, op := range batch.arrived {
		if _, twice := first[op.ID]; !twice {
			first[op.ID] = i
		}
	}
	stored, err := b.compareStored(tx, batch.arrived, first)
	if err != nil {
		return err
	}
	var erasing []string
	for i, op := range batch.arrived {
		verdict := isNew
		if place := first[op.ID]; place != i {
			verdict = compare(batch.arrived[place].Raw, op.Raw)
		}
		if found, isStored := stored[i]; isStored {
			verdict = found
		}
		switch verdict {
		case isNew:
			batch.fresh = append(batch.fresh, op)
		case isSame:
			batch.known = append(batch.known, op.ID)
		case isOther:
			batch.reject(batch.lines[i], oplog.Rejection{ID: op.ID, Code: oplog.OtherContent,
				Message: "The server holds another entry under this entry's id. Make the change again, so that it is sent under an id of its own."})
			continue
		}
		if op.Erases() {
			erasing = append(erasing, op.Rec)
		}
	}
	return b.settleErased(tx, batch, erasing)
}

type verdict int

const (
	isNew verdict = iota
	isSame
	isOther
)

func compare(stored, arrived []byte) verdict {
	if oplog.Same(stored, arrived) {
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
		var id, raw sql.RawBytes
		if err := rows.Scan(&id, &raw); err != nil {
			return nil, err
		}
		name := hex.EncodeToString(id)
		for _, place := range append(again[name], first[name]) {
			found[place] = compare(raw, arrived[place].Raw)
		}
	}
	return found, rows.Err()
}

// settleErased fills in which records are erased: by ops stored earlier, and by those of this push.
func (b *Book) settleErased(tx *sql.Tx, batch *batch, erasing []string) error {
	if len(batch.arrived) == 0 {
		return nil
	}
	rows, err := tx.Stmt(b.statements.erasedAmong).Query(hexList(batch.arrived, func(op oplog.Op) string { return op.Rec }))
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var rec []byte
		if err := rows.Scan(&rec); err != nil {
			return err
		}
		batch.erased[hex.EncodeToString(rec)] = true
	}
	for _, rec := range erasing {
		if !batch.erased[rec] {
			batch.erased[rec] = true
			batch.newlyErased = append(batch.newlyErased, rec)
		}
	}
	return rows.Err()
}

// hexList writes ids as a JSON list, which SQLite takes apart again: one query for a whole push.
func hexList(ops []oplog.Op, id func(oplog.Op) string) string {
	var out strings.Builder
	out.Grow(35*len(ops) + 2)
	out.WriteByte('[')
	for i, op := range ops {
		if i > 0 {
			out.WriteByte(',')
		}
		out.WriteByte('"')
		out.WriteString(id(op))
		out.WriteByte('"')
	}
	out.WriteByte(']')
	return out.String()
}

// unhex is for ids that were checked.
func unhex(id string) []byte {
	raw, err := hex.DecodeString(id)
	if err != nil {
		panic(err)
	}
	return raw
}
