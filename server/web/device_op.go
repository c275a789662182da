package web

import (
	"context"
	"encoding/json"

	"rimside/store/oplog"
)

// setDevice writes one field of a device's record into the log, as an op that replaces what stands there. A book that no
// phone has begun yet has no log to write to: then it is noted beside it.
func (a *app) setDevice(ctx context.Context, id, by, field string, value any) error {
	about, err := a.book.About(ctx)
	if err != nil {
		return err
	}
	if about.Book == "" {
		return a.book.NoteDevice(ctx, id, field, value)
	}
	state, err := a.book.Record(ctx, id)
	if err != nil {
		return err
	}
	op := map[string]any{
		"id": oplog.NewID(), "at": oplog.NextAt(a.nowMS(), state.Newest), "kind": "device", "rec": id, "set": map[string]any{field: value},
		"author": "", "device": by, "schema": 1,
	}
	if now, known := state.Fields[field]; known {
		replaced := now.Winner.Ops
		for _, other := range now.Siblings {
			replaced = append(replaced, other.Ops...)
		}
		op["bases"] = map[string][]string{field: replaced}
	}
	raw, err := json.Marshal(op)
	if err != nil {
		return err
	}
	pushed, err := a.book.Push(ctx, about.Book, about.Log, []json.RawMessage{raw}, by)
	if err == nil && len(pushed.Rejected) > 0 {
		err = &pushed.Rejected[0]
	}
	return err
}
