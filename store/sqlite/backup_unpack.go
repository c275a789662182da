package sqlite

import (
	"archive/tar"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"rimside/store/fault"
)

// maxTrustFile bounds a member of the folder trust: keys and certificates are small.
const maxTrustFile = 1 << 20

// unpack writes the members of a backup into a folder, and takes nothing that it does not know.
func unpack(ctx context.Context, from *tar.Reader, stage string, blobs Blobs) error {
	for members := 0; ; members++ {
		header, err := from.Next()
		switch {
		case errors.Is(err, io.EOF) && members > 0:
			return ctx.Err()
		case errors.Is(err, io.ErrUnexpectedEOF) && members > 0:
			return errCutBackup
		case err != nil:
			return errNotBackup
		}
		err = errors.Join(ctx.Err(), unpackMember(header, from, stage, blobs))
		if errors.Is(err, io.ErrUnexpectedEOF) {
			return errCutBackup
		}
		if err != nil {
			return err
		}
	}
}

func unpackMember(header *tar.Header, content io.Reader, stage string, blobs Blobs) error {
	hash, isBlob := strings.CutPrefix(header.Name, blobMembers)
	within, isTrust := strings.CutPrefix(header.Name, trustMembers)
	switch {
	case header.Typeflag != tar.TypeReg:
		return errNotBackup
	case header.Name == fileName:
		return writeFile(filepath.Join(stage, fileName), content)
	case isBlob:
		if err := blobs.Put(hash, content); err != nil {
			return fmt.Errorf("the photo %s in this backup cannot be restored: %w", hash, err)
		}
		return nil
	case isTrust && filepath.IsLocal(filepath.FromSlash(within)) && header.Size <= maxTrustFile:
		return writeFile(filepath.Join(stage, "trust", filepath.FromSlash(within)), content)
	}
	return fault.New(fault.Invalid, "newer_format", fmt.Sprintf("This backup holds %q, which this Rimside does not know. Restore it with a newer one.", header.Name))
}

func writeFile(path string, content io.Reader) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return errNotBackup // one name twice
	}
	if err != nil {
		return err
	}
	_, err = io.Copy(file, content)
	return errors.Join(err, file.Sync(), file.Close())
}
