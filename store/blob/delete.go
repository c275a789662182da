package blob

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Delete removes a file, and what a crash left of it while it arrived. One that is not here is as good as removed.
func (s *Store) Delete(hash string) error {
	if !isHash(hash) {
		return ErrBadName
	}
	dir := filepath.Dir(s.path(hash))
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	for _, entry := range entries {
		if name := entry.Name(); name == hash || strings.HasPrefix(name, unfinished+hash) {
			if failed := os.Remove(filepath.Join(dir, name)); !errors.Is(failed, fs.ErrNotExist) {
				err = errors.Join(err, failed)
			}
		}
	}
	syncDir(dir)
	return err
}

// SetAside takes a damaged file away under a name that nothing is found by. It goes when the file comes anew or is deleted.
func (s *Store) SetAside(hash string) error {
	if !isHash(hash) {
		return ErrBadName
	}
	path := s.path(hash)
	if err := os.Rename(path, filepath.Join(filepath.Dir(path), unfinished+hash+"-damaged")); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	syncDir(filepath.Dir(path))
	return nil
}
