package sqlite

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"encoding/json"
)

// maxPageBytes is where a page ends at the latest, but for the one op that it always holds.
const maxPageBytes = 4 << 20

// Via tells which device's session brought an op, and when.
type Via struct {
	ID         string `json:"id"`
	Device     string `json:"device"`
	ReceivedAt int64  `json:"received_at"` // ms since 1970
}

// emptyHash is the hash of a page without ops: the SHA-256 of nothing.
const emptyHash = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"

// Page is a stretch of the log, with the sums over the whole log at the same moment. Write the ops out as they are:
// package json would change their bytes.
type Page struct {
	Book, Log string
	Ops       []json.RawMessage
	Via       []Via
	Next      int64 // where the next page starts
	More      bool
	Count     int64
	Digest    string
	Hash      string // SHA-256 of the SHA-256 of each op as it came, in a row: 64 hex digits
}

// Pull reads the ops that arrived after since, at most limit of them. book and log are what the asker believes; either
// may be "". Whoever knows another log starts anew: no ops, Next 0. Behind the end it is the end.
func (b *Book) Pull(ctx context.Context, book, log string, since int64, limit int) (Page, error) {
	tx, err := b.read.BeginTx(ctx, nil)
	if err != nil {
		return Page{}, explain(err)
	}
	defer func() { _ = tx.Rollback() }() // it only read
	row, err := readBookRow(ctx, tx)
	if err != nil {
		return Page{}, err
	}
	if book != "" && row.book != "" && book != row.book {
		return Page{}, ErrOtherBook
	}
	page := Page{Book: row.book, Log: row.log, Count: row.count, Digest: row.digest.String(), Hash: emptyHash, Ops: []json.RawMessage{}, Via: []Via{}}
	if log != "" && log != row.log {
		return page, nil
	}
	page.Next = min(max(since, 0), row.newest)
	if err := b.fill(ctx, tx, &page, limit); err != nil {
		return Page{}, explain(err)
	}
	page.More = page.Next < row.newest
	return page, nil
}

func (b *Book) fill(ctx context.Context, tx *sql.Tx, page *Page, limit int) error {
	rows, err := tx.StmtContext(ctx, b.statements.page).QueryContext(ctx, page.Next, max(limit, 1))
	if err != nil {
		return err
	}
	defer rows.Close()
	hash := sha256.New()
	defer func() { page.Hash = hex.EncodeToString(hash.Sum(nil)) }()
	var damaged []int64
	defer func() { b.takeOutBeside(damaged) }()
	for size := 0; rows.Next(); {
		var seq, received int64
		var id, raw, stored []byte
		var via string
		if err := rows.Scan(&seq, &id, &via, &received, &raw, &stored); err != nil {
			return err
		}
		if sum := sha256.Sum256(raw); !bytes.Equal(sum[:], stored) {
			damaged, page.Next = append(damaged, seq), seq // nobody must get it
			continue
		}
		if size += len(raw); size > maxPageBytes && len(page.Ops) > 0 {
			break
		}
		page.Next = seq
		hash.Write(stored)
		page.Ops = append(page.Ops, raw)
		page.Via = append(page.Via, Via{ID: hex.EncodeToString(id), Device: via, ReceivedAt: received})
	}
	return rows.Err()
}
