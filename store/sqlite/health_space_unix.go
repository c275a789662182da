//go:build linux || darwin

package sqlite

import "golang.org/x/sys/unix"

// freeSpace is how many bytes an ordinary program may still write to a folder's disk, or -1.
func freeSpace(dir string) int64 {
	var about unix.Statfs_t
	if err := unix.Statfs(dir, &about); err != nil {
		return -1
	}
	return int64(about.Bavail) * int64(about.Bsize)
}
