package sqlite

import (
	"context"
	"database/sql"
	"fmt"

	"rimside/store/oplog"
)

// About says whose log this is and what it adds up to.
type About struct {
	Book   string // "" until the first push
	Log    string
	Server string
	Count  int64  // ops
	Digest string // 64 hex digits
}

// About reads it.
func (b *Book) About(ctx context.Context) (About, error) {
	row, err := readBookRow(ctx, b.read)
	return About{Book: row.book, Log: row.log, Server: row.server, Count: row.count, Digest: row.digest.String()}, err
}

// bookRow is the one row of the table book.
type bookRow struct {
	server, log, book          string
	count, changes             int64
	erases, erasesDone, newest int64
	stalePages, anyErased      bool
	digest                     oplog.Digest
}

// rowQuerier and rowsQuerier are what a database and a transaction have in common.
type rowQuerier interface {
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

type rowsQuerier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
}

func readBookRow(ctx context.Context, from rowQuerier) (s bookRow, err error) {
	var digest []byte
	err = from.QueryRowContext(ctx, `SELECT server, log, book, count, digest, changes, erases, erases_done, stale_pages, coalesce((SELECT max(seq) FROM ops), 0),
		EXISTS (SELECT 1 FROM erased_records) FROM book`).
		Scan(&s.server, &s.log, &s.book, &s.count, &digest, &s.changes, &s.erases, &s.erasesDone, &s.stalePages, &s.newest, &s.anyErased)
	if err != nil {
		return s, explain(err)
	}
	if len(digest) != len(s.digest) {
		return s, fmt.Errorf("the stored digest has %d bytes: %w", len(digest), errUnusable)
	}
	copy(s.digest[:], digest)
	return s, nil
}

// save writes back what a push changes.
func (s bookRow) save(tx *sql.Tx) error {
	_, err := tx.Exec(`UPDATE book SET book = ?, count = ?, digest = ?, changes = changes + 1, erases = ?, stale_pages = ?`,
		s.book, s.count, s.digest[:], s.erases, s.stalePages)
	return err
}

// adopt gives an empty server the book of whoever comes first, and refuses any other book.
func (s *bookRow) adopt(book string) (changed bool, err error) {
	if !oplog.IsID(book) {
		return false, errBadBook
	}
	if s.book == "" {
		s.book = book
		return true, nil
	}
	if s.book != book {
		return false, ErrOtherBook
	}
	return false, nil
}
