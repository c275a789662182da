package cli

import (
	"log/slog"
	"strings"
	"testing"
	"time"
)

// A clock that was lost is reckoned from the day of the build, runs on from there, and is believed again once it is right.
func TestAClockWithoutABattery(t *testing.T) {
	floor := time.Date(2026, time.November, 28, 12, 0, 0, 0, time.UTC)
	at := time.Unix(30, 0)
	var said strings.Builder
	clock := notBefore(floor, func() time.Time { return at }, slog.New(slog.NewTextHandler(&said, nil)))
	if got := clock(); !got.Equal(floor) {
		t.Errorf("in 1970 it is %v", got)
	}
	at = at.Add(time.Hour)
	if got := clock(); !got.Equal(floor.Add(time.Hour)) {
		t.Errorf("an hour later it is %v", got)
	}
	right := floor.Add(40 * 24 * time.Hour)
	at = right
	if got := clock(); !got.Equal(right) {
		t.Errorf("a clock that was set tells %v", got)
	}
	at = time.Unix(0, 0) // and lost again
	if got := clock(); !got.Equal(floor) {
		t.Errorf("lost again it is %v", got)
	}
	if !strings.Contains(said.String(), "1970-01-01") {
		t.Errorf("nothing was said of it: %q", said.String())
	}
}

func TestTheDayOfTheBuildIsNotAhead(t *testing.T) {
	if built := builtOn(); built.Before(written) || built.After(time.Now().Add(24*time.Hour)) {
		t.Errorf("built on %v", built)
	}
}
