package sqlite

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// unfinished is how the names of files begin that were not completed.
const unfinished = ".unfinished-"

// snapshot writes a copy of the database, as it is at one moment, to a new file with an unfinished name in dir. It is on
// the disk when snapshot returns. It has a connection of its own, so that pushes need not wait.
func (b *Book) snapshot(ctx context.Context, dir string) (path string, err error) {
	db, err := openWriter(filepath.Join(b.dir, fileName))
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	file, err := os.CreateTemp(dir, unfinished+"*.sqlite") // readable by its owner only
	if err != nil {
		return "", err
	}
	path = file.Name()
	defer func() {
		if err != nil {
			_ = os.Remove(path)
		}
	}()
	if err := file.Close(); err != nil {
		return "", err
	}
	if _, err := db.ExecContext(ctx, `VACUUM INTO ?`, path); err != nil {
		return "", explain(err)
	}
	return path, syncFile(path)
}

// syncFile waits until a file's content is on the disk.
func syncFile(path string) error {
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(file.Sync(), file.Close())
}

// syncDir waits until the names in a folder are on the disk. Not every system can; those keep names safe by themselves.
func syncDir(dir string) {
	if folder, err := os.Open(dir); err == nil {
		_ = folder.Sync()
		_ = folder.Close()
	}
}

// renameInto gives a finished file its name.
func renameInto(from, to string) error {
	if err := os.Rename(from, to); err != nil {
		return err
	}
	syncDir(filepath.Dir(to))
	return nil
}

// bookRowOf reads the one row of a database file that nobody uses.
func bookRowOf(ctx context.Context, path string) (row bookRow, err error) {
	db, err := openCopy(path)
	if err != nil {
		return row, err
	}
	row, err = readBookRow(ctx, db)
	return row, errors.Join(err, db.Close())
}

func (b *Book) copiesDir() (string, error) {
	dir := filepath.Join(b.dir, "copies")
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", fmt.Errorf("the folder for copies cannot be made: %w", err)
	}
	return dir, nil
}
