package web

import "net/http"

// strictly tells browsers to come by https alone (RFC 6797), for a year. A certificate of one's own that one day is not there any
// more would lock phones out, so -lan does not say it.
func strictly(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Strict-Transport-Security", "max-age=31536000")
		next.ServeHTTP(w, r)
	})
}
