package blob

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"rimside/store/fault"
)

// partOf is where a photo lies while it comes in parts.
func (s *Store) partOf(hash string) string {
	return filepath.Join(filepath.Dir(s.path(hash)), unfinished+hash+"-part")
}

// Part tells how many bytes of a photo are here, and whether it is whole.
func (s *Store) Part(hash string) (have int64, whole bool, err error) {
	if !isHash(hash) {
		return 0, false, ErrBadName
	}
	if info, err := os.Stat(s.path(hash)); err == nil {
		return info.Size(), true, nil
	}
	info, err := os.Stat(s.partOf(hash))
	if errors.Is(err, fs.ErrNotExist) {
		return 0, false, nil
	}
	if err != nil {
		return 0, false, err
	}
	return info.Size(), false, nil
}

// AddPart writes bytes of a photo from a place on, and keeps it once there are as many as size says: then it is checked as by
// Put, and thrown away when it is not what its name says. A part that would leave a gap changes nothing. When the bytes break
// off, those that came stay.
func (s *Store) AddPart(hash string, from, size int64, content io.Reader) (have int64, whole bool, err error) {
	have, whole, err = s.Part(hash)
	switch {
	case err != nil || whole || from > have:
		return have, whole, err
	case size > MaxBytes || size < 1 || from > size:
		return have, false, ErrTooLarge
	}
	if have, err = s.writePart(hash, from, size, content); err != nil || have < size {
		return have, false, err
	}
	return s.finishPart(hash)
}

func (s *Store) writePart(hash string, from, size int64, content io.Reader) (have int64, err error) {
	path := s.partOf(hash)
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return 0, err
	}
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE, 0o600)
	if err != nil {
		return 0, err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	if err := file.Truncate(from); err != nil {
		return 0, err
	}
	came, err := io.Copy(io.NewOffsetWriter(file, from), io.LimitReader(content, size-from))
	if failed := (*fs.PathError)(nil); errors.As(err, &failed) {
		return 0, err // ours; a reader's error means only that the link broke
	}
	return from + came, nil
}

// finishPart puts a photo in its place. Put checks it and waits for the disk.
func (s *Store) finishPart(hash string) (have int64, whole bool, err error) {
	path := s.partOf(hash)
	file, err := os.Open(path)
	if err != nil {
		return 0, false, err
	}
	kept := s.Put(hash, file)
	err = file.Close()
	if kept == nil || fault.Of(kept) != nil { // otherwise it is no fault of the photo, and what came is still of use
		err = errors.Join(err, os.Remove(path))
	}
	if err := errors.Join(kept, err); err != nil {
		return 0, false, err
	}
	return s.Part(hash)
}
