// Package contract writes what Go and TypeScript agree on as TypeScript: what each calculation takes and gives, the bounds and
// choices of every field, what records may hold, and the few numbers that screens show beside answers. The tables of
// calc/registry and store/record are the one home of all that; what is written here is never committed.
package contract

import (
	"bytes"
	"os"
	"path/filepath"

	"rimside/calc/registry"
	"rimside/store/record"
)

// Folder is where the files go, below a module's root.
const Folder = "pwa/src/contract"

// Files makes the files of the tables that this program was built with, by name.
func Files() map[string][]byte {
	files := FieldTables(registry.Contracts())
	files["contract.ts"] = Calculations(registry.Contracts(), registry.Constants())
	files["kinds.ts"] = Records(record.Schema(), record.Kinds())
	files["sources.ts"] = Sources(registry.Names(), registry.Sources)
	return files
}

// Write puts the files under a module's root. A file that holds the right text already is left alone; any other is replaced at
// once, so that nobody reads half of one.
func Write(root string) error {
	folder := filepath.Join(root, filepath.FromSlash(Folder))
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for name, content := range Files() {
		target := filepath.Join(folder, name)
		if before, err := os.ReadFile(target); err == nil && bytes.Equal(before, content) {
			continue
		}
		if err := replace(target, content); err != nil {
			return err
		}
	}
	return nil
}

func replace(target string, content []byte) error {
	temp, err := os.CreateTemp(filepath.Dir(target), ".writing-*")
	if err != nil {
		return err
	}
	defer os.Remove(temp.Name())
	_, err = temp.Write(content)
	if closed := temp.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Chmod(temp.Name(), 0o644)
	}
	if err != nil {
		return err
	}
	return os.Rename(temp.Name(), target)
}
