package record

import "regexp"

// What texts of these types look like.
var shapes = map[string]*regexp.Regexp{
	"ref":  regexp.MustCompile(`^([0-9a-f]{32})?$`), // empty: none
	"day":  regexp.MustCompile(`^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$`),
	"blob": regexp.MustCompile(`^[0-9a-f]{64}$`),
}

var shapeWords = map[string]string{
	"ref":  "the id of a record: 32 hex digits",
	"day":  "a day such as 2026-05-31",
	"blob": "a file's SHA-256: 64 hex digits",
}
