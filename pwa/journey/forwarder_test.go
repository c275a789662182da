package journey

import (
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
)

// Forwarder stands before several servers as one address, as one name does for the cars of a team: what is asked under
// /s<n>/ goes to that server, anything else to the one that is switched to.
type Forwarder struct {
	*httptest.Server
	servers []*Server
	current atomic.Int64
	down    atomic.Bool
	page    atomic.Int64 // ops in a page at most, 0 as asked
	others  http.Handler // answers what is for no server, if any
}

// Forward starts a forwarder.
func Forward(t testing.TB, servers ...*Server) *Forwarder {
	t.Helper()
	f := &Forwarder{servers: servers}
	f.Server = httptest.NewServer(f)
	t.Cleanup(f.Server.Close)
	return f
}

// SwitchTo sends what comes next to another server; -1 is nobody.
func (f *Forwarder) SwitchTo(server int) {
	f.down.Store(server < 0)
	f.current.Store(int64(max(server, 0)))
}

func (f *Forwarder) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	number := int(f.current.Load())
	if rest, found := strings.CutPrefix(r.URL.Path, "/s"); found && f.others != nil {
		prefix, path, _ := strings.Cut(rest, "/")
		if n, err := strconv.Atoi(prefix); err == nil && n < len(f.servers) {
			number, r.URL.Path = n, "/"+path
		}
	} else if f.others != nil {
		f.others.ServeHTTP(w, r)
		return
	}
	if f.down.Load() {
		panic(http.ErrAbortHandler)
	}
	if n := f.page.Load(); n > 0 && r.Method == http.MethodGet && r.URL.Query().Has("limit") {
		query := r.URL.Query()
		query.Set("limit", strconv.FormatInt(n, 10))
		r.URL.RawQuery = query.Encode()
	}
	target := &url.URL{Scheme: "http", Host: f.servers[number].addr}
	proxy := httputil.ReverseProxy{
		Rewrite:      func(p *httputil.ProxyRequest) { p.SetURL(target) },
		ErrorHandler: func(http.ResponseWriter, *http.Request, error) { panic(http.ErrAbortHandler) }, // a car that is off
	}
	proxy.ServeHTTP(w, r)
}
