package sqlite

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// Exists tells whether a folder holds a book.
func Exists(dir string) (bool, error) {
	_, err := os.Stat(filepath.Join(dir, fileName))
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	return err == nil, err
}
