package web

import (
	"encoding/json"
	"net/http"
	"strings"

	"rimside/store/fault"
)

// statuses is the one place that turns the kind of a fault into an HTTP status.
var statuses = map[fault.Kind]int{
	fault.Invalid:     http.StatusUnprocessableEntity,
	fault.Unreadable:  http.StatusBadRequest,
	fault.TooLarge:    http.StatusRequestEntityTooLarge,
	fault.WrongForm:   http.StatusUnsupportedMediaType,
	fault.WrongHost:   http.StatusMisdirectedRequest,
	fault.WrongMethod: http.StatusMethodNotAllowed,
	fault.NotFound:    http.StatusNotFound,
	fault.Gone:        http.StatusGone,
	fault.Conflict:    http.StatusConflict,
	fault.NotPaired:   http.StatusUnauthorized,
	fault.Forbidden:   http.StatusForbidden,
	fault.TooMany:     http.StatusTooManyRequests,
	fault.Broken:      http.StatusInternalServerError,
	fault.Full:        http.StatusInsufficientStorage,
	fault.Unready:     http.StatusServiceUnavailable,
}

// refuse answers with a fault: programs get JSON, people a line of text. It is never the app's page, as a program
// or a cache would take that for success.
func refuse(w http.ResponseWriter, r *http.Request, what *fault.Error) {
	if !isForPrograms(r) {
		answer(w, statuses[what.Kind], "text/plain; charset=utf-8", []byte(what.Message+"\n"))
		return
	}
	body, err := json.Marshal(map[string]*fault.Error{"error": what})
	if err != nil {
		panic(err) // three strings always marshal
	}
	answer(w, statuses[what.Kind], "application/json", body)
}

func isForPrograms(r *http.Request) bool {
	return r.URL.Path == "/api" || strings.HasPrefix(r.URL.Path, "/api/")
}
