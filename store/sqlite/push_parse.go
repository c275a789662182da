package sqlite

import (
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
	erases      bool  // it brings an erase
	stored      []string
	known       []string
	rejected    []oplog.Rejection
	rejectedAt  []int      // of each rejection, the op's place in what was sent
	unreadable  int        // how many were rejected before anything was compared
	newlyErased []string   // the records that this push erases
	byOwner     bool       // whoever owns the data folder sends it: nothing is held back
	passed      []oplog.Op // what erases, and was let pass
	untidy      bool       // traces of erases are left to clear
}

// parseAll reads the ops outside the transaction, as it needs no lock.
func parseAll(raws []json.RawMessage) *batch {
	b := &batch{arrived: make([]oplog.Op, 0, len(raws)), stored: []string{}, known: []string{}, rejected: []oplog.Rejection{}}
	for i, each := range parseTogether(raws) {
		if each.fault != nil {
			b.reject(i, *each.fault)
			continue
		}
		b.arrived = append(b.arrived, each.op)
		b.lines = append(b.lines, i)
		b.erases = b.erases || each.op.Erases()
	}
	b.unreadable = len(b.rejected)
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
