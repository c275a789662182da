package cli

import (
	"fmt"
	"os"
	"path/filepath"
)

// alone makes sure that no other server serves a folder: two would each believe that they hold the only log.
func alone(dir string) (release func() error, err error) {
	file, err := os.OpenFile(filepath.Join(dir, "serving.lock"), os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, fmt.Errorf("the data folder cannot be locked: %w", err)
	}
	if err := lock(file); err != nil {
		_ = file.Close()
		return nil, fmt.Errorf("another Rimside serves %s already: stop that one, or give this one a folder of its own with -data DIR", dir)
	}
	return file.Close, nil
}
