package web

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"strings"

	"rimside/store/fault"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

const maxPushBody = 8 << 20

// push is what a phone sends: whose book it keeps, which log it believes is here, and the ops that log lacks.
type push struct {
	Book, Log string
	Ops       []json.RawMessage
}

// opsPush stores ops. The answer goes out when they are on the disk.
func (a *app) opsPush(w http.ResponseWriter, r *http.Request) {
	bySlowLink(w, r)
	body, ok := readJSONBody(w, r, maxPushBody, "8 MiB, the most a push takes: send fewer entries at once.")
	if !ok {
		return
	}
	sent, wrong := readPush(body)
	if wrong != nil {
		refuse(w, r, wrong)
		return
	}
	pushed, err := a.book.Push(r.Context(), sent.Book, sent.Log, sent.Ops, via(r))
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.passOn(r.Context(), pushed)
	a.answerPushed(w, pushed)
}

// passOn is not worth a refusal: what was pushed is on the disk, and at another server somebody would have to agree once more.
func (a *app) passOn(ctx context.Context, pushed sqlite.Pushed) {
	if err := a.book.PassOn(ctx, pushed); err != nil && ctx.Err() == nil {
		a.log.Error("it could not be noted that erasures passed", "error", err)
	}
}

func (a *app) answerPushed(w http.ResponseWriter, pushed sqlite.Pushed) {
	a.answerJSON(w, struct {
		Book     string            `json:"book"`
		Log      string            `json:"log"`
		Stored   []string          `json:"stored"`
		Known    []string          `json:"known"`
		Rejected []oplog.Rejection `json:"rejected"`
		Now      int64             `json:"now"`
	}{pushed.Book, pushed.Log, orEmpty(pushed.Stored), orEmpty(pushed.Known), orEmpty(pushed.Rejected), a.nowMS()})
}

// orEmpty makes an empty list of none, so that JSON has [] rather than null.
func orEmpty[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

// readPush reads the members by their exact names; their order does not matter.
func readPush(body []byte) (push, *fault.Error) {
	var members map[string]json.RawMessage
	if err := json.Unmarshal(body, &members); err != nil || members == nil {
		return push{}, fault.New(fault.Invalid, "bad_request", "A push must be one JSON object: book, log and ops.")
	}
	var sent push
	if raw, given := members["book"]; !given || json.Unmarshal(raw, &sent.Book) != nil || !oplog.IsID(sent.Book) {
		return push{}, fault.At("book", fault.Invalid, "bad_request", "The book's id must be 32 lowercase hex digits.")
	}
	if raw, given := members["log"]; given && json.Unmarshal(raw, &sent.Log) != nil {
		return push{}, fault.At("log", fault.Invalid, "bad_request", "The log's id must be a text: the one from the last answer, or empty.")
	}
	if raw, given := members["ops"]; !given || bytes.Equal(raw, []byte("null")) || json.Unmarshal(raw, &sent.Ops) != nil {
		return push{}, fault.At("ops", fault.Invalid, "bad_request", "The ops must be a list.")
	}
	if len(sent.Ops) > oplog.MaxPush {
		return push{}, fault.At("ops", fault.Invalid, "too_many_ops", fmt.Sprintf("There are %d ops, and a push takes %d at most: send the rest with the next.", len(sent.Ops), oplog.MaxPush))
	}
	return sent, nil
}

// readJSONBody reads a whole body of plain JSON, or answers why not.
func readJSONBody(w http.ResponseWriter, r *http.Request, limit int64, most string) ([]byte, bool) {
	if !isJSON(r.Header.Get("Content-Type")) {
		refuse(w, r, fault.New(fault.WrongForm, "wrong_content_type", "Send this as application/json."))
		return nil, false
	}
	if !isPlain(w, r) {
		return nil, false
	}
	body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, limit))
	if err != nil {
		refuse(w, r, bodyProblem(err, most))
		return nil, false
	}
	return body, true
}

// isPlain refuses a compressed body: a few bytes could unpack to more than this machine holds.
func isPlain(w http.ResponseWriter, r *http.Request) bool {
	encoding := strings.ToLower(strings.TrimSpace(r.Header.Get("Content-Encoding")))
	if encoding == "" || encoding == "identity" {
		return true
	}
	refuse(w, r, fault.New(fault.WrongForm, "wrong_content_encoding", "Send the body as it is, not compressed."))
	return false
}
