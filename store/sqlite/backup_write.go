package sqlite

import (
	"archive/tar"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
)

// The members of a backup: the database, the files by hash, and whatever lies in the folder trust.
const (
	blobMembers  = "blobs/"
	trustMembers = "trust/"
)

// Backup writes everything to one tar file, readable by its owner only. It may replace an older one, which stays until
// the new one is whole. Phones can push meanwhile.
func (b *Book) Backup(ctx context.Context, to string) (err error) {
	file, err := os.CreateTemp(filepath.Dir(to), ".rimside-backup-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, file.Close(), os.Remove(file.Name()))
		}
	}()
	out := &archive{tar: tar.NewWriter(file), book: b}
	for _, add := range []func(context.Context) error{out.addDatabase, out.addBlobs, out.addTrust} {
		if err := add(ctx); err != nil {
			return err
		}
	}
	if err := errors.Join(out.tar.Close(), file.Sync()); err != nil {
		return err
	}
	if err := file.Close(); err != nil {
		return err
	}
	return renameInto(file.Name(), to)
}

// archive is a backup being written.
type archive struct {
	tar  *tar.Writer
	book *Book
}

func (a *archive) addDatabase(ctx context.Context) error {
	file, err := a.book.openSnapshot(ctx)
	if err != nil {
		return err
	}
	return errors.Join(a.add(fileName, file), file.Close(), os.Remove(file.Name()))
}

// openSnapshot gives a copy of the database; clearing the traces of an erase must not take it away before it is open.
func (b *Book) openSnapshot(ctx context.Context) (*os.File, error) {
	b.tidying.Lock()
	defer b.tidying.Unlock()
	dir, err := b.copiesDir()
	if err != nil {
		return nil, err
	}
	path, err := b.soundSnapshot(ctx, dir)
	if err != nil {
		return nil, err
	}
	return os.Open(path)
}

// addBlobs leaves out a file that is damaged: a restore would refuse it.
func (a *archive) addBlobs(ctx context.Context) error {
	list, err := a.book.blobs.List()
	if err != nil {
		return err
	}
	for _, hash := range list {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := a.addBlob(hash); err != nil {
			return err
		}
	}
	return nil
}

func (a *archive) addBlob(hash string) error {
	file, err := a.book.blobs.Get(hash)
	if err != nil {
		if has, _ := a.book.blobs.Has(hash); !has {
			return nil // erased since it was listed
		}
		return err
	}
	defer file.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, file); err != nil {
		return err
	}
	if hex.EncodeToString(sum.Sum(nil)) != hash {
		a.book.log.Warn("a damaged photo was left out of the backup", "photo", hash)
		return nil
	}
	return a.add(blobMembers+hash, file)
}

// addTrust carries along what other parts of the server keep beside the book.
func (a *archive) addTrust(ctx context.Context) error {
	root := filepath.Join(a.book.dir, "trust")
	return filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if errors.Is(err, fs.ErrNotExist) && name == root {
			return nil
		}
		if err != nil || !entry.Type().IsRegular() {
			return err
		}
		within, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		file, err := os.Open(name)
		if err != nil {
			return err
		}
		return errors.Join(a.add(path.Join(trustMembers, filepath.ToSlash(within)), file), file.Close(), ctx.Err())
	})
}

func (a *archive) add(name string, content io.ReadSeeker) error {
	size, err := content.Seek(0, io.SeekEnd)
	if err != nil {
		return err
	}
	if _, err := content.Seek(0, io.SeekStart); err != nil {
		return err
	}
	header := tar.Header{Typeflag: tar.TypeReg, Name: name, Size: size, Mode: 0o600, ModTime: a.book.now()}
	if err := a.tar.WriteHeader(&header); err != nil {
		return err
	}
	_, err = io.Copy(a.tar, content)
	return err
}
