package sqlite

import (
	"context"
	"database/sql"
	"time"
)

// CodeTime is how long a pairing code is valid.
const CodeTime = 10 * time.Minute

// CodeTries is how many wrong guesses a pairing code survives, less one.
const CodeTries = 5

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
