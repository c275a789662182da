package web

import (
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net/http"

	"rimside/calc/registry"
	"rimside/store/fault"
)

const maxCalcBody, maxSampledBody = 256 << 10, 1 << 20

// sampled are the calculations that take what a sensor of the phone recorded.
var sampled = map[string]bool{"ground": true, "spokes": true}

// calcBody is the largest body that a calculation takes, and how a sentence names it.
func calcBody(name string) (bytes int64, words string) {
	if sampled[name] {
		return maxSampledBody, "1 MiB, the most a recording may take."
	}
	return maxCalcBody, "256 KiB, the most a calculation takes."
}

// calcRun runs one calculation on the request's body.
func (a *app) calcRun(w http.ResponseWriter, r *http.Request) {
	if !isJSON(r.Header.Get("Content-Type")) {
		refuse(w, r, fault.New(fault.WrongForm, "wrong_content_type", "Send the calculation's input as application/json."))
		return
	}
	name := pathValue(r, "name")
	most, words := calcBody(name)
	body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, most))
	if err != nil {
		refuse(w, r, bodyProblem(err, words))
		return
	}
	result, err := a.calc.Call(name, body)
	if err != nil {
		a.refuseInput(w, err)
		return
	}
	answer(w, http.StatusOK, "application/json", result)
}

// isJSON takes a missing type for JSON, as nothing else is ever sent here.
func isJSON(header string) bool {
	if header == "" {
		return true
	}
	kind, _, err := mime.ParseMediaType(header)
	return err == nil && kind == "application/json"
}

// bodyProblem says why a body was not read; most is how the sentence about a body that is too large goes on.
func bodyProblem(err error, most string) *fault.Error {
	var tooLarge *http.MaxBytesError
	if errors.As(err, &tooLarge) {
		return fault.New(fault.TooLarge, "body_too_large", "The input is larger than "+most)
	}
	return fault.New(fault.Unreadable, "body_unreadable", "The input did not arrive whole. Send it again.")
}

// refuseInput tells all that is wrong with a calculation's input. Any other error is not fit to show.
func (a *app) refuseInput(w http.ResponseWriter, err error) {
	var refused *registry.Error
	if !errors.As(err, &refused) {
		panic(err)
	}
	list := refusals(refused)
	body, err := json.Marshal(map[string]any{"error": list[0].told, "errors": list})
	if err != nil {
		panic(err) // numbers, texts and lists of texts always marshal
	}
	kind := fault.Invalid
	if refused.Code == registry.CodeUnknown {
		kind = fault.NotFound
	}
	answer(w, statuses[kind], "application/json", body)
}
