package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Code moves on; a change that no longer fits it would break off the whole run.
func TestEveryChangeFitsTheCode(t *testing.T) {
	for _, m := range all {
		text, err := os.ReadFile(filepath.Join("..", "..", filepath.FromSlash(m.file)))
		if err != nil {
			t.Errorf("%s: %v", m.name, err)
			continue
		}
		if n := strings.Count(string(text), m.from); n != 1 {
			t.Errorf("%s: %q stands %d times in %s", m.name, m.from, n, m.file)
		}
	}
}
