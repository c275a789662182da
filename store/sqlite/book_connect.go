package sqlite

import (
	"database/sql"
	"errors"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const fileName = "rimside.sqlite"

// The order matters: with no timeout set first, the change to WAL would fail while another program has the file open.
// Nothing checkpoints by itself, so that a push costs one fsync and no more; keepShort does it beside them.
var pragmas = []string{"busy_timeout(5000)", "journal_mode(WAL)", "synchronous(FULL)", "foreign_keys(1)", "secure_delete(1)", "wal_autocheckpoint(0)", "journal_size_limit(8388608)"}

// openWriter gives the one connection that writes. Transactions take the write lock when they begin: one that read first
// and then had to wait would fail.
func openWriter(path string) (*sql.DB, error) {
	more := append(slices.Clone(pragmas), "cache_size(-16384)") // KiB: ids come in no order, so every push touches many pages
	return connect(path, 1, url.Values{"_pragma": more, "_txlock": {"immediate"}})
}

// openReaders gives connections that cannot change anything.
func openReaders(path string) (*sql.DB, error) {
	return connect(path, 4, url.Values{"_pragma": pragmas, "_query_only": {"1"}})
}

// openCopy opens a copy that no server uses: without WAL, so that it stays one file.
func openCopy(path string) (*sql.DB, error) {
	own := []string{"busy_timeout(5000)", "journal_mode(DELETE)", "synchronous(FULL)", "foreign_keys(1)", "secure_delete(1)"}
	return connect(path, 1, url.Values{"_pragma": own, "_txlock": {"immediate"}, "mode": {"rw"}})
}

func connect(path string, connections int, settings url.Values) (*sql.DB, error) {
	name, err := fileURL(path)
	if err != nil {
		return nil, err
	}
	db, err := sql.Open("sqlite", name+"?"+settings.Encode())
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(connections)
	db.SetMaxIdleConns(connections)
	return db, nil
}

// fileURL writes a path as SQLite wants it, so that a ? or a % in a folder's name is not taken for more than that.
func fileURL(path string) (string, error) {
	absolute, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	slashed := filepath.ToSlash(absolute)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive's letter
	}
	return (&url.URL{Scheme: "file", Path: slashed}).String(), nil
}

// makePrivate makes sure that a file is there and that only its owner reads it. SQLite gives the files beside a database
// the same permissions.
func makePrivate(path string) error {
	file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return err
	}
	return errors.Join(file.Chmod(0o600), file.Close())
}
