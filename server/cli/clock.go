package cli

import (
	"log/slog"
	"runtime/debug"
	"time"
)

// written is a day that no right clock comes before: that of this line. A build that knows the day of its source takes that.
var written = time.Date(2026, time.November, 28, 0, 0, 0, 0, time.UTC)

// builtOn is the earliest that it can be now.
func builtOn() time.Time {
	about, _ := debug.ReadBuildInfo()
	if about == nil {
		return written
	}
	for _, setting := range about.Settings {
		if at, err := time.Parse(time.RFC3339, setting.Value); setting.Key == "vcs.time" && err == nil && at.After(written) {
			return at
		}
	}
	return written
}

// notBefore is a clock that never tells less than the floor. A small computer without a battery wakes in 1970 and learns the time
// when it finds a network, which in a car it may not: a certificate or a cookie of 1970 would have ended years ago. Until its clock
// is right, time runs on from the floor.
func notBefore(floor time.Time, now func() time.Time, log *slog.Logger) func() time.Time {
	begun := now()
	if begun.Before(floor) {
		log.Warn("this computer's clock is behind: set it, so that phones do not take it for theirs that is off", "clock", begun.UTC().Format(time.DateOnly), "reckoned from", floor.UTC().Format(time.DateOnly))
	}
	return func() time.Time {
		at := now()
		if at.Before(floor) {
			return floor.Add(max(0, at.Sub(begun)))
		}
		return at
	}
}
