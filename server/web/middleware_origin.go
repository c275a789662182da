package web

import (
	"net/http"
	"strings"

	"rimside/server/access"
	"rimside/store/fault"
)

// oneOrigin leads whoever opens the app by another of the server's names to the one it lives at: what a phone keeps, it
// keeps per name. This machine itself may go on calling the server localhost.
func oneOrigin(origin string, hosts *access.Hosts, next http.Handler) http.Handler {
	if origin == "" {
		return next
	}
	_, host, _ := strings.Cut(origin, "://")
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		read := r.Method == http.MethodGet || r.Method == http.MethodHead
		if r.URL.Path != "/" || !read || strings.EqualFold(r.Host, host) || hosts.Loopback(r.Host) {
			next.ServeHTTP(w, r)
			return
		}
		w.Header().Set("Cache-Control", "no-store")
		w.Header().Set("Location", origin+"/")
		answer(w, http.StatusFound, "text/plain; charset=utf-8", []byte("Rimside is at "+origin+"/\n"))
	})
}

// asForwarded believes the proxy about the name that the browser asked for. Of several it is the last, which the proxy
// itself has added.
func asForwarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if noted := r.Header.Values("X-Forwarded-Host"); len(noted) > 0 {
			all := strings.Split(noted[len(noted)-1], ",")
			r.Host = strings.TrimSpace(all[len(all)-1])
		}
		next.ServeHTTP(w, r)
	})
}

// refuseForeignPage answers a page of another site; http.CrossOriginProtection tells them apart.
func refuseForeignPage(w http.ResponseWriter, r *http.Request) {
	refuse(w, r, fault.New(fault.Forbidden, "foreign_page", "Another site's page sent this. Use Rimside's own page."))
}
