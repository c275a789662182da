package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"time"
)

// CodeTries is how many wrong guesses a pairing code survives, less one.
const CodeTries = 5

// Secret returns the secret of that name; when there is none yet, the one that make returns is kept.
func (b *Book) Secret(ctx context.Context, name string, make func() ([]byte, error)) (value []byte, err error) {
	err = inTx(ctx, b.write, func(tx *sql.Tx) error {
		err := tx.QueryRow(`SELECT value FROM secrets WHERE name = ?`, name).Scan(&value)
		if !errors.Is(err, sql.ErrNoRows) {
			return err
		}
		if value, err = make(); err != nil {
			return err
		}
		return b.putSecret(tx, name, value)
	})
	return value, explain(err)
}

// PutSecret keeps a secret in place of the one before.
func (b *Book) PutSecret(ctx context.Context, name string, value []byte) error {
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error { return b.putSecret(tx, name, value) }))
}

func (b *Book) putSecret(tx *sql.Tx, name string, value []byte) error {
	_, err := tx.Exec(`INSERT INTO secrets (name, made_at, value) VALUES (?, ?, ?)
		ON CONFLICT (name) DO UPDATE SET made_at = excluded.made_at, value = excluded.value`, name, b.now().UnixMilli(), value)
	return errors.Join(err, changed(tx))
}

// changed makes a new copy of the file due.
func changed(tx *sql.Tx) error {
	_, err := tx.Exec(`UPDATE book SET changes = changes + 1`)
	return err
}

// AddCode makes a pairing code valid until expires. At most so many are valid at once; the oldest go first.
func (b *Book) AddCode(ctx context.Context, code string, expires time.Time, most int) error {
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error {
		_, err := tx.Exec(`INSERT OR REPLACE INTO pair_codes (code, expires_at) VALUES (?, ?)`, code, expires.UnixMilli())
		if err == nil {
			_, err = tx.Exec(`DELETE FROM pair_codes WHERE expires_at <= ? OR code IN (SELECT code FROM pair_codes ORDER BY expires_at DESC LIMIT -1 OFFSET ?)`,
				b.now().UnixMilli(), most)
		}
		return err
	}))
}

// TakeCode uses a pairing code up. A wrong guess counts against every code that is valid, as nobody knows which was
// meant; a code that has been guessed at CodeTries times is gone.
func (b *Book) TakeCode(ctx context.Context, code string) (taken bool, err error) {
	err = inTx(ctx, b.write, func(tx *sql.Tx) error {
		result, err := tx.Exec(`DELETE FROM pair_codes WHERE code = ? AND expires_at > ? AND tries < ?`, code, b.now().UnixMilli(), CodeTries)
		if err != nil {
			return err
		}
		if n, err := result.RowsAffected(); n > 0 || err != nil {
			taken = n > 0
			return err
		}
		_, err = tx.Exec(`UPDATE pair_codes SET tries = tries + 1`)
		if err == nil {
			_, err = tx.Exec(`DELETE FROM pair_codes WHERE tries >= ? OR expires_at <= ?`, CodeTries, b.now().UnixMilli())
		}
		return err
	})
	return taken, explain(err)
}
