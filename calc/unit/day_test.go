package unit_test

import (
	"testing"
	"time"

	"rimside/calc/unit"
)

// Known days: the epoch of POSIX time, day 10957 for the year 2000, leap rules of the Gregorian calendar (ISO 8601).
func TestKnownDays(t *testing.T) {
	for text, want := range map[string]unit.Day{
		"1970-01-01": 0, "1970-01-02": 1, "1969-12-31": -1, "2000-01-01": 10957, "2000-02-29": 11016, "2000-03-01": 11017, "1900-03-01": -25508,
	} {
		if got, ok := unit.ParseDay(text); !ok || got != want {
			t.Errorf("%s is day %d, %v; want %d", text, got, ok, want)
		}
	}
}

// Every day of the years that records may carry agrees with the standard library's calendar, there and back.
func TestDaysAgreeWithTheLibrary(t *testing.T) {
	for at := time.Date(1895, 1, 1, 0, 0, 0, 0, time.UTC); at.Year() < 2210; at = at.AddDate(0, 0, 1) {
		text, want := at.Format(time.DateOnly), unit.Day(at.Unix()/86400)
		if at.Unix() < 0 {
			want = unit.Day((at.Unix() - 86399) / 86400)
		}
		if got, ok := unit.ParseDay(text); !ok || got != want || got.String() != text {
			t.Fatalf("%s is day %d (%v), written back %s; want %d", text, got, ok, got, want)
		}
	}
}

func TestWhatIsNoDay(t *testing.T) {
	for _, text := range []string{
		"", "2026-7-14", "2026-07-14 ", " 2026-07-14", "2026/07/14", "14-07-2026", "2026-02-29", "1900-02-29", "2026-04-31", "2026-00-10",
		"2026-13-01", "2026-01-00", "2026-01-32", "0000-01-01", "-026-01-01", "+026-01-01", "2026-0a-01", "２026-01-1", "tomorrow!!",
	} {
		if day, ok := unit.ParseDay(text); ok {
			t.Errorf("%q is taken for %s", text, day)
		}
	}
}
