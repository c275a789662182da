package sqlite

import (
	"time"

	"golang.org/x/sys/unix"
)

// runningTime is how long the machine has been on, asleep or awake: no clock that is set changes it, and all programs on one
// machine agree about it.
func runningTime() time.Duration {
	var since unix.Timespec
	if err := unix.ClockGettime(unix.CLOCK_BOOTTIME, &since); err != nil {
		return time.Duration(time.Now().UnixNano())
	}
	return time.Duration(since.Nano())
}
