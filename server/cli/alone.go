package cli

import (
	"os"
	"path/filepath"
)

// alone makes sure that no other server serves a folder: two would each believe that they hold the only log.
func alone(dir string) (release func() error, err error) {
	file, err := os.OpenFile(filepath.Join(dir, "serving.lock"), os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, trouble("data.unlocked", "why", err)
	}
	if err := lock(file); err != nil {
		_ = file.Close()
		return nil, trouble("data.served", "dir", dir)
	}
	return file.Close, nil
}
