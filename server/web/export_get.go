package web

import "net/http"

// exportGet writes the whole log out, one op a line.
func (a *app) exportGet(w http.ResponseWriter, r *http.Request) {
	about, err := a.book.About(r.Context())
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	w = toSlowLink(w)
	header := w.Header()
	header.Set("Content-Type", "application/x-ndjson")
	header.Set("Content-Disposition", `attachment; filename="rimside-`+about.Book+`.ndjson"`)
	header.Set("Cache-Control", "no-store")
	if err := a.book.Export(r.Context(), w); err != nil {
		a.log.Error("an export broke off", "error", err)
		panic(http.ErrAbortHandler) // a cut connection says that the file is not whole
	}
}
