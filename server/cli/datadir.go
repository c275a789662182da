package cli

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
)

// userDataDir is where this system keeps a program's data for the user.
func userDataDir(env Lookup) (string, error) {
	return dataDirOn(runtime.GOOS, env)
}

func dataDirOn(system string, env Lookup) (string, error) {
	value := func(name string) string { text, _ := env(name); return text }
	switch system {
	case "windows":
		if local := value("LocalAppData"); local != "" {
			return filepath.Join(local, "Rimside"), nil
		}
	case "darwin":
		if home := value("HOME"); home != "" {
			return filepath.Join(home, "Library", "Application Support", "Rimside"), nil
		}
	default:
		if shared := value("XDG_DATA_HOME"); filepath.IsAbs(shared) {
			return filepath.Join(shared, "rimside"), nil
		}
		if home := value("HOME"); home != "" {
			return filepath.Join(home, ".local", "share", "rimside"), nil
		}
	}
	return "", errors.New("this account has no data folder: say with -data DIR where the book's file may live")
}

// makeDataDir makes the folder, for this user's eyes only, and makes sure that files can be written into it.
func makeDataDir(dir string) error {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return fmt.Errorf("the data folder cannot be made: choose another with -data DIR (%w)", err)
	}
	probe, err := os.CreateTemp(dir, ".probe-*")
	if err != nil {
		return fmt.Errorf("the data folder is not writable: make it so, or choose another with -data DIR (%w)", err)
	}
	return errors.Join(probe.Close(), os.Remove(probe.Name()))
}
