// Package blob keeps files by what they hold: each lies in the folder blobs of a data folder, under the SHA-256 of its
// content. It takes photos only. Which files are needed, and which were erased, the book's database knows.
package blob

import (
	"path/filepath"

	"rimside/store/sqlite"
)

// MaxBytes is the size that a file may have.
const MaxBytes = 4 << 20

// Store is the files of one data folder.
type Store struct{ dir string }

// Open gives the store in a data folder. The folder blobs is made when the first file comes.
func Open(dir string) *Store { return &Store{dir: filepath.Join(dir, "blobs")} }

// In is Open, as sqlite.Options wants it.
func In(dir string) sqlite.Blobs { return Open(dir) }

// path puts the files into folders by their first two digits, as some systems are slow with thousands in one.
func (s *Store) path(hash string) string { return filepath.Join(s.dir, hash[:2], hash) }

// isHash tells whether a text is a file's name here: 64 lowercase hex digits. Nothing else ever becomes part of a path.
func isHash(text string) bool {
	if len(text) != 64 {
		return false
	}
	for _, c := range []byte(text) {
		if (c < '0' || c > '9') && (c < 'a' || c > 'f') {
			return false
		}
	}
	return true
}
