package web

import "net/http"

// calcList answers with every calculation: what it is for, its fields with their bounds, and an example.
func (a *app) calcList(w http.ResponseWriter, _ *http.Request) {
	answer(w, http.StatusOK, "application/json", a.calc.Describe())
}
