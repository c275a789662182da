package web

import (
	"encoding/json"
	"net/http"
	"strings"
	"unicode/utf8"

	"rimside/server/access"
	"rimside/store/fault"
	"rimside/store/oplog"
)

const (
	maxSmallBody = 4 << 10
	maxLabel     = 60 // characters
)

// pairing is what a phone sends to be let in.
type pairing struct {
	code, label string
	device      string // the record that the phone has of itself already, "" for none
}

// pairPost lets a phone in that knows a code. It gets a cookie, and stays paired until nobody has seen it for half a year.
func (a *app) pairPost(w http.ResponseWriter, r *http.Request) {
	body, ok := readJSONBody(w, r, maxSmallBody, "4 KiB: a code and a name.")
	if !ok {
		return
	}
	if !a.limits.Allow(a.door.Peer(r)) {
		a.note(r, access.Slowed, "")
		w.Header().Set("Retry-After", "30")
		refuse(w, r, fault.New(fault.TooMany, "too_many_tries", "Too many codes were tried. Wait half a minute, then try again."))
		return
	}
	sent, wrong := readPairing(body)
	if wrong != nil {
		refuse(w, r, wrong)
		return
	}
	taken, err := a.book.TakeCode(r.Context(), sent.code)
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	if !taken {
		a.note(r, access.Guessed, "")
		refuse(w, r, fault.At("code", fault.Forbidden, "wrong_code", "That code is not right, or it is older than ten minutes. Ask for a new one."))
		return
	}
	a.pair(w, r, sent)
}

func (a *app) pair(w http.ResponseWriter, r *http.Request, sent pairing) {
	ctx := r.Context()
	out, err := a.book.Revoked(ctx, sent.device)
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	own, err := a.mayBe(r, sent.device)
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	if out || !own { // whoever was shut out comes back as somebody new, and so does whoever says to be another
		sent.device = oplog.NewID()
	}
	if err := a.book.Pair(ctx, sent.device, sent.label); err != nil {
		a.refuseStore(w, r, err)
		return
	}
	about, err := a.book.About(ctx)
	if err == nil && about.Book != "" {
		err = a.setDevice(ctx, sent.device, sent.device, "label", sent.label)
	}
	if err == nil {
		err = a.door.Sessions.Begin(w, r, sent.device)
	}
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.note(r, access.Paired, sent.device)
	a.answerJSON(w, struct {
		Device string `json:"device"`
		Book   string `json:"book"`
	}{sent.device, about.Book})
}

// mayBe tells whether whoever asks may be paired as a device. An id belongs to who first paired with it: later only the session of
// that device has it again. Ids are known to every phone of the book, so a claim proves nothing.
func (a *app) mayBe(r *http.Request, device string) (bool, error) {
	if device == "" {
		return false, nil
	}
	if session, _ := a.door.Sessions.Device(r); session == device {
		return true, nil
	}
	taken, err := a.book.WasPaired(r.Context(), device)
	return !taken, err
}

func readPairing(body []byte) (pairing, *fault.Error) {
	var members map[string]json.RawMessage
	if err := json.Unmarshal(body, &members); err != nil || members == nil {
		return pairing{}, fault.New(fault.Invalid, "bad_request", "Send one JSON object: code and label.")
	}
	var code string
	var sent pairing
	if raw, given := members["code"]; !given || json.Unmarshal(raw, &code) != nil {
		return pairing{}, fault.At("code", fault.Invalid, "bad_request", "Send the code as a text of six digits.")
	}
	var fine bool
	if sent.code, fine = access.ReadCode(code); !fine {
		return pairing{}, fault.At("code", fault.Invalid, "bad_request", "The code has six digits, such as 123 456.")
	}
	label, wrong := readLabel(members)
	if wrong != nil {
		return pairing{}, wrong
	}
	sent.label = label
	if raw, given := members["device"]; given && (json.Unmarshal(raw, &sent.device) != nil || sent.device != "" && !oplog.IsID(sent.device)) {
		return pairing{}, fault.At("device", fault.Invalid, "bad_request", "The device's id must be 32 lowercase hex digits.")
	}
	return sent, nil
}

// readLabel reads what a device is to be called.
func readLabel(members map[string]json.RawMessage) (string, *fault.Error) {
	var label string
	if raw, given := members["label"]; !given || json.Unmarshal(raw, &label) != nil {
		return "", fault.At("label", fault.Invalid, "bad_request", "Send the device's name as a text.")
	}
	label = strings.TrimSpace(label)
	if label == "" || utf8.RuneCountInString(label) > maxLabel {
		return "", fault.At("label", fault.Invalid, "bad_request", "Give the device a name of 1 to 60 characters.")
	}
	return label, nil
}
