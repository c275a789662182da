package blob

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// Get opens a file. The caller closes it.
func (s *Store) Get(hash string) (io.ReadSeekCloser, error) {
	if !isHash(hash) {
		return nil, ErrBadName
	}
	file, err := os.Open(s.path(hash))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, ErrNotFound
	}
	if err != nil {
		return nil, err
	}
	return file, nil
}

// Has tells whether a file is here.
func (s *Store) Has(hash string) (bool, error) {
	if !isHash(hash) {
		return false, nil
	}
	_, err := os.Stat(s.path(hash))
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	return err == nil, err
}

// Missing lists which of the files are not here. What is no name of a file is left out: it can never come.
func (s *Store) Missing(hashes []string) ([]string, error) {
	missing := []string{}
	for _, hash := range hashes {
		has, err := s.Has(hash)
		if err != nil {
			return nil, err
		}
		if !has && isHash(hash) {
			missing = append(missing, hash)
		}
	}
	return missing, nil
}

// List names all files, sorted.
func (s *Store) List() (hashes []string, err error) {
	err = filepath.WalkDir(s.dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			if errors.Is(err, fs.ErrNotExist) {
				return nil // no file came yet, or this one just went
			}
			return err
		}
		if name := entry.Name(); isHash(name) && path == s.path(name) {
			hashes = append(hashes, name)
		}
		return nil
	})
	slices.Sort(hashes)
	return hashes, err
}

// Check reads a file and tells whether it is what its name says.
func (s *Store) Check(hash string) error {
	file, err := s.Get(hash)
	if err != nil {
		return err
	}
	defer file.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, file); err != nil {
		return err
	}
	if hex.EncodeToString(sum.Sum(nil)) != hash {
		return ErrWrongHash
	}
	return nil
}

// Damaged tells whether a file is here and is not what its name says.
func (s *Store) Damaged(hash string) (bool, error) {
	switch err := s.Check(hash); {
	case errors.Is(err, ErrWrongHash):
		return true, nil
	case errors.Is(err, ErrNotFound): // it may have been erased meanwhile
		return false, nil
	default:
		return false, err
	}
}

// VerifyAll checks every file and lists those that are not what their name says.
func (s *Store) VerifyAll() (damaged []string, err error) {
	all, err := s.List()
	if err != nil {
		return nil, err
	}
	for _, hash := range all {
		is, err := s.Damaged(hash)
		if err != nil {
			return damaged, err
		}
		if is {
			damaged = append(damaged, hash)
		}
	}
	return damaged, nil
}
