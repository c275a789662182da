//go:build !windows

package cli

import (
	"os"
	"syscall"
)

// lock takes the file for this process alone; the system lets go of it when the process ends, however it ends.
func lock(file *os.File) error { return syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) }
