package sqlite

import (
	"archive/tar"
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"rimside/store/fault"
	"rimside/store/oplog"
)

var (
	errFolderTaken = fault.New(fault.Invalid, "folder_taken", "That folder already holds a book. Choose an empty folder with -data DIR.")
	errNotBackup   = fault.New(fault.Invalid, "not_rimside", "This is not a backup that Rimside made. Choose a file written by rimside backup.")
	errCutBackup   = fault.New(fault.Invalid, "damaged", "This backup is not whole: it ends too early. Use another one.")
	errBadBackup   = fault.New(fault.Invalid, "damaged", "The database in this backup is damaged. Use another one.")
	errNewerBackup = fault.New(fault.Invalid, "newer_format", "This backup was made by a newer Rimside. Update this one, then restore again.")
)

// Restore unpacks a backup into a folder that holds no book yet. The log gets a new id, so that phones compare all they
// have with it. The database takes its place last: until then nothing counts, and what failed is taken away again.
func Restore(ctx context.Context, backup, dir string, options Options) (err error) {
	if options.Blobs == nil {
		return errNoBlobs
	}
	if _, err := os.Lstat(filepath.Join(dir, fileName)); err == nil {
		return errFolderTaken
	}
	file, err := os.Open(backup)
	if err != nil {
		return err
	}
	defer file.Close()
	made, err := makeFolder(dir)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil && made {
			_ = os.Remove(dir) // empty by now
		}
	}()
	if err := removeUnfinished(dir, 0); err != nil { // what a crash left of an earlier try
		return err
	}
	stage, err := os.MkdirTemp(dir, unfinished+"restore-*")
	if err != nil {
		return err
	}
	defer os.RemoveAll(stage)
	if err := unpack(ctx, tar.NewReader(file), stage, options.Blobs(stage)); err != nil {
		return err
	}
	if err := renew(ctx, filepath.Join(stage, fileName)); err != nil {
		return err
	}
	return moveIn(stage, dir)
}

// makeFolder makes a folder and tells whether it was not there.
func makeFolder(dir string) (made bool, err error) {
	if _, err := os.Stat(dir); errors.Is(err, fs.ErrNotExist) {
		return true, os.MkdirAll(dir, 0o700)
	} else if err != nil {
		return false, err
	}
	return false, nil
}

// codesSince is the first format with pairing codes.
const codesSince = 2

// renew checks a restored database and gives its log a new id.
func renew(ctx context.Context, path string) (err error) {
	if _, err := os.Stat(path); err != nil {
		return errNotBackup
	}
	db, err := openCopy(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	version, err := checkFormat(ctx, db, knownFormats())
	switch {
	case version > knownFormats():
		return errNewerBackup
	case errors.Is(err, errNotOurs):
		return errNotBackup
	case err != nil:
		return errBadBackup
	}
	if problems, err := checkFile(ctx, db); err != nil || len(problems) > 0 {
		return errBadBackup
	}
	return inTx(ctx, db, func(tx *sql.Tx) error {
		if version >= codesSince { // a code lets one phone in, at one server
			if _, err := tx.Exec(`DELETE FROM pair_codes`); err != nil {
				return err
			}
		}
		changed, err := tx.Exec(`UPDATE book SET log = ?`, oplog.NewID())
		if err != nil {
			return err
		}
		if rows, err := changed.RowsAffected(); err != nil || rows != 1 {
			return errBadBackup
		}
		if version < sumsSince {
			return nil
		}
		return seal(tx, "book", "only = 1")
	})
}

// moveIn moves what was unpacked to its place. Until the database is there nothing counts: it comes last, by one rename. Photos
// that are here already are the same, by their names. What else is in the way is set aside, and put back when this fails.
func moveIn(stage, dir string) (err error) {
	if err := syncTree(stage); err != nil {
		return err
	}
	if err := setAsideLogs(dir); err != nil {
		return err
	}
	entries, err := os.ReadDir(stage)
	if err != nil {
		return err
	}
	for _, entry := range entries {
		name := entry.Name()
		switch {
		case name == fileName:
			continue
		case name == "blobs":
			err = mergeInto(filepath.Join(stage, name), filepath.Join(dir, name))
		default:
			var back func()
			back, err = replace(filepath.Join(stage, name), filepath.Join(dir, name))
			defer func() {
				if err != nil {
					back()
				}
			}()
		}
		if err != nil {
			return err
		}
	}
	syncDir(dir)
	if err := os.Rename(filepath.Join(stage, fileName), filepath.Join(dir, fileName)); err != nil {
		return err
	}
	syncDir(dir)
	return nil
}

// mergeInto moves the files of a folder into another one that may be there already.
func mergeInto(from, to string) error {
	return filepath.WalkDir(from, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		within, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		if entry.IsDir() {
			return os.MkdirAll(filepath.Join(to, within), 0o700)
		}
		if err := os.Rename(path, filepath.Join(to, within)); err != nil {
			return err
		}
		syncDir(filepath.Dir(filepath.Join(to, within)))
		return nil
	})
}

// replace moves a file or folder to a place, sets aside what was there, and gives what takes it back.
func replace(from, to string) (back func(), err error) {
	aside, err := setAside(to)
	back = func() {
		if aside != "" {
			_ = os.RemoveAll(to)
			_ = os.Rename(aside, to)
		}
	}
	if err != nil {
		return back, err
	}
	if err := os.Rename(from, to); err != nil {
		return back, err
	}
	return func() {
		_ = os.RemoveAll(to)
		back()
	}, nil
}

// syncTree waits until a folder with all it holds is on the disk: names as well as contents.
func syncTree(root string) error {
	return filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err == nil && entry.IsDir() {
			syncDir(path)
		}
		return err
	})
}
