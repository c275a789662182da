package sqlite

import (
	"time"

	"golang.org/x/sys/windows"
)

// runningTime is how long the machine has been on: no clock that is set changes it, and all programs on one machine agree
// about it.
func runningTime() time.Duration { return windows.DurationSinceBoot() }
