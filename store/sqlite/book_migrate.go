package sqlite

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
)

// Files are applied in the order of their names, each once, and never changed after a release: the file's user_version
// counts those it has seen.
//
//go:embed migrations/*.sql
var migrationFiles embed.FS

// migrations is where they are read from; a test puts those of a later program there.
var migrations fs.FS = migrationFiles

// applicationID marks a SQLite file as ours ("Rims").
const applicationID = 0x52696d73

// migrate brings the file to this program's format. before is called once when a file that holds something is about to
// change.
func migrate(ctx context.Context, db *sql.DB, before func(version int) error) error {
	names := migrationNames()
	version, err := checkFormat(ctx, db, len(names))
	if err != nil {
		return err
	}
	if version > 0 && version < len(names) {
		if err := before(version); err != nil {
			return fmt.Errorf("the copy before the change of format could not be made: %w", err)
		}
	}
	for ; version < len(names); version++ {
		if err := migrateOnce(ctx, db, version, names[version]); err != nil {
			return fmt.Errorf("%s: %w", names[version], err)
		}
	}
	return nil
}

func migrationNames() []string {
	names, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		panic(err) // the pattern is right
	}
	return names
}

// knownFormats is how many formats this program knows.
func knownFormats() int { return len(migrationNames()) }

// checkFormat tells how many migrations the file has seen, and refuses what this program must not touch. It reads in one
// transaction, as another program may be making the file.
func checkFormat(ctx context.Context, db *sql.DB, known int) (version int, err error) {
	var application, tables int
	err = inTx(ctx, db, func(tx *sql.Tx) error {
		return errors.Join(
			tx.QueryRow("PRAGMA user_version").Scan(&version),
			tx.QueryRow("PRAGMA application_id").Scan(&application),
			tx.QueryRow("SELECT count(*) FROM sqlite_schema").Scan(&tables))
	})
	switch {
	case err != nil:
		return 0, explain(err)
	case application != applicationID && (tables > 0 || version > 0):
		return 0, errNotOurs
	case version > known:
		return version, newerFormat(version, known)
	}
	return version, nil
}

// migrateOnce applies one file, unless another program was quicker.
func migrateOnce(ctx context.Context, db *sql.DB, version int, name string) error {
	text, err := fs.ReadFile(migrations, name)
	if err != nil {
		return err
	}
	return inTx(ctx, db, func(tx *sql.Tx) error {
		var now int
		if err := tx.QueryRow("PRAGMA user_version").Scan(&now); err != nil || now != version {
			return err
		}
		_, err := tx.Exec(fmt.Sprintf("%s; PRAGMA user_version = %d; PRAGMA application_id = %d", text, version+1, applicationID))
		return err
	})
}

// inTx runs one transaction: all of it or nothing. Once begun it is not interrupted, as it is short.
func inTx(ctx context.Context, db *sql.DB, do func(*sql.Tx) error) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	tx, err := db.BeginTx(context.WithoutCancel(ctx), nil)
	if err != nil {
		return err
	}
	defer func() { _ = tx.Rollback() }() // after a commit there is nothing to roll back
	if err := do(tx); err != nil {
		return err
	}
	return tx.Commit()
}
