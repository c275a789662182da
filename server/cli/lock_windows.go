package cli

import (
	"os"

	"golang.org/x/sys/windows"
)

// lock takes the file for this process alone; the system lets go of it when the process ends, however it ends.
func lock(file *os.File) error {
	return windows.LockFileEx(windows.Handle(file.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, new(windows.Overlapped))
}
