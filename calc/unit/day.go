package unit

import "strconv"

// Day is a calendar day, counted from 1970-01-01, in the Gregorian calendar carried on both ways (ISO 8601).
type Day int

const (
	epochYear   = 1970
	daysPerYear = 365
)

// daysBefore are the days of a common year before each month begins.
var daysBefore = [...]int{0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365}

// ParseDay reads a day as it is kept, "2026-07-14". It reports false for any other text and for days that no calendar has.
func ParseDay(text string) (Day, bool) {
	if len(text) != 10 || text[4] != '-' || text[7] != '-' {
		return 0, false
	}
	year, okYear := digits(text[:4])
	month, okMonth := digits(text[5:7])
	day, okDay := digits(text[8:])
	if !okYear || !okMonth || !okDay || year < 1 || month < 1 || month > 12 || day < 1 || day > monthLength(year, month) {
		return 0, false
	}
	return Day(daysUntil(year) - daysUntil(epochYear) + daysBefore[month-1] + leapDay(year, month) + day - 1), true
}

// String writes the day as it is kept.
func (d Day) String() string {
	year := epochYear + int(d)/daysPerYear
	for Day(daysUntil(year)-daysUntil(epochYear)) > d {
		year--
	}
	left, month := int(d)-(daysUntil(year)-daysUntil(epochYear)), 1
	for left >= monthLength(year, month) {
		left -= monthLength(year, month)
		month++
	}
	return padded(year, 4) + "-" + padded(month, 2) + "-" + padded(left+1, 2)
}

// daysUntil counts the days from the first of January of year 1 to that of a later year.
func daysUntil(year int) int {
	y := year - 1
	return y*daysPerYear + y/4 - y/100 + y/400
}

func isLeap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

// leapDay is 1 for a month that stands after the leap day of its year.
func leapDay(year, month int) int {
	if month > 2 && isLeap(year) {
		return 1
	}
	return 0
}

func monthLength(year, month int) int {
	length := daysBefore[month] - daysBefore[month-1]
	if month == 2 && isLeap(year) {
		length++
	}
	return length
}

func digits(text string) (int, bool) {
	n := 0
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' {
			return 0, false
		}
		n = n*10 + int(text[i]-'0')
	}
	return n, true
}

func padded(n, width int) string {
	text := strconv.Itoa(n)
	for len(text) < width {
		text = "0" + text
	}
	return text
}
