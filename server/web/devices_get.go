package web

import (
	"net/http"

	"rimside/store/fault"
	"rimside/store/sqlite"
)

// device is a phone or a computer as it is shown.
type device struct {
	ID       string `json:"id"`
	Label    string `json:"label"`
	PairedAt int64  `json:"paired_at"` // ms since 1970; 0 when it was not paired at this server
	SeenAt   int64  `json:"seen_at"`
	Revoked  bool   `json:"revoked"`
	Here     bool   `json:"here"` // the one that asks
}

func shownDevice(d sqlite.Device, r *http.Request) device {
	return device{d.ID, d.Label, d.PairedAt, d.SeenAt, d.Revoked, d.ID == via(r)}
}

// devicesGet lists the phones and computers of the book.
func (a *app) devicesGet(w http.ResponseWriter, r *http.Request) {
	known, err := a.book.Devices(r.Context())
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	shown := []device{}
	for _, each := range known {
		shown = append(shown, shownDevice(each, r))
	}
	a.answerJSON(w, map[string][]device{"devices": shown})
}

// answerDevice shows one device after it was changed.
func (a *app) answerDevice(w http.ResponseWriter, r *http.Request, id string) {
	known, err := a.book.Devices(r.Context())
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	for _, each := range known {
		if each.ID == id {
			a.answerJSON(w, shownDevice(each, r))
			return
		}
	}
	noSuchDevice(w, r)
}

func noSuchDevice(w http.ResponseWriter, r *http.Request) {
	refuse(w, r, fault.At("id", fault.NotFound, "not_found", "No device of this book has that id."))
}

// isDevice answers when the id in the path is nobody's.
func (a *app) isDevice(w http.ResponseWriter, r *http.Request, id string) bool {
	known, err := a.book.Devices(r.Context())
	if err != nil {
		a.refuseStore(w, r, err)
		return false
	}
	for _, each := range known {
		if each.ID == id {
			return true
		}
	}
	noSuchDevice(w, r)
	return false
}
