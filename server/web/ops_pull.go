package web

import (
	"bytes"
	"encoding/json"
	"net/http"
	"strconv"

	"rimside/store/fault"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

// opsPull answers with the ops that arrived here after a place in this log, as they were received.
func (a *app) opsPull(w http.ResponseWriter, r *http.Request) {
	query := r.URL.Query()
	since, wrong := wholeNumber(query.Get("since"), "since", 0, 1<<53)
	if wrong != nil {
		refuse(w, r, wrong)
		return
	}
	limit := int64(oplog.MaxPush)
	if query.Get("limit") != "" {
		if limit, wrong = wholeNumber(query.Get("limit"), "limit", 1, oplog.MaxPush); wrong != nil {
			refuse(w, r, wrong)
			return
		}
	}
	book := query.Get("book")
	if book != "" && !oplog.IsID(book) {
		refuse(w, r, fault.At("book", fault.Invalid, "bad_request", "The book's id must be 32 lowercase hex digits."))
		return
	}
	page, err := a.book.Pull(r.Context(), book, query.Get("log"), since, int(limit))
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	answerPacked(w, r, a.writePage(page))
}

// wholeNumber reads a number of the query; a missing one is the least.
func wholeNumber(text, field string, least, most int64) (int64, *fault.Error) {
	if text == "" {
		return least, nil
	}
	value, err := strconv.ParseInt(text, 10, 64)
	if err != nil || value < least || value > most {
		return 0, fault.At(field, fault.Invalid, "bad_request", "The "+field+" must be a whole number from "+strconv.FormatInt(least, 10)+" to "+strconv.FormatInt(most, 10)+".")
	}
	return value, nil
}

// writePage writes the ops byte by byte as they came; package json would change how they are written.
func (a *app) writePage(page sqlite.Page) []byte {
	size := 512 + 128*len(page.Via)
	for _, op := range page.Ops {
		size += len(op) + 1
	}
	out := bytes.NewBuffer(make([]byte, 0, size))
	out.WriteString(`{"book":"` + page.Book + `","log":"` + page.Log + `","ops":[`)
	for i, op := range page.Ops {
		if i > 0 {
			out.WriteByte(',')
		}
		out.Write(op)
	}
	out.WriteString(`],"via":`)
	carriers, err := json.Marshal(orEmpty(page.Via))
	if err != nil {
		panic(err) // texts and numbers always marshal
	}
	out.Write(carriers)
	out.WriteString(`,"next":` + strconv.FormatInt(page.Next, 10) + `,"more":` + strconv.FormatBool(page.More) +
		`,"count":` + strconv.FormatInt(page.Count, 10) + `,"digest":"` + page.Digest + `","hash":"` + page.Hash + `","now":` + strconv.FormatInt(a.nowMS(), 10) + `}`)
	return out.Bytes()
}
