package sqlite

import (
	"context"
	"crypto/hmac"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"encoding/json"
	"strings"

	"rimside/store/oplog"
)

// KindAgreement is the kind of an op that agrees to erasures, or stops them. It names their ops and their records, so that it means
// the same wherever it comes.
const KindAgreement = "agreement"

// secretErasures is the name of the key by which servers of one backup know what another of them let pass.
const secretErasures = "erasures"

// noteVotes keeps what an op says of erasures. The server's own says that it let them pass, and is believed by its seal.
func (b *Book) noteVotes(tx *sql.Tx, op oplog.Op, via string) error {
	if op.Kind != KindAgreement || op.Erased {
		return nil
	}
	ids, recs := oplog.TextsIn(op.Set["ids"]), oplog.TextsIn(op.Set["recs"])
	if len(ids) != len(recs) {
		return nil
	}
	agrees := string(op.Set["agree"]) == "true"
	device := eraserOf(op, via)
	if seal := oplog.TextIn(op.Set["seal"]); seal != "" {
		genuine, err := sealFits(tx, seal, ids, recs)
		if err != nil || !genuine {
			return err
		}
		device = ""
	} else if via == "" {
		device = "" // the computer's own screen
	}
	for i, id := range ids {
		if !oplog.IsID(id) || !oplog.IsID(recs[i]) {
			continue
		}
		if _, err := tx.Exec(`INSERT INTO erasure_votes (id, rec, device, agrees) VALUES (?, ?, ?, ?) ON CONFLICT DO UPDATE SET agrees = max(agrees, excluded.agrees)`,
			unhex(id), unhex(recs[i]), device, agrees); err != nil {
			return err
		}
	}
	return nil
}

func sealFits(tx *sql.Tx, seal string, ids, recs []string) (bool, error) {
	var key []byte
	if err := tx.QueryRow(`SELECT coalesce((SELECT value FROM secrets WHERE name = ?), x'')`, secretErasures).Scan(&key); err != nil || len(key) == 0 {
		return false, err
	}
	given, err := hex.DecodeString(seal)
	return err == nil && hmac.Equal(given, sealOf(key, ids, recs)), nil
}

func sealOf(key []byte, ids, recs []string) []byte {
	sum := hmac.New(sha256.New, key)
	sum.Write([]byte(strings.Join(ids, ",") + ";" + strings.Join(recs, ","))) // a hash takes all
	return sum.Sum(nil)
}

// PassOn writes down which erasures of a push passed here, so that they pass at the other servers of this book too, by whichever
// phone they come. What such an entry names already is left out.
func (b *Book) PassOn(ctx context.Context, pushed Pushed) error {
	var ids, recs []string
	for _, op := range pushed.passed {
		var said bool
		if err := b.read.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM erasure_votes WHERE id = ? AND rec = ? AND device = '' AND agrees = 1)`,
			unhex(op.ID), unhex(op.Rec)).Scan(&said); err != nil {
			return explain(err)
		}
		if !said {
			ids, recs = append(ids, op.ID), append(recs, op.Rec)
		}
	}
	if len(ids) == 0 {
		return nil
	}
	var key []byte
	if err := b.read.QueryRowContext(ctx, `SELECT value FROM secrets WHERE name = ?`, secretErasures).Scan(&key); err != nil {
		return explain(err)
	}
	return b.sayOfErasures(ctx, map[string]any{"ids": ids, "recs": recs, "agree": true, "seal": hex.EncodeToString(sealOf(key, ids, recs))})
}

// Vote agrees to erasures that are held back, or stops them, at the computer itself.
func (b *Book) Vote(ctx context.Context, held []HeldErasures, agree bool) error {
	var ids, recs []string
	for _, each := range held {
		ids, recs = append(ids, each.IDs...), append(recs, each.Recs...)
	}
	if len(ids) == 0 {
		return nil
	}
	return b.sayOfErasures(ctx, map[string]any{"ids": ids, "recs": recs, "agree": agree})
}

func (b *Book) sayOfErasures(ctx context.Context, set map[string]any) error {
	about, err := b.About(ctx)
	if err != nil {
		return err
	}
	raw, err := json.Marshal(map[string]any{"id": oplog.NewID(), "at": b.now().UnixMilli(), "kind": KindAgreement, "rec": oplog.NewID(),
		"set": set, "author": "", "device": "", "schema": 1})
	if err != nil {
		return err
	}
	_, err = b.Push(ctx, about.Book, about.Log, []json.RawMessage{raw}, "")
	return err
}
