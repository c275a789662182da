package main

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// writeSums lists what is in the folder, in the form that sha256sum -c reads.
func writeSums(folder string) error {
	entries, err := os.ReadDir(folder) // in the order of their names
	if err != nil {
		return err
	}
	var list strings.Builder
	for _, entry := range entries {
		content, err := os.ReadFile(filepath.Join(folder, entry.Name()))
		if err != nil {
			return err
		}
		fmt.Fprintf(&list, "%x  %s\n", sha256.Sum256(content), entry.Name())
	}
	return os.WriteFile(filepath.Join(folder, "SHA256SUMS"), []byte(list.String()), 0o644)
}
