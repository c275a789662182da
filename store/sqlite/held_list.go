package sqlite

import (
	"context"
	"encoding/hex"
)

// HeldErasures are one device's erasures that wait until somebody agrees, the oldest first.
type HeldErasures struct {
	Device    string
	Since     int64 // ms since 1970
	IDs, Recs []string
	Kinds     map[string]int // how many of each kind of record, as the erasures say
	Stopped   bool           // somebody said no; whoever agrees later still can
	MayAgree  bool           // the one who asks
}

// Held lists them, one entry a device. asks is the device that wants to know, "" for the computer itself.
func (b *Book) Held(ctx context.Context, asks string) (held []HeldErasures, err error) {
	rows, err := b.read.QueryContext(ctx, `SELECT held.id, held.rec, held.kind, held.device, held.since,
			EXISTS (SELECT 1 FROM erasure_votes WHERE id = held.id AND rec = held.rec AND agrees = 0),
			?1 = '' OR ?1 <> held.device AND NOT EXISTS (SELECT 1 FROM devices WHERE device = ?1 AND paired_at > held.since)
		FROM held_erasures AS held WHERE NOT EXISTS (SELECT 1 FROM erased_records WHERE rec = held.rec)
		AND NOT EXISTS (SELECT 1 FROM erasure_votes WHERE id = held.id AND rec = held.rec AND agrees = 1 AND (device = '' OR device <> held.device
			AND NOT EXISTS (SELECT 1 FROM devices WHERE device = erasure_votes.device AND paired_at > held.since)))
		ORDER BY held.device, held.since, held.id`, asks)
	if err != nil {
		return nil, explain(err)
	}
	defer rows.Close()
	for rows.Next() {
		var id, rec []byte
		var kind, device string
		var since int64
		var stopped, may bool
		if err := rows.Scan(&id, &rec, &kind, &device, &since, &stopped, &may); err != nil {
			return nil, explain(err)
		}
		if len(held) == 0 || held[len(held)-1].Device != device || held[len(held)-1].Stopped != stopped {
			held = append(held, HeldErasures{Device: device, Since: since, Kinds: map[string]int{}, Stopped: stopped, MayAgree: may})
		}
		lot := &held[len(held)-1]
		lot.IDs, lot.Recs = append(lot.IDs, hex.EncodeToString(id)), append(lot.Recs, hex.EncodeToString(rec))
		lot.Kinds[kind]++
		lot.MayAgree = lot.MayAgree && may
	}
	return held, explain(rows.Err())
}

// heldSince is the first format in which erasures may be held back.
const heldSince = 5

// letGo forgets erasures that waited and are done.
const letGo = `DELETE FROM held_erasures WHERE rec = ?`
