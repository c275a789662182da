package journey

import (
	"strings"
	"testing"

	ics "github.com/arran4/golang-ical"
)

// reminder is what another program makes of one entry of a calendar file.
type reminder struct {
	uid, summary, start string
	alarm               bool
}

// readCalendar has a library read a file that the app wrote.
func readCalendar(t *testing.T, text string) (found []reminder) {
	t.Helper()
	calendar, err := ics.ParseCalendar(strings.NewReader(text))
	if err != nil {
		t.Fatalf("the calendar cannot be read: %v\n%s", err, text)
	}
	for _, event := range calendar.Events() {
		read := reminder{uid: event.Id(), alarm: len(event.Alarms()) == 1}
		if summary := event.GetProperty(ics.ComponentPropertySummary); summary != nil {
			read.summary = summary.Value
		}
		if start := event.GetProperty(ics.ComponentPropertyDtStart); start != nil {
			read.start = start.Value
		}
		found = append(found, read)
	}
	return found
}
