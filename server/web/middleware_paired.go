package web

import (
	"context"
	"net/http"

	"rimside/server/access"
	"rimside/store/fault"
)

// The wire calls a revoked session "shut_out".
var (
	errNotPaired = fault.New(fault.NotPaired, "not_paired", "This phone is not paired with this server. Ask for a code, and type it in Settings, Phones.")
	errRevoked   = fault.New(fault.NotPaired, "shut_out", "This phone was shut out of the book. What it holds stays on it and can be exported. To come back it has to be paired anew.")
)

// paired lets only paired devices through to an action, or whoever sits at this machine itself.
func (a *app) paired(action http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		entry, err := a.door.Enter(w, r)
		switch {
		case err != nil:
			a.refuseStore(w, r, err)
		case entry.In:
			a.seen(r.Context(), entry.Device)
			action.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), deviceKey{}, entry.Device)))
		case entry.Revoked:
			a.note(r, access.Refused, entry.Was)
			refuse(w, r, errRevoked)
		default:
			refuse(w, r, errNotPaired)
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
