package blob

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Put keeps a file under the name that its sender gives it, after it was checked: size, type, hash. It is on the disk
// when Put returns. A file that is here already is not written again.
func (s *Store) Put(hash string, content io.Reader) error {
	if !isHash(hash) {
		return ErrBadName
	}
	body, err := io.ReadAll(io.LimitReader(content, MaxBytes+1))
	if err != nil {
		return err
	}
	if err := check(hash, body); err != nil {
		return err
	}
	if s.Check(hash) == nil {
		return nil
	}
	return s.write(hash, body)
}

func check(hash string, body []byte) error {
	sum := sha256.Sum256(body)
	switch {
	case len(body) > MaxBytes:
		return ErrTooLarge
	case TypeOf(body) == "":
		return ErrWrongType
	case hex.EncodeToString(sum[:]) != hash:
		return ErrWrongHash
	}
	return nil
}

// TypeOf tells a photo's media type by its first bytes, or "".
func TypeOf(body []byte) string {
	switch {
	case bytes.HasPrefix(body, []byte("\xff\xd8\xff")):
		return "image/jpeg"
	case bytes.HasPrefix(body, []byte("\x89PNG\r\n\x1a\n")):
		return "image/png"
	case len(body) >= 12 && string(body[:4]) == "RIFF" && string(body[8:12]) == "WEBP":
		return "image/webp"
	}
	return ""
}

// write makes the file under another name first, so that what has the name is always whole.
func (s *Store) write(hash string, body []byte) (err error) {
	path := s.path(hash)
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	file, err := os.CreateTemp(filepath.Dir(path), unfinished+hash+"-*") // readable by its owner only
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(file.Name())
		}
	}()
	_, err = file.Write(body)
	if err := errors.Join(err, file.Sync(), file.Close()); err != nil {
		return err
	}
	if err := os.Rename(file.Name(), path); err != nil {
		return err
	}
	if err := os.Remove(filepath.Join(filepath.Dir(path), unfinished+hash+"-damaged")); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	syncDir(filepath.Dir(path))
	return nil
}

// unfinished is how the names of files begin that were not completed; the hash follows.
const unfinished = ".unfinished-"

// syncDir waits until the names in a folder are on the disk. Not every system can; those keep names safe by themselves.
func syncDir(dir string) {
	if folder, err := os.Open(dir); err == nil {
		_ = folder.Sync()
		_ = folder.Close()
	}
}
