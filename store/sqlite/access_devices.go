package sqlite

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"time"

	"rimside/store/oplog"
)

const (
	kindDevice   = "device"
	fieldRevoked = "revoked"
)

// Device is a phone or a computer that writes to the book.
type Device struct {
	ID       string
	Label    string // what it is called
	PairedAt int64  // ms since 1970; 0 when it was never paired here
	SeenAt   int64  // ms since 1970; 0 when it never came
	Revoked  bool   // for ever
}

// Pair notes that a device was paired here, and what it calls itself.
func (b *Book) Pair(ctx context.Context, device, label string) error {
	now := b.now().UnixMilli()
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error {
		_, err := tx.Exec(`INSERT INTO devices (device, label, paired_at, seen_at) VALUES (?, ?, ?, ?)
			ON CONFLICT (device) DO UPDATE SET label = excluded.label, paired_at = excluded.paired_at, seen_at = excluded.seen_at`, device, label, now, now)
		if err == nil {
			err = seal(tx, "devices", "device = ?", device)
		}
		return errors.Join(err, changed(tx))
	}))
}

// WasPaired tells whether a device was paired here, or at the server that this one was made of by a backup.
func (b *Book) WasPaired(ctx context.Context, device string) (was bool, err error) {
	err = b.read.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM devices WHERE device = ? AND paired_at > 0)`, device).Scan(&was)
	return was, explain(err)
}

// Revoked tells whether a device must not come in any more.
func (b *Book) Revoked(ctx context.Context, device string) (out bool, err error) {
	err = b.read.QueryRowContext(ctx, `SELECT revoked FROM devices WHERE device = ?`, device).Scan(&out)
	if errors.Is(err, sql.ErrNoRows) {
		return false, nil
	}
	return out, explain(err)
}

// SeeDevice notes when a device was here. That needs no copy of the file.
func (b *Book) SeeDevice(ctx context.Context, device string) error {
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error {
		_, err := tx.Exec(`INSERT INTO devices (device, seen_at) VALUES (?1, ?2) ON CONFLICT (device) DO UPDATE SET seen_at = ?2`, device, b.now().UnixMilli())
		if err == nil {
			err = seal(tx, "devices", "device = ?", device)
		}
		return err
	}))
}

// Devices lists all, those that came last first. Their names are what the log says.
func (b *Book) Devices(ctx context.Context) ([]Device, error) {
	rows, err := b.read.QueryContext(ctx, `SELECT device, label, paired_at, seen_at, revoked FROM devices ORDER BY seen_at DESC, paired_at DESC, device LIMIT 1000`)
	if err != nil {
		return nil, explain(err)
	}
	defer rows.Close()
	var found []Device
	for rows.Next() {
		var d Device
		if err := rows.Scan(&d.ID, &d.Label, &d.PairedAt, &d.SeenAt, &d.Revoked); err != nil {
			return nil, explain(err)
		}
		found = append(found, d)
	}
	if err := rows.Err(); err != nil {
		return nil, explain(err)
	}
	for i := range found {
		if err := b.label(ctx, &found[i]); err != nil {
			return nil, err
		}
	}
	return found, nil
}

// label takes a device's name from its record.
func (b *Book) label(ctx context.Context, d *Device) error {
	state, err := b.Record(ctx, d.ID)
	if err != nil {
		return err
	}
	var label string
	if field, known := state.Fields["label"]; known && json.Unmarshal(field.Winner.Value, &label) == nil && label != "" {
		d.Label = label
	}
	return nil
}

// Record merges one record's ops.
func (b *Book) Record(ctx context.Context, rec string) (oplog.State, error) {
	rows, err := b.read.QueryContext(ctx, `SELECT bytes FROM ops WHERE rec = ? ORDER BY seq`, unhex(rec))
	if err != nil {
		return oplog.State{}, explain(err)
	}
	defer rows.Close()
	var ops []oplog.Op
	for rows.Next() {
		var raw []byte
		if err := rows.Scan(&raw); err != nil {
			return oplog.State{}, explain(err)
		}
		if op, rejected := oplog.Parse(raw); rejected == nil {
			ops = append(ops, op)
		}
	}
	return oplog.Merge(ops), explain(rows.Err())
}

// noteDevice keeps the table of devices in step with an op that has just been stored. Shutting out is one way: no later
// op takes it back.
func noteDevice(tx *sql.Tx, op oplog.Op) error {
	isErase := op.Kind == oplog.KindErase && string(op.Set["kind"]) == `"`+kindDevice+`"`
	if op.Kind != kindDevice && !isErase {
		return nil
	}
	out := isErase || op.Erased || string(op.Set[fieldRevoked]) == "true"
	_, err := tx.Exec(`INSERT INTO devices (device, revoked) VALUES (?1, ?2) ON CONFLICT (device) DO UPDATE SET revoked = max(revoked, ?2)`, op.Rec, out)
	if err == nil {
		err = seal(tx, "devices", "device = ?", op.Rec)
	}
	return err
}

// NoteDevice keeps a device's name, or that it is shut out, while there is no log to write it to.
func (b *Book) NoteDevice(ctx context.Context, device, field string, value any) error {
	column := "label"
	if field == fieldRevoked {
		column = "revoked"
	}
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error {
		_, err := tx.Exec(`UPDATE devices SET `+column+` = ? WHERE device = ?`, value, device)
		if err == nil {
			err = seal(tx, "devices", "device = ?", device)
		}
		return errors.Join(err, changed(tx))
	}))
}

// Now is the time by this book's clock.
func (b *Book) Now() time.Time { return b.now() }
