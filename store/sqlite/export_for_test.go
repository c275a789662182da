package sqlite

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"path/filepath"
	"testing"
	"time"

	"rimside/store/oplog"
)

// PushWithoutTidying is a push that ends, as by a crash, right after its commit.
func (b *Book) PushWithoutTidying(ctx context.Context, book string, ops []json.RawMessage) error {
	_, err := b.store(ctx, book, parseAll(ops), "")
	return err
}

// Exec changes the database behind the book's back.
func (b *Book) Exec(t testing.TB, query string, args ...any) {
	t.Helper()
	if _, err := b.write.ExecContext(t.Context(), query, args...); err != nil {
		t.Fatal(err)
	}
}

// Value reads one value, by a connection that writes or by one that reads.
func (b *Book) Value(t testing.TB, writes bool, query string, args ...any) (value string) {
	t.Helper()
	db := b.read
	if writes {
		db = b.write
	}
	if err := db.QueryRowContext(t.Context(), query, args...).Scan(&value); err != nil {
		t.Fatal(err)
	}
	return value
}

// UseMigrations lets a test bring migrations of a later program.
func UseMigrations(t *testing.T, files fs.FS) {
	usual := migrations
	migrations = files
	t.Cleanup(func() { migrations = usual })
}

// MigrationNames are this program's.
func MigrationNames() []string { return migrationNames() }

// Reading begins to read, as somebody slow would, until done is called.
func (b *Book) Reading(t testing.TB) (done func()) {
	t.Helper()
	tx, err := b.read.BeginTx(t.Context(), nil)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := readBookRow(t.Context(), tx); err != nil {
		t.Fatal(err)
	}
	return func() { _ = tx.Rollback() }
}

// BeginCopy makes a copy that has no name yet.
func (b *Book) BeginCopy(t testing.TB) (path string) {
	t.Helper()
	dir, err := b.copiesDir()
	if err != nil {
		t.Fatal(err)
	}
	if path, err = b.snapshot(t.Context(), dir); err != nil {
		t.Fatal(err)
	}
	return path
}

// EndCopy gives it its name, if it may have one.
func (b *Book) EndCopy(t testing.TB, path, name string) error {
	return b.nameCopy(t.Context(), path, filepath.Join(b.dir, "copies", name))
}

// ImportLines reads an exported file as Import does, and gives its ops by their lines.
func ImportLines(from io.Reader) (map[int]string, error) {
	lines := lineReader{from: bufio.NewReaderSize(from, 16)}
	found := map[int]string{}
	_, err := readHeader(&lines)
	for more := err == nil; more; {
		var raws []json.RawMessage
		var numbers []int
		if raws, numbers, more, err = readBatch(&lines, &Pushed{}); len(raws) > oplog.MaxPush {
			return nil, errors.New("too many ops in one batch")
		}
		for i, number := range numbers {
			found[number] = string(raws[i])
		}
	}
	return found, err
}

// Shorten does at once what is otherwise done beside the pushes.
func (b *Book) Shorten(t testing.TB) {
	t.Helper()
	if err := b.shorten(t.Context()); err != nil {
		t.Fatal(err)
	}
}

// Settle waits for what runs beside the pushes.
func (b *Book) Settle() { b.background.Wait() }

// ForgetHealth makes the next answer a new one.
func (b *Book) ForgetHealth() {
	b.health.mu.Lock()
	defer b.health.mu.Unlock()
	b.health.at = time.Time{}
}
