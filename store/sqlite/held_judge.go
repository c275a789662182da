package sqlite

import (
	"database/sql"
	"slices"
	"time"

	"rimside/store/oplog"
)

// FreeErasures is how many records one device may erase within ErasureTime before a second one has to agree (our choice).
const FreeErasures = 10

// ErasureTime is how long an erasure counts.
const ErasureTime = time.Hour

// hold keeps back what erases in bulk. An erasure passes when it was agreed to, when nothing is lost here by it, or when it is one
// of the few that a device may make by itself. What is held back is as if it had not come: its sender sends it again.
func (b *Book) hold(tx *sql.Tx, joined *joint, places []int, stored map[int]verdict) error {
	passing, err := b.judge(tx, joined, places)
	if err != nil {
		return err
	}
	held := map[string]bool{} // ids of ops
	for _, place := range places {
		op := joined.arrived[place]
		if joined.erased[op.Rec] {
			continue
		}
		if passing[op.Rec] {
			joined.erased[op.Rec] = true
			joined.newlyErased = append(joined.newlyErased, op.Rec)
			if _, known := stored[place]; !known {
				joined.of[place].batch.passed = append(joined.of[place].batch.passed, op)
			}
			continue
		}
		if _, known := stored[place]; !known { // a known one stays as it is, with its values
			held[op.ID] = true
		}
	}
	if len(held) == 0 {
		return nil
	}
	joined.fresh = slices.DeleteFunc(joined.fresh, func(place int) bool { return held[joined.arrived[place].ID] })
	for _, push := range joined.pushes {
		push.batch.stored = slices.DeleteFunc(push.batch.stored, func(id string) bool { return held[id] })
		push.batch.known = slices.DeleteFunc(push.batch.known, func(id string) bool { return held[id] })
	}
	return nil
}

// judge tells which records may be erased. What a device asks for at once is judged as one: half a person would be worse.
func (b *Book) judge(tx *sql.Tx, joined *joint, places []int) (passing map[string]bool, err error) {
	passing = map[string]bool{}
	asked := map[string][]int{} // device -> the places that count, one for a record
	counted := map[string]bool{}
	for _, place := range places {
		op, push := joined.arrived[place], joined.of[place]
		if joined.erased[op.Rec] || passing[op.Rec] {
			continue
		}
		device := eraserOf(op, push.via)
		free, err := erasureIsFree(tx, op, device)
		if err != nil {
			return nil, err
		}
		if free || push.batch.byOwner {
			passing[op.Rec] = true
		} else if !counted[op.Rec] {
			counted[op.Rec] = true
			asked[device] = append(asked[device], place)
		}
	}
	now := b.now().UnixMilli()
	for device, places := range asked {
		places = slices.DeleteFunc(places, func(place int) bool { return passing[joined.arrived[place].Rec] })
		if err := b.judgeDevice(tx, joined, device, places, now, passing); err != nil {
			return nil, err
		}
	}
	return passing, nil
}

func (b *Book) judgeDevice(tx *sql.Tx, joined *joint, device string, places []int, now int64, passing map[string]bool) error {
	since := now - ErasureTime.Milliseconds()
	if _, err := tx.Exec(`DELETE FROM recent_erasures WHERE at <= ?`, since); err != nil {
		return err
	}
	var recent int
	var fresh []int
	err := tx.QueryRow(`SELECT (SELECT count(*) FROM recent_erasures WHERE device = ?1) + (SELECT count(DISTINCT rec) FROM held_erasures WHERE device = ?1 AND since > ?2)`,
		device, since).Scan(&recent)
	if err != nil {
		return err
	}
	for _, place := range places {
		var waits bool
		if err := tx.QueryRow(`SELECT EXISTS (SELECT 1 FROM held_erasures WHERE id = ?)`, unhex(joined.arrived[place].ID)).Scan(&waits); err != nil {
			return err
		}
		if !waits {
			fresh = append(fresh, place)
		}
	}
	for _, place := range fresh {
		op := joined.arrived[place]
		if recent+len(fresh) <= FreeErasures {
			passing[op.Rec] = true
			_, err = tx.Exec(`INSERT INTO recent_erasures (device, at) VALUES (?, ?)`, device, now)
		} else {
			_, err = tx.Exec(`INSERT INTO held_erasures (id, rec, kind, device, since) VALUES (?, ?, ?, ?, ?)`, unhex(op.ID), unhex(op.Rec), erasedKind(op), device, now)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// eraserOf is the device that an erasure counts for: the one that the server saw, as what an op says of itself may be invented. At
// the computer itself there is only that.
func eraserOf(op oplog.Op, via string) string {
	if via != "" {
		return via
	}
	return op.Device
}

// erasureIsFree tells whether an erasure needs nobody to agree any more, or takes nothing from here. A vote of the device that
// erases is none.
func erasureIsFree(tx *sql.Tx, op oplog.Op, device string) (free bool, err error) {
	err = tx.QueryRow(`SELECT EXISTS (SELECT 1 FROM erasure_votes WHERE id = ?1 AND rec = ?2 AND agrees = 1 AND (device = '' OR device <> ?3 AND `+oldEnough+`))
		OR NOT EXISTS (SELECT 1 FROM ops WHERE rec = ?2 AND erased = 0)`, unhex(op.ID), unhex(op.Rec), device).Scan(&free)
	return free, err
}

// oldEnough: a phone that was let in after the erasure came may be the same person once more, and has no say in it.
const oldEnough = `NOT EXISTS (SELECT 1 FROM held_erasures AS held, devices WHERE held.id = ?1 AND devices.device = erasure_votes.device AND devices.paired_at > held.since)`

// erasedKind is the kind of record that an erasure names.
func erasedKind(op oplog.Op) string {
	if op.Kind != oplog.KindErase {
		return op.Kind
	}
	return oplog.TextIn(op.Set["kind"])
}
