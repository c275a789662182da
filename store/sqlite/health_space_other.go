//go:build !linux && !darwin && !windows

package sqlite

// freeSpace is not known here.
func freeSpace(string) int64 { return -1 }
