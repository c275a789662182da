// Package web answers requests: the app's files, the calculations, and the server's own state. Each action has a file
// of its own, named after the thing and what is done with it; routes.go says which path leads to which.
package web

import (
	"context"
	"io/fs"
	"log/slog"
	"net"
	"net/http"
	"time"

	"rimside/calc/registry"
	"rimside/pwa"
	"rimside/server/access"
	"rimside/store/blob"
	"rimside/store/sqlite"
)

// Calculations is the registry as the server uses it. Call's error, if any, is a *registry.Error.
type Calculations struct {
	Call      func(name string, body []byte) ([]byte, error)
	Contracts func() []registry.Contract
}

// Access says how the server is reached, which decides who has to be paired and by which name it answers.
type Access struct {
	Policy access.Policy
	Secure bool   // its pages come over https
	Strict bool   // and never without, for a year: browsers are told so
	Host   string // the name it was given, without a port; "" for none
	Origin string // where the app lives, such as https://car.local:7467; "" where any name will do
}

// Options are what a server is made of.
type Options struct {
	Dist         fs.FS // the built app
	Calculations Calculations
	Listen       net.Addr // where requests come in; it decides which names the server answers to
	Access       Access
	Demo         bool // hand out the invented event
	Book         *sqlite.Book
	Blobs        *blob.Store
	Name         string           // what people call this server
	Now          func() time.Time // the clock; time.Now when nil
	Visitors     *access.Log      // who came to the door; nil for none
	Log          *slog.Logger
}

// app is what the actions share.
type app struct {
	assets   map[string]asset
	version  string // "" before the first build
	calc     Calculations
	demo     bool
	book     *sqlite.Book
	blobs    *blob.Store
	name     string
	now      func() time.Time
	log      *slog.Logger
	door     *access.Door
	limits   *access.Limits
	visits   visits
	visitors *access.Log
}

// New returns the whole server as one handler. Every request passes the middlewares in this order: the headers first, then
// everything is watched, then the Host is judged before anything else is looked at, then where the request comes from. Who
// sends it is asked at the routes that are marked as paired.
func New(ctx context.Context, options Options) (http.Handler, error) {
	assets, err := loadAssets(options.Dist)
	if err != nil {
		return nil, err
	}
	a := &app{
		assets:   assets,
		version:  pwa.Version(options.Dist),
		calc:     options.Calculations,
		demo:     options.Demo,
		book:     options.Book,
		blobs:    options.Blobs,
		name:     options.Name,
		now:      options.Now,
		log:      options.Log,
		visitors: options.Visitors,
	}
	if a.now == nil {
		a.now = time.Now
	}
	a.limits = access.NewLimits(a.now)
	if err := a.openDoor(ctx, options); err != nil {
		return nil, err
	}
	sameOrigin := http.NewCrossOriginProtection()
	sameOrigin.SetDenyHandler(http.HandlerFunc(refuseForeignPage))
	inside := sameOrigin.Handler(a.routes())
	known := knownHost(a.door.Hosts, oneOrigin(options.Access.Origin, a.door.Hosts, inside))
	if options.Access.Policy.BehindProxy {
		known = asForwarded(known)
	}
	protected := withHeaders(a.watched(known))
	if options.Access.Strict {
		protected = strictly(protected)
	}
	return protected, nil
}

func (a *app) openDoor(ctx context.Context, options Options) error {
	about, err := a.book.About(ctx)
	if err != nil {
		return err
	}
	how := options.Access
	sessions, err := access.NewSessions(ctx, a.book, about.Server, how.Secure, a.now)
	if err != nil {
		return err
	}
	a.door = &access.Door{Sessions: sessions, Devices: a.book, Hosts: access.ForListener(options.Listen, how.Host), Policy: how.Policy}
	return nil
}
