package web

import (
	"context"
	"net/http"
	"strings"
)

// The codes of who may not come in.
const (
	notPaired    = "not_paired"
	shutOut      = "shut_out"
	wrongCode    = "wrong_code"
	tooManyTries = "too_many_tries"
)

// needsPairing tells whether a path leads to the book, or to who may read it. The app itself and its sums hold nothing of
// anybody, and a phone that was shut out keeps them.
func needsPairing(path string) bool {
	for _, open := range []string{"/api/health", "/api/pair", "/api/demo", "/api/calc"} {
		if path == open {
			return false
		}
	}
	return strings.HasPrefix(path, "/api/") && !strings.HasPrefix(path, "/api/calc/")
}

// admitted lets only paired devices through to the book, or whoever sits at this machine itself.
func (a *app) admitted(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !needsPairing(r.URL.Path) {
			next.ServeHTTP(w, r)
			return
		}
		entry, err := a.door.Enter(w, r)
		switch {
		case err != nil:
			a.refuseStore(w, r, err)
		case entry.In:
			a.seen(r.Context(), entry.Device)
			next.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), deviceKey{}, entry.Device)))
		case entry.Out:
			refuse(w, r, problem{Code: shutOut, Message: "This phone was shut out of the book. What it holds stays on it and can be exported. To come back it has to be paired anew."})
		default:
			refuse(w, r, problem{Code: notPaired, Message: "This phone is not paired with this server. Ask for a code, and type it in Settings, Phones."})
		}
	})
}

type deviceKey struct{}

// via is the device whose session sent the request, "" for this machine itself.
func via(r *http.Request) string {
	device, _ := r.Context().Value(deviceKey{}).(string)
	return device
}

// seen notes that a device was here, now and then: each request would write to the disk.
func (a *app) seen(ctx context.Context, device string) {
	if device == "" || !a.visits.due(device, a.now()) {
		return
	}
	if err := a.book.SeeDevice(ctx, device); err != nil && ctx.Err() == nil {
		a.log.Error("it could not be noted that a device was here", "device", device, "error", err)
	}
}
