package web

import (
	"encoding/json"
	"net/http"
	"strings"
)

// The codes of what can go wrong outside the calculations. A calculation's own code means that its input was refused.
const (
	wrongHost            = "wrong_host"
	foreignPage          = "foreign_page"
	nothingHere          = "not_found"
	wrongMethod          = "wrong_method"
	unknownCalculation   = "unknown_calculation"
	bodyTooLarge         = "body_too_large"
	bodyUnreadable       = "body_unreadable"
	wrongContentType     = "wrong_content_type"
	notBuilt             = "not_built"
	wrongContentEncoding = "wrong_content_encoding"
	badRequest           = "bad_request"
	tooManyOps           = "too_many_ops"
	otherBook            = "other_book"
	internalError        = "internal"
)

var statuses = map[string]int{
	wrongHost:            http.StatusMisdirectedRequest,
	foreignPage:          http.StatusForbidden,
	nothingHere:          http.StatusNotFound,
	wrongMethod:          http.StatusMethodNotAllowed,
	unknownCalculation:   http.StatusNotFound,
	bodyTooLarge:         http.StatusRequestEntityTooLarge,
	bodyUnreadable:       http.StatusBadRequest,
	wrongContentType:     http.StatusUnsupportedMediaType,
	notBuilt:             http.StatusServiceUnavailable,
	wrongContentEncoding: http.StatusUnsupportedMediaType,
	otherBook:            http.StatusConflict,
	"erased":             http.StatusGone,
	"blob_too_large":     http.StatusRequestEntityTooLarge,
	"blob_wrong_type":    http.StatusUnsupportedMediaType,
	"blob_not_found":     http.StatusNotFound,
	internalError:        http.StatusInternalServerError,
	notPaired:            http.StatusUnauthorized,
	shutOut:              http.StatusUnauthorized,
	wrongCode:            http.StatusForbidden,
	tooManyTries:         http.StatusTooManyRequests,
}

// statusOf maps a code to its HTTP status.
func statusOf(code string) int {
	if status, found := statuses[code]; found {
		return status
	}
	return http.StatusUnprocessableEntity
}

// problem is an error as it is shown: a code for programs, the field it is about, a message for people.
type problem struct {
	Code    string `json:"code"`
	Field   string `json:"field"`
	Message string `json:"message"`
}

// refuse answers with the problem: programs get JSON, people a line of text. It is never the app's page, as a program
// or a cache would take that for success.
func refuse(w http.ResponseWriter, r *http.Request, what problem) {
	if !isForPrograms(r) {
		answer(w, statusOf(what.Code), "text/plain; charset=utf-8", []byte(what.Message+"\n"))
		return
	}
	body, err := json.Marshal(map[string]problem{"error": what})
	if err != nil {
		panic(err) // three strings always marshal
	}
	answer(w, statusOf(what.Code), "application/json", body)
}

func isForPrograms(r *http.Request) bool {
	return r.URL.Path == "/api" || strings.HasPrefix(r.URL.Path, "/api/")
}
