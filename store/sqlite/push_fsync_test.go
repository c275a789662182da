package sqlite_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"
	"unsafe"

	"modernc.org/libc"
	lib "modernc.org/sqlite/lib"

	"rimside/store/oplog"
)

type syncFunction = func(tls *libc.TLS, file uintptr, flags int32) int32

// countSyncs counts how often SQLite waits for the disk, in all files, until the test ends. It puts a function of ours
// into SQLite's tables of what a database file and a write-ahead log can do.
func countSyncs(t *testing.T) *atomic.Int64 {
	t.Helper()
	var count atomic.Int64
	for _, methods := range fileMethods(t) {
		usual := methods.FxSync
		call := *(*syncFunction)(unsafe.Pointer(&struct{ uintptr }{usual}))
		counting := func(tls *libc.TLS, file uintptr, flags int32) int32 {
			count.Add(1)
			return call(tls, file, flags)
		}
		methods.FxSync = *(*uintptr)(unsafe.Pointer(&counting))
		t.Cleanup(func() {
			methods.FxSync = usual
			_ = counting // alive until here
		})
	}
	return &count
}

// fileMethods finds the tables, by way of a database.
func fileMethods(t *testing.T) (tables []*lib.Tsqlite3_io_methods) {
	t.Helper()
	tls := libc.NewTLS()
	defer tls.Close()
	name, script := text(t, filepath.Join(t.TempDir(), "x.sqlite")), text(t, "PRAGMA journal_mode = WAL; CREATE TABLE x (y)")
	defer libc.Xfree(tls, name)
	defer libc.Xfree(tls, script)
	out := tls.Alloc(8)
	defer tls.Free(8)
	check := func(code int32) {
		if t.Helper(); code != lib.SQLITE_OK {
			t.Fatalf("SQLite's code %d", code)
		}
	}
	check(lib.Xsqlite3_open_v2(tls, name, out, lib.SQLITE_OPEN_READWRITE|lib.SQLITE_OPEN_CREATE, 0))
	db := *at[uintptr](out)
	defer lib.Xsqlite3_close(tls, db)
	check(lib.Xsqlite3_exec(tls, db, script, 0, 0, 0))
	for _, which := range []int32{lib.SQLITE_FCNTL_FILE_POINTER, lib.SQLITE_FCNTL_JOURNAL_POINTER} {
		check(lib.Xsqlite3_file_control(tls, db, 0, which, out))
		tables = append(tables, at[lib.Tsqlite3_io_methods](at[lib.Tsqlite3_file](*at[uintptr](out)).FpMethods))
	}
	return slices.Compact(tables) // one table for both, on some systems
}

func text(t *testing.T, value string) uintptr {
	t.Helper()
	address, err := libc.CString(value)
	if err != nil {
		t.Fatal(err)
	}
	return address
}

// at gives what lies at an address outside Go's sight.
func at[T any](address uintptr) *T { return *(**T)(unsafe.Pointer(&address)) }

// A push is one transaction and waits for the disk once, however many ops it brings; one that brings nothing new does
// not wait at all.
func TestOneSyncPerPush(t *testing.T) {
	syncs := countSyncs(t)
	book := open(t, t.TempDir())
	if syncs.Load() == 0 {
		t.Fatal("making a book waited for no disk: nothing is counted")
	}
	ops := someOps(1000)
	for start, size := 0, 1; start+size <= len(ops); start, size = start+size, size*2 {
		for _, want := range []int64{1, 0} {
			before := syncs.Load()
			push(t, book, ops[start:start+size]...)
			if got := syncs.Load() - before; got != want {
				t.Errorf("a push of %d ops waited for the disk %d times, want %d", size, got, want)
			}
		}
	}
}

// Nor does a push pay when the write-ahead log was just folded into the file.
func TestOneSyncAfterShortening(t *testing.T) {
	syncs := countSyncs(t)
	dir := t.TempDir()
	book := open(t, dir)
	push(t, book, someOps(500)...)
	book.Shorten(t)
	log, err := os.Stat(filepath.Join(dir, "rimside.sqlite-wal"))
	if err != nil {
		t.Fatal(err)
	}
	before := syncs.Load()
	push(t, book, op(idA, rec, "tyre", `{}`))
	if got := syncs.Load() - before; got != 1 {
		t.Errorf("the push waited for the disk %d times, want once", got)
	}
	if now, err := os.Stat(filepath.Join(dir, "rimside.sqlite-wal")); err != nil || now.Size() > log.Size() {
		t.Errorf("the log grew from %d to %d bytes instead of beginning anew (%v)", log.Size(), now.Size(), err)
	}
}

// The log is folded in by itself while phones push.
func TestLogStaysShort(t *testing.T) {
	dir := t.TempDir()
	book := open(t, dir)
	for range 48 {
		push(t, book, op(oplog.NewID(), rec, "note", `{"text":"`+strings.Repeat("x", 1<<20)+`"}`))
	}
	for deadline := time.Now().Add(20 * time.Second); ; time.Sleep(10 * time.Millisecond) {
		info, err := os.Stat(filepath.Join(dir, "rimside.sqlite-wal"))
		if err != nil {
			t.Fatal(err)
		}
		if info.Size() <= 24<<20 {
			return
		}
		if time.Now().After(deadline) {
			t.Fatalf("48 MiB were pushed, and the log has %d bytes", info.Size())
		}
		push(t, book, op(oplog.NewID(), rec, "note", `{}`))
	}
}
