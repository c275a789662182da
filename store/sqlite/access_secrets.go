package sqlite

import (
	"context"
	"database/sql"
	"errors"
)

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
	if err == nil {
		err = seal(tx, "secrets", "name = ?", name)
	}
	return errors.Join(err, changed(tx))
}

// changed makes a new copy of the file due.
func changed(tx *sql.Tx) error {
	if _, err := tx.Exec(`UPDATE book SET changes = changes + 1`); err != nil {
		return err
	}
	return seal(tx, "book", "only = 1")
}
