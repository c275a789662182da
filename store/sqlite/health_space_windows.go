package sqlite

import "golang.org/x/sys/windows"

// freeSpace is how many bytes this account may still write to a folder's disk, or -1.
func freeSpace(dir string) int64 {
	name, err := windows.UTF16PtrFromString(dir)
	if err != nil {
		return -1
	}
	var free uint64
	if err := windows.GetDiskFreeSpaceEx(name, &free, nil, nil); err != nil {
		return -1
	}
	return int64(free)
}
