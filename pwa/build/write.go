package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
)

const keepFile = ".keep"

// mayReplace refuses a folder that holds anything but an earlier build, since what is not of this build is removed.
func mayReplace(out string) error {
	entries, err := os.ReadDir(out)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	for _, entry := range entries {
		if entry.Name() == "version.json" {
			return nil
		}
	}
	if len(entries) > 1 || len(entries) == 1 && entries[0].Name() != keepFile {
		return fmt.Errorf("%s holds files that are not an earlier build; choose an empty folder", out)
	}
	return nil
}

// writeTree makes the folder out hold exactly the files, and .keep where it stood. version.json comes first, as the
// sign that the folder is ours even if the build is interrupted.
func writeTree(out string, files tree) error {
	order := files.paths()
	slices.SortStableFunc(order, func(a, b string) int { return rank(a) - rank(b) })
	for _, name := range order {
		if err := writeFile(filepath.Join(out, filepath.FromSlash(name)), files[name]); err != nil {
			return err
		}
	}
	return removeOthers(out, files)
}

func rank(name string) int {
	if name == "version.json" {
		return 0
	}
	return 1
}

// writeFile writes beside the target and renames, so that nobody ever reads half a file.
func writeFile(target string, content []byte) error {
	if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
		return err
	}
	temp, err := os.CreateTemp(filepath.Dir(target), ".writing-*")
	if err != nil {
		return err
	}
	defer os.Remove(temp.Name())
	if _, err := temp.Write(content); err != nil {
		temp.Close()
		return err
	}
	if err := temp.Close(); err != nil {
		return err
	}
	if err := os.Chmod(temp.Name(), 0o644); err != nil {
		return err
	}
	return os.Rename(temp.Name(), target)
}

// removeOthers deletes what earlier builds left, then the folders that are empty.
func removeOthers(out string, files tree) error {
	wanted := map[string]bool{".": true, keepFile: true}
	for name := range files {
		for at := name; at != "."; at = path.Dir(at) {
			wanted[at] = true
		}
	}
	var stale []string
	err := fs.WalkDir(os.DirFS(out), ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || wanted[name] {
			return err
		}
		stale = append(stale, name)
		if entry.IsDir() {
			return fs.SkipDir
		}
		return nil
	})
	if err != nil {
		return err
	}
	for _, name := range stale {
		if err := os.RemoveAll(filepath.Join(out, filepath.FromSlash(name))); err != nil {
			return err
		}
	}
	return nil
}
