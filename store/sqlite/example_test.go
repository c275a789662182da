package sqlite_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"

	"rimside/store/blob"
	"rimside/store/sqlite"
)

// A backup restored elsewhere is the same book at the same server, but another log: phones that meet it compare all they have.
func ExampleBook_Backup() {
	ctx := context.Background()
	dir, err := os.MkdirTemp("", "rimside-example-")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	options := sqlite.Options{Blobs: blob.In}
	book, err := sqlite.Open(filepath.Join(dir, "van"), options)
	if err != nil {
		panic(err)
	}
	defer book.Close()
	op := `{"id":"a0000000000000000000000000000000","at":1780000000000,"kind":"tyre","rec":"70000000000000000000000000000000","set":{"measured_mm":41.5}}`
	if _, err := book.Push(ctx, "b0000000000000000000000000000000", "", []json.RawMessage{json.RawMessage(op)}, ""); err != nil {
		panic(err)
	}
	file := filepath.Join(dir, "van.backup")
	if err := book.Backup(ctx, file); err != nil {
		panic(err)
	}
	if err := sqlite.Restore(ctx, file, filepath.Join(dir, "second van"), options); err != nil {
		panic(err)
	}
	sibling, err := sqlite.Open(filepath.Join(dir, "second van"), options)
	if err != nil {
		panic(err)
	}
	defer sibling.Close()
	ours, _ := book.About(ctx)
	theirs, _ := sibling.About(ctx)
	fmt.Println("ops:", theirs.Count)
	fmt.Println("same book:", ours.Book == theirs.Book, "same server:", ours.Server == theirs.Server, "same log:", ours.Log == theirs.Log)
	// Output:
	// ops: 1
	// same book: true same server: true same log: false
}
