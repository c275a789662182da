package web

import (
	"net/http"

	"rimside/server/access"
	"rimside/store/fault"
)

// knownHost lets only requests through that name this server. It judges every method, as a harmless one still reads.
func knownHost(hosts *access.Hosts, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !hosts.Allows(r.Host) {
			refuse(w, r, fault.New(fault.WrongHost, "wrong_host", "This server does not answer to that name. Open it by the address it printed when it started."))
			return
		}
		next.ServeHTTP(w, r)
	})
}
