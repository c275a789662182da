package sqlite

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// besideFile is how the names of files end that belong to a database file and to no other.
var besideFile = []string{"-wal", "-shm", "-journal"}

// setAsideStray sets aside the write-ahead log of a database file that is no longer there: whoever moved the file away, or put
// a copy in its place, left it behind, and SQLite would read it into the new one. A file that a log belongs to says in its
// header that it has one (sqlite.org/fileformat2.html, 1.3.3, bytes 18 and 19); our copies and backups say that they have none.
func setAsideStray(dir string) (found bool, err error) {
	path := filepath.Join(dir, fileName)
	if _, err := os.Stat(path + "-wal"); err != nil { // asked first: a file says that it has a log before it gets one
		return false, nil
	}
	file, err := os.Open(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return true, setAsideLogs(dir)
	case err != nil:
		return false, err
	}
	defer file.Close()
	var header [20]byte
	const withLog = 2
	if n, _ := file.ReadAt(header[:], 0); n == len(header) && (header[18] == withLog || string(header[:15]) != "SQLite format 3") {
		return false, nil // it has one, or is no database at all, which is told elsewhere
	}
	return true, setAsideLogs(dir)
}

// setAsideLogs sets aside all that lies beside a database file.
func setAsideLogs(dir string) error {
	for _, ending := range besideFile {
		if _, err := setAside(filepath.Join(dir, fileName+ending)); err != nil {
			return err
		}
	}
	return nil
}

// setAside gives a file or folder another name, under which nothing looks for it: a person may still need it.
func setAside(path string) (aside string, err error) {
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	for number := 1; ; number++ {
		aside = fmt.Sprintf("%s.set-aside-%d", path, number)
		if _, err := os.Lstat(aside); errors.Is(err, fs.ErrNotExist) {
			break
		}
	}
	if err := os.Rename(path, aside); err != nil {
		return "", err
	}
	syncDir(filepath.Dir(path))
	return aside, nil
}

// removeOldLogs deletes logs that were set aside: nobody can tell which erased values they hold.
func (b *Book) removeOldLogs() error {
	entries, err := os.ReadDir(b.dir)
	for _, entry := range entries {
		if name := entry.Name(); strings.HasPrefix(name, fileName+"-") && strings.Contains(name, ".set-aside-") {
			err = errors.Join(err, os.Remove(filepath.Join(b.dir, name)))
		}
	}
	return err
}
