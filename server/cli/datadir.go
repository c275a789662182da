package cli

import (
	"errors"
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
	return "", trouble("data.none")
}

// makeDataDir makes the folder, for this user's eyes only, and makes sure that files can be written into it.
func makeDataDir(dir string) error {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return trouble("data.unmade", "why", err)
	}
	probe, err := os.CreateTemp(dir, ".probe-*")
	if err != nil {
		return trouble("data.readonly", "why", err)
	}
	return errors.Join(probe.Close(), os.Remove(probe.Name()))
}
