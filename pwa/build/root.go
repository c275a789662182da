package main

import (
	"bufio"
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

const modulePath = "rimside"

// moduleRoot walks up from dir to the folder whose go.mod declares this module.
func moduleRoot(dir string) (string, error) {
	for at := dir; ; at = filepath.Dir(at) {
		if declaresModule(filepath.Join(at, "go.mod")) {
			return at, nil
		}
		if at == filepath.Dir(at) {
			return "", fmt.Errorf("no go.mod of module %s above %s; run this inside a checkout", modulePath, dir)
		}
	}
}

func declaresModule(file string) bool {
	text, err := os.ReadFile(file)
	if err != nil {
		return false
	}
	lines := bufio.NewScanner(bytes.NewReader(text))
	for lines.Scan() {
		if name, found := strings.CutPrefix(strings.TrimSpace(lines.Text()), "module "); found {
			return strings.TrimSpace(name) == modulePath
		}
	}
	return false
}
