package pwa

import (
	"encoding/json"
	"io/fs"
)

// Version returns the version of the app built into dist, which is a hash of its files, and "" when none is built.
func Version(dist fs.FS) string {
	text, err := fs.ReadFile(dist, "version.json")
	if err != nil {
		return ""
	}
	var stated struct {
		Version string `json:"version"`
	}
	if err := json.Unmarshal(text, &stated); err != nil {
		return ""
	}
	return stated.Version
}
