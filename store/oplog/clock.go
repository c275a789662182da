package oplog

// NextAt is the time of a new op, in ms since 1970: now, or just above the newest known op of the same record, so that
// what a person just typed shows, whatever the clocks say. It stays within the years that servers take.
func NextAt(now, newest int64) int64 {
	return min(max(now, newest+1, MinAt), EndAt-1)
}
