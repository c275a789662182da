//go:build !linux && !windows

package sqlite

import "time"

// runningTime follows the clock here, as there is no count that all programs agree about.
func runningTime() time.Duration { return time.Duration(time.Now().UnixNano()) }
