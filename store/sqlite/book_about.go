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
	stalePages                 bool
	anyErased, anyDamaged      bool
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
	return scanBookRow(from.QueryRowContext(ctx, bookRowQuery))
}

// bookRowQuery uses only what was there in the first format, so that copies of then can be read.
const bookRowQuery = `SELECT server, log, book, count, digest, changes, erases, erases_done, stale_pages, coalesce((SELECT max(seq) FROM ops), 0),
	EXISTS (SELECT 1 FROM erased_records) FROM book`

// rowIn reads the row in a push's transaction; here it is also known whether ops are missing that were damaged.
func (b *Book) rowIn(tx *sql.Tx) (s bookRow, err error) {
	if s, err = scanBookRow(tx.Stmt(b.statements.row).QueryRow()); err != nil {
		return s, err
	}
	return s, explain(tx.Stmt(b.statements.anyDamaged).QueryRow().Scan(&s.anyDamaged))
}

func scanBookRow(row *sql.Row) (s bookRow, err error) {
	var digest []byte
	err = row.Scan(&s.server, &s.log, &s.book, &s.count, &digest, &s.changes, &s.erases, &s.erasesDone, &s.stalePages, &s.newest, &s.anyErased)
	if err != nil {
		return s, explain(err)
	}
	if len(digest) != len(s.digest) {
		return s, fmt.Errorf("the stored digest has %d bytes: %w", len(digest), errUnusable)
	}
	copy(s.digest[:], digest)
	return s, nil
}

// saveRow writes back what a push changes.
func (b *Book) saveRow(tx *sql.Tx, s bookRow) error {
	s.changes++
	_, err := tx.Stmt(b.statements.save).Exec(s.book, s.count, s.digest[:], s.changes, s.erases, s.stalePages, s.sum())
	return err
}

// sum is what the row is sealed with.
func (s bookRow) sum() int64 {
	return rowSum(s.server, s.log, s.book, s.count, s.digest[:], s.changes, s.erases, s.erasesDone, s.stalePages)
}

// adopt gives an empty server the book of whoever comes first, and refuses any other book.
func (s *bookRow) adopt(book string) error {
	switch {
	case !oplog.IsID(book):
		return errBadBook
	case s.book == "":
		s.book = book
	case s.book != book:
		return ErrOtherBook
	}
	return nil
}

// with counts an op that was added.
func (s *bookRow) with(id string) {
	s.count++
	s.digest.Toggle(id)
}

// without counts ops that were taken out.
func (s *bookRow) without(ids []string) {
	for _, id := range ids {
		s.count--
		s.digest.Toggle(id)
	}
}
