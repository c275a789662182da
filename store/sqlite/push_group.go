package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"sync"

	"rimside/store/fault"
	"rimside/store/oplog"
)

// pending is a push that waits for its commit.
type pending struct {
	ctx   context.Context
	book  string
	batch *batch
	via   string

	pushed Pushed
	err    error
	wake   chan bool // true: commit the next group; false: it has been committed
}

// group is group commit: while one push waits for the disk, those that arrive meanwhile queue up, and the first of them then
// commits them all, in one transaction with one fsync. Whoever comes alone commits at once, without a change of goroutine. A
// push that erases commits alone, as it may take long.
type group struct {
	mu    sync.Mutex
	queue []*pending
	busy  bool // somebody commits, and will hand on
}

// join queues a push up and tells whether it is to commit the next group; if not, it has been committed.
func (g *group) join(push *pending) (leads bool) {
	g.mu.Lock()
	g.queue = append(g.queue, push)
	if !g.busy {
		g.busy = true
		g.mu.Unlock()
		return true
	}
	g.mu.Unlock()
	return <-push.wake
}

// take takes the next group off the queue, as many ops as one push may bring. Whoever leads is the first in it.
func (g *group) take() (next []*pending) {
	g.mu.Lock()
	defer g.mu.Unlock()
	ops := 0
	for _, push := range g.queue {
		ops += len(push.batch.arrived)
		if len(next) > 0 && (push.batch.erases || next[0].batch.erases || ops > oplog.MaxPush) {
			break
		}
		next = append(next, push)
	}
	g.queue = g.queue[len(next):]
	return next
}

// handOn lets the next in the queue lead.
func (g *group) handOn() {
	g.mu.Lock()
	defer g.mu.Unlock()
	if len(g.queue) == 0 {
		g.busy, g.queue = false, nil
		return
	}
	g.queue[0].wake <- true
}

// store is a push up to its commit.
func (b *Book) store(ctx context.Context, book string, batch *batch, via string) (Pushed, error) {
	if err := b.writable(); err != nil {
		return Pushed{}, err
	}
	push := &pending{ctx: ctx, book: book, batch: batch, via: via, wake: make(chan bool, 1)}
	if b.pushes.join(push) {
		together := b.pushes.take()
		b.commit(together)
		b.pushes.handOn()
		for _, other := range together[1:] {
			other.wake <- false
		}
	}
	return push.pushed, push.err
}

// commit stores a group. When that fails, each is tried alone, so that nobody suffers from what another one sent.
func (b *Book) commit(together []*pending) {
	err := b.commitOnce(together)
	if err == nil || len(together) == 1 {
		return
	}
	for _, push := range together {
		push.batch.reset()
		_ = b.commitOnce([]*pending{push}) // it is told its own error
	}
}

// commitOnce stores a group in one transaction: all of it or nothing. It gives what made all of it fail.
func (b *Book) commitOnce(together []*pending) error {
	err := inTx(context.Background(), b.write, func(tx *sql.Tx) error {
		row, err := b.rowIn(tx)
		if err != nil {
			return err
		}
		before := row
		var joined joint
		for _, push := range together {
			if push.err = errors.Join(push.ctx.Err(), row.adopt(push.book)); push.err == nil {
				joined.add(push)
			}
		}
		if err := b.append(tx, &row, &joined); err != nil {
			return err
		}
		for _, push := range joined.pushes {
			push.pushed = push.batch.result(row)
		}
		if row == before {
			return nil // nothing changed, so nothing is written
		}
		return b.saveRow(tx, row)
	})
	if err != nil {
		for _, push := range together {
			push.err = explain(err)
		}
	}
	return err
}

// append appends what a group brings, and erases what it erases.
func (b *Book) append(tx *sql.Tx, row *bookRow, joined *joint) error {
	if err := b.compareAll(tx, joined, *row); err != nil {
		return err
	}
	if err := b.insertAll(tx, row, joined); err != nil {
		return err
	}
	if len(joined.newlyErased) > 0 {
		work := eraser{tx: tx, format: knownFormats()}
		rewritten, err := work.records(joined.newlyErased)
		if err != nil {
			return err
		}
		row.without(work.removed)
		row.stalePages = row.stalePages || rewritten > 0
		row.erases++
	}
	for _, push := range joined.pushes {
		push.batch.newlyErased = joined.newlyErased // it was alone
		push.batch.untidy = joined.untidy || row.erases > row.erasesDone
	}
	return nil
}

// joint is a group on its way into the log: the ops of all its pushes in a row.
type joint struct {
	pushes      []*pending
	arrived     []oplog.Op
	of          []*pending // of each op
	lines       []int      // of each op, its place in its push
	fresh       []int      // places in arrived of the ops that are new here
	erased      map[string]bool
	newlyErased []string
	untidy      bool
}

func (j *joint) add(push *pending) {
	j.pushes = append(j.pushes, push)
	j.arrived = append(j.arrived, push.batch.arrived...)
	j.lines = append(j.lines, push.batch.lines...)
	for range push.batch.arrived {
		j.of = append(j.of, push)
	}
}

var errOtherContent = fault.New(fault.Invalid, oplog.OtherContent, "The server holds another entry under this entry's id. Make the change again, so that it is sent under an id of its own.")

// result is what the sender of a push is told.
func (b *batch) result(row bookRow) Pushed {
	return Pushed{Book: row.book, Log: row.log, Stored: b.stored, Known: b.known, Rejected: b.rejected, passed: b.passed}
}

// reset forgets what a failed transaction made of a push.
func (b *batch) reset() {
	b.stored, b.known = []string{}, []string{}
	b.passed = nil
	b.rejected, b.rejectedAt = b.rejected[:b.unreadable:b.unreadable], b.rejectedAt[:b.unreadable:b.unreadable]
}
