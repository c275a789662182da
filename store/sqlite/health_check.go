package sqlite

import (
	"context"
	"database/sql"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"rimside/store/fault"
)

// Health is how a book is, as it was just tried.
type Health struct {
	State     string // "ok", or the code of what is wrong: damaged, full, read_only, busy, internal
	Read      bool
	Write     bool  // a transaction was committed and is on the disk
	Free      int64 // bytes left on the disk; -1 when nobody knows
	CheckedAt int64 // when everything had last been checked, ms since 1970; 0 for never
	Damaged   int64 // ops that were taken out and have not come back
}

// OK tells whether nothing is wrong.
func (h Health) OK() bool { return h.State == stateOK }

const stateOK = "ok"

// health remembers the last answer for a moment, as anybody may ask, and what was found by others.
type health struct {
	mu      sync.Mutex
	last    Health
	at      time.Time
	trouble *fault.Error // what a check of the whole found
	renewed []string     // ops whose rows were damaged and made anew since the book was opened
	torn    atomic.Bool  // the file does not hold together: writing would tear it further
}

// healthKept is how long an answer is good for: asking again and again must not make the disk busy.
const healthKept = time.Second

// leastFree is how much space a push and a photo may need; with less the disk counts as full.
const leastFree = 16 << 20

// noteTrouble remembers what is wrong with the book until the program ends: it does not go away by itself. A file that is torn
// is read from then on, but not written.
func (b *Book) noteTrouble(found *fault.Error, torn bool) {
	b.health.mu.Lock()
	defer b.health.mu.Unlock()
	b.health.trouble, b.health.at = found, time.Time{}
	if torn {
		b.health.torn.Store(true)
	}
}

// noteRenewed remembers a repair, so that Verify tells of it.
func (b *Book) noteRenewed(id string) {
	b.health.mu.Lock()
	defer b.health.mu.Unlock()
	b.health.renewed = append(b.health.renewed, id)
}

// renewedRows lists the repairs.
func (b *Book) renewedRows() []string {
	b.health.mu.Lock()
	defer b.health.mu.Unlock()
	return slices.Clone(b.health.renewed)
}

// writable gives the reason why nothing may be written, or nil.
func (b *Book) writable() error {
	if b.health.torn.Load() {
		return errUnusable
	}
	return nil
}

// Health tries a read and a write.
func (b *Book) Health(ctx context.Context) Health {
	b.health.mu.Lock()
	defer b.health.mu.Unlock()
	if time.Since(b.health.at) < healthKept {
		return b.health.last
	}
	now := Health{State: stateOK, Free: freeSpace(b.dir)}
	reading := b.tryRead(ctx, &now)
	writing := b.tryWrite(ctx)
	now.Read, now.Write = reading == nil, writing == nil
	switch {
	case reading != nil:
		now.State = stateOf(reading)
	case writing != nil:
		now.State = stateOf(writing)
	case b.health.trouble != nil:
		now.State = b.health.trouble.Code
	case now.Damaged > 0:
		now.State = errUnusable.Code
	case now.Free >= 0 && now.Free < leastFree:
		now.State = errFull.Code
	}
	b.health.last, b.health.at = now, time.Now()
	return now
}

func (b *Book) tryRead(ctx context.Context, into *Health) error {
	if _, err := readBookRow(ctx, b.read); err != nil {
		return err
	}
	return explain(b.read.QueryRowContext(ctx, `SELECT checked_at, (SELECT count(*) FROM damaged_ops), (SELECT length(bytes) FROM ops ORDER BY seq DESC LIMIT 1) FROM scrub`).
		Scan(&into.CheckedAt, &into.Damaged, new(sql.NullInt64)))
}

// tryWrite commits a change of nothing, which SQLite writes and waits for all the same.
func (b *Book) tryWrite(ctx context.Context) error {
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error {
		_, err := tx.Exec(`UPDATE scrub SET only = only`)
		return err
	}))
}

func stateOf(err error) string {
	if said := fault.Of(err); said != nil {
		return said.Code
	}
	return "internal"
}
