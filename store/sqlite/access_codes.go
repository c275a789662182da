package sqlite

import (
	"context"
	"database/sql"
	"time"
)

// CodeTime is how long a pairing code is valid.
const CodeTime = 10 * time.Minute

// CodeTries is how many wrong guesses a pairing code survives, less one: from all addresses together, so that a stranger's few do not
// end it. One address is slowed down long before (our choice: fifty of a million).
const CodeTries = 50

// AddCode makes a pairing code valid for CodeTime of running time; expires is when that is by the clock, for people. At most so
// many are valid at once; the oldest go first.
func (b *Book) AddCode(ctx context.Context, code string, expires time.Time, most int) error {
	return explain(inTx(ctx, b.write, func(tx *sql.Tx) error {
		up := b.running().Milliseconds()
		_, err := tx.Exec(`INSERT OR REPLACE INTO pair_codes (code, expires_at, ends_up) VALUES (?, ?, ?)`, code, expires.UnixMilli(), up+CodeTime.Milliseconds())
		if err == nil {
			_, err = tx.Exec(`DELETE FROM pair_codes WHERE NOT `+codeIsAlive+` OR code IN (SELECT code FROM pair_codes ORDER BY ends_up DESC LIMIT -1 OFFSET ?3)`,
				up, CodeTime.Milliseconds(), most)
		}
		return err
	}))
}

// codeIsAlive is said with the running time and CodeTime, both in ms. A code that would live longer than that was made before
// the machine was started anew.
const codeIsAlive = `(ends_up > ?1 AND ends_up - ?1 <= ?2)`

// TakeCode uses a pairing code up. A wrong guess counts against every code that is valid, as nobody knows which was
// meant; a code that has been guessed at CodeTries times is gone.
func (b *Book) TakeCode(ctx context.Context, code string) (taken bool, err error) {
	err = inTx(ctx, b.write, func(tx *sql.Tx) error {
		up := b.running().Milliseconds()
		result, err := tx.Exec(`DELETE FROM pair_codes WHERE `+codeIsAlive+` AND code = ?3 AND tries < ?4`, up, CodeTime.Milliseconds(), code, CodeTries)
		if err != nil {
			return err
		}
		if n, err := result.RowsAffected(); n > 0 || err != nil {
			taken = n > 0
			return err
		}
		_, err = tx.Exec(`UPDATE pair_codes SET tries = tries + 1`)
		if err == nil {
			_, err = tx.Exec(`DELETE FROM pair_codes WHERE NOT `+codeIsAlive+` OR tries >= ?3`, up, CodeTime.Milliseconds(), CodeTries)
		}
		return err
	})
	return taken, explain(err)
}
