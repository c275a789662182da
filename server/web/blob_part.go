package web

import (
	"net/http"

	"rimside/store/blob"
	"rimside/store/fault"
)

// A photo over a weak link comes in parts: GET .../part tells how many bytes are here, PATCH .../part?from=N&size=S adds
// bytes from place N on. What arrived before a break counts. With the last byte the photo is checked and kept.

// partHeld is how much of a photo is here.
type partHeld struct {
	Have  int64 `json:"have"`  // bytes
	Whole bool  `json:"whole"` // it is kept; nothing is left to send
}

var errNoSize = fault.At("size", fault.Invalid, "bad_request", "Say in size how many bytes the whole photo has.")

// blobPartGet says how much of a photo is here.
func (a *app) blobPartGet(w http.ResponseWriter, r *http.Request) {
	held, err := a.book.PartOf(pathValue(r, "sha256"))
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.answerJSON(w, partHeld{held.Have, held.Whole})
}

// blobPartPatch takes the next part of a photo. One that begins behind what is here changes nothing: the answer says where to
// go on.
func (a *app) blobPartPatch(w http.ResponseWriter, r *http.Request) {
	from, wrong := wholeNumber(r.URL.Query().Get("from"), "from", 0, blob.MaxBytes)
	if wrong != nil {
		refuse(w, r, wrong)
		return
	}
	if r.URL.Query().Get("size") == "" {
		refuse(w, r, errNoSize)
		return
	}
	size, wrong := wholeNumber(r.URL.Query().Get("size"), "size", 1, blob.MaxBytes)
	if wrong != nil {
		refuse(w, r, wrong)
		return
	}
	if !isPlain(w, r) {
		return
	}
	bySlowLink(w, r)
	held, err := a.book.AddPart(r.Context(), pathValue(r, "sha256"), from, size, http.MaxBytesReader(w, r.Body, blob.MaxBytes))
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.answerJSON(w, partHeld{held.Have, held.Whole})
}
