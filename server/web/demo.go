package web

import (
	"context"
	"crypto/sha256"
	_ "embed"
	"encoding/hex"
	"encoding/json"
	"errors"

	"rimside/store/record"
	"rimside/store/sqlite"
)

//go:embed demo.json
var demoJSON []byte

// demo is the invented team: its book, which never meets a real one, and what a phone that opens it first sees.
type demo struct {
	Book, Device string
	At           int64
	Records      []struct {
		Rec, Kind string
		Set       json.RawMessage
	}
	Draft json.RawMessage
	Bike  string
}

func readDemo() (d demo) {
	if err := json.Unmarshal(demoJSON, &d); err != nil {
		panic(err) // a mistake in the program itself, found by its first test
	}
	return d
}

// SeedDemo writes the invented team into a book. The ops are always the same, so phones that saw an earlier demo agree.
func SeedDemo(ctx context.Context, book *sqlite.Book) error {
	d := readDemo()
	ops := make([]json.RawMessage, len(d.Records))
	for i, each := range d.Records {
		id := sha256.Sum256([]byte("demo " + each.Rec))
		raw, err := json.Marshal(struct {
			ID     string          `json:"id"`
			At     int64           `json:"at"`
			Kind   string          `json:"kind"`
			Rec    string          `json:"rec"`
			Set    json.RawMessage `json:"set"`
			Device string          `json:"device"`
			Schema int             `json:"schema"`
		}{hex.EncodeToString(id[:16]), d.At, each.Kind, each.Rec, each.Set, d.Device, record.Schema()})
		if err != nil {
			return err
		}
		ops[i] = raw
	}
	pushed, err := book.Push(ctx, d.Book, "", ops, "")
	if errors.Is(err, sqlite.ErrOtherBook) {
		return errors.New("the data folder holds a real book: a demo needs a folder of its own, name another with -data DIR")
	}
	if err == nil && len(pushed.Rejected) > 0 {
		return &pushed.Rejected[0]
	}
	return err
}
