package sqlite

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"io"
)

// Blobs keeps the files that ops name, each under the SHA-256 of its content, as 64 lowercase hex digits.
type Blobs interface {
	Put(hash string, content io.Reader) error
	Get(hash string) (io.ReadSeekCloser, error)
	Has(hash string) (bool, error)
	Part(hash string) (have int64, whole bool, err error)
	AddPart(hash string, from, size int64, content io.Reader) (have int64, whole bool, err error)
	Delete(hash string) error // of one that is not there, too
	List() ([]string, error)
	Damaged(hash string) (bool, error)        // whether a file is not what its name says; one that is not here is not
	SetAside(hash string) error               // takes a damaged file away under another name, until it comes again or is deleted
	VerifyAll() (damaged []string, err error) // the files that are not what their name says
}

// Blobs is where this book's files are. What comes from outside goes through PutBlob instead.
func (b *Book) Blobs() Blobs { return b.blobs }

// PutBlob keeps a file, unless it was erased: then the error is ErrErased.
func (b *Book) PutBlob(ctx context.Context, hash string, content io.Reader) error {
	if erased, err := b.BlobErased(ctx, hash); err != nil || erased {
		return errors.Join(err, refuseErased(erased))
	}
	if err := b.blobs.Put(hash, content); err != nil {
		return err
	}
	// Its record may have been erased while the file arrived.
	erased, err := b.BlobErased(ctx, hash)
	if err == nil && !erased {
		return nil
	}
	return errors.Join(err, refuseErased(erased), b.blobs.Delete(hash))
}

func refuseErased(erased bool) error {
	if erased {
		return ErrErased
	}
	return nil
}

// BlobErased tells whether a file was erased and no live op names it.
func (b *Book) BlobErased(ctx context.Context, hash string) (erased bool, err error) {
	raw, err := hex.DecodeString(hash)
	if err != nil {
		return false, nil // no name of a file: the store says so
	}
	err = b.read.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM dropped_blobs WHERE mark = ?) AND NOT EXISTS (SELECT 1 FROM named_blobs WHERE hash = ?)`,
		markOf(raw), raw).Scan(&erased)
	return erased, err
}

// markOf is what is remembered of a dropped file: not even its hash, as that could be compared with a known picture's.
func markOf(hash []byte) []byte {
	mark := sha256.Sum256([]byte(hex.EncodeToString(hash)))
	return mark[:]
}

// nameBlobs remembers which files a live op names.
func nameBlobs(tx *sql.Tx, seq int64, hashes []string) error {
	for _, hash := range hashes {
		if _, err := tx.Exec(`INSERT OR IGNORE INTO named_blobs (hash, seq) VALUES (unhex(?), ?)`, hash, seq); err != nil {
			return err
		}
	}
	return nil
}

// dropBlob lets a file go when no live op names it.
func (e eraser) dropBlob(hash []byte) error {
	tx := e.tx
	var named bool
	if err := tx.QueryRow(`SELECT EXISTS (SELECT 1 FROM named_blobs WHERE hash = ?)`, hash).Scan(&named); err != nil || named {
		return err
	}
	if _, err := tx.Exec(`INSERT OR IGNORE INTO dropped_blobs (mark) VALUES (?)`, markOf(hash)); err != nil {
		return err
	}
	if e.format >= sumsSince {
		if err := seal(tx, "dropped_blobs", "mark = ?", markOf(hash)); err != nil {
			return err
		}
	}
	_, err := tx.Exec(`INSERT OR IGNORE INTO leaving_blobs (hash) VALUES (?)`, hash)
	return err
}
