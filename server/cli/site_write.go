package cli

import (
	"encoding/json"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
)

// siteMark is the file that lists what a site consists of, so that the next one removes just that and nothing else.
const siteMark = "rimside-site.json"

type siteList struct {
	Version string   `json:"version"`
	Files   []string `json:"files"`
}

// writeSite writes the files into dir, an empty folder or an earlier site.
func writeSite(dir, version string, files map[string][]byte) error {
	earlier, err := earlierSite(dir)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return trouble("site.unmade", "why", err)
	}
	// Through os.Root nothing outside the folder can be touched, whatever a doctored list says.
	root, err := os.OpenRoot(dir)
	if err != nil {
		return err
	}
	defer root.Close()
	list := siteList{Version: version, Files: slices.Sorted(maps.Keys(files))}
	for _, name := range list.Files {
		if err := putFile(root, name, files[name]); err != nil {
			return err
		}
	}
	for _, name := range earlier.Files {
		if _, kept := files[name]; !kept {
			removeFile(root, name)
		}
	}
	text, err := json.Marshal(list)
	if err != nil {
		return err
	}
	return putFile(root, siteMark, text)
}

// earlierSite reads what an earlier site left in dir. A folder that holds something else is not ours to write into.
func earlierSite(dir string) (siteList, error) {
	var list siteList
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) || err == nil && len(entries) == 0 {
		return list, nil
	}
	if err != nil {
		return list, trouble("site.unread", "why", err)
	}
	text, err := os.ReadFile(filepath.Join(dir, siteMark))
	if err == nil {
		err = json.Unmarshal(text, &list)
	}
	if err != nil {
		return list, trouble("site.other", "dir", dir)
	}
	return list, nil
}

func putFile(root *os.Root, name string, content []byte) error {
	if err := root.MkdirAll(path.Dir(name), 0o755); err != nil {
		return err
	}
	return root.WriteFile(name, content, 0o644)
}

// removeFile removes a file of an earlier site, and its folders when they are empty then. One that is gone already, or
// does not want to go, harms nobody.
func removeFile(root *os.Root, name string) {
	for at := name; at != "." && at != "/"; at = path.Dir(at) {
		if root.Remove(at) != nil {
			return
		}
	}
}
