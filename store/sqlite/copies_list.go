package sqlite

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// copyFile is a copy in the folder copies.
type copyFile struct {
	path, name string
	number     int
	when       string
}

// listCopies lists all copies.
func (b *Book) listCopies() (list []copyFile, err error) {
	entries, err := os.ReadDir(filepath.Join(b.dir, "copies"))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	for _, entry := range entries {
		if name, isCopy := strings.CutSuffix(entry.Name(), ".sqlite"); isCopy && !strings.HasPrefix(name, ".") {
			list = append(list, copyFile{path: filepath.Join(b.dir, "copies", entry.Name()), name: name})
		}
	}
	return list, err
}

// listRhythm lists the copies of one kind, the oldest first.
func (b *Book) listRhythm(every rhythm) (list []copyFile, err error) {
	all, err := b.listCopies()
	for _, each := range all {
		number, when, found := strings.Cut(strings.TrimPrefix(each.name, every.name+"-"), "-")
		if !found || !strings.HasPrefix(each.name, every.name+"-") {
			continue
		}
		if _, err := fmt.Sscanf(number, "%d", &each.number); err == nil {
			each.when = when
			list = append(list, each)
		}
	}
	slices.SortFunc(list, func(a, b copyFile) int { return a.number - b.number })
	return list, err
}

// removeUnfinished deletes from a folder what a crash left behind. A copy that another program is making at this moment
// fails, and is made again a minute later.
func removeUnfinished(dir string, olderThan time.Duration) error {
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	for _, entry := range entries {
		info, gone := entry.Info()
		if gone != nil || !strings.HasPrefix(entry.Name(), unfinished) || olderThan > 0 && time.Since(info.ModTime()) < olderThan {
			continue
		}
		err = errors.Join(err, os.RemoveAll(filepath.Join(dir, entry.Name())))
	}
	return err
}

// removeUnfinished does so wherever this book leaves such things.
func (b *Book) removeUnfinished(olderThan time.Duration) error {
	return errors.Join(removeUnfinished(b.dir, olderThan), removeUnfinished(filepath.Join(b.dir, "copies"), olderThan))
}
