// Package web answers requests: the app's files, the calculations, and the server's own state. Each action has a file
// of its own, named after the thing and what is done with it; routes.go says which path leads to which.
package web

import (
	"io/fs"
	"log/slog"
	"net"
	"net/http"
	"time"

	"rimside/pwa"
	"rimside/server/access"
	"rimside/store/blob"
	"rimside/store/sqlite"
)

// Calculations is the registry as the server uses it. Call's error, if any, is fit to show.
type Calculations struct {
	Call     func(name string, body []byte) ([]byte, error)
	Describe func() []byte
}

// Options are what a server is made of.
type Options struct {
	Dist         fs.FS // the built app
	Calculations Calculations
	Listen       net.Addr // where requests come in; it decides which names the server answers to
	Demo         bool     // hand out the invented event
	Book         *sqlite.Book
	Blobs        *blob.Store
	Name         string           // what people call this server
	Now          func() time.Time // the clock; time.Now when nil
	Log          *slog.Logger
}

// app is what the actions share.
type app struct {
	assets  map[string]asset
	version string // "" before the first build
	calc    Calculations
	demo    bool
	book    *sqlite.Book
	blobs   *blob.Store
	name    string
	now     func() time.Time
	log     *slog.Logger
}

// New returns the whole server as one handler. Every response passes the headers first, then everything is watched,
// then the Host is judged before anything else is looked at.
func New(options Options) (http.Handler, error) {
	assets, err := loadAssets(options.Dist)
	if err != nil {
		return nil, err
	}
	a := &app{
		assets:  assets,
		version: pwa.Version(options.Dist),
		calc:    options.Calculations,
		demo:    options.Demo,
		book:    options.Book,
		blobs:   options.Blobs,
		name:    options.Name,
		now:     options.Now,
		log:     options.Log,
	}
	if a.now == nil {
		a.now = time.Now
	}
	sameOrigin := http.NewCrossOriginProtection()
	sameOrigin.SetDenyHandler(http.HandlerFunc(refuseForeignPage))
	hosts := access.ForListener(options.Listen)
	return withHeaders(a.watched(knownHost(hosts, sameOrigin.Handler(a.routes())))), nil
}

// knownHost lets only requests through that name this server. It judges every method, as a harmless one still reads.
func knownHost(hosts *access.Hosts, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !hosts.Allows(r.Host) {
			refuse(w, r, problem{Code: wrongHost, Message: "This server does not answer to that name. Open it by the address it printed when it started."})
			return
		}
		next.ServeHTTP(w, r)
	})
}

func refuseForeignPage(w http.ResponseWriter, r *http.Request) {
	refuse(w, r, problem{Code: foreignPage, Message: "Another site's page sent this. Use Rimside's own page."})
}
