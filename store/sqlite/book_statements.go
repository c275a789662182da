package sqlite

import (
	"context"
	"database/sql"
	"errors"
)

// statements are prepared once, as they run for every op or every request.
type statements struct {
	insert, known, erasedAmong, row, anyDamaged, save, page *sql.Stmt
}

func (s *statements) prepare(ctx context.Context, write, read *sql.DB) error {
	for _, each := range []struct {
		into  **sql.Stmt
		db    *sql.DB
		query string
	}{
		{&s.insert, write, `INSERT INTO ops (id, rec, erased, via, received_at, bytes, sha256, sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`},
		{&s.known, write, `SELECT ops.id, rec, bytes FROM json_each(?) AS given CROSS JOIN ops ON ops.id = unhex(given.value)`},
		{&s.erasedAmong, write, `SELECT rec FROM json_each(?) AS given CROSS JOIN erased_records ON rec = unhex(given.value)`},
		{&s.row, write, bookRowQuery},
		{&s.anyDamaged, write, `SELECT EXISTS (SELECT 1 FROM damaged_ops)`},
		{&s.save, write, `UPDATE book SET book = ?, count = ?, digest = ?, changes = ?, erases = ?, stale_pages = ?, sum = ?`},
		{&s.page, read, `SELECT seq, id, via, received_at, bytes, sha256 FROM ops WHERE seq > ? ORDER BY seq LIMIT ?`},
	} {
		statement, err := each.db.PrepareContext(ctx, each.query)
		if err != nil {
			return explain(err)
		}
		*each.into = statement
	}
	return nil
}

func (s *statements) close() (err error) {
	for _, statement := range []*sql.Stmt{s.insert, s.known, s.erasedAmong, s.row, s.anyDamaged, s.save, s.page} {
		if statement != nil {
			err = errors.Join(err, statement.Close())
		}
	}
	return err
}
