package journey

import (
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"
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
	rate    atomic.Int64 // bytes a second each way, 0 for as fast as it goes
	carried atomic.Int64 // bytes of bodies that went to the servers
	breaks  atomic.Int64 // the link breaks when so many bytes were carried, 0 for never
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
	r.Body = &weakBody{r.Body, f}
	target := &url.URL{Scheme: "http", Host: f.servers[number].addr}
	proxy := httputil.ReverseProxy{
		Rewrite:      func(p *httputil.ProxyRequest) { p.SetURL(target) },
		ErrorHandler: func(http.ResponseWriter, *http.Request, error) { panic(http.ErrAbortHandler) }, // a car that is off
	}
	proxy.ServeHTTP(w, r)
}

// weakBody is a request's body as it comes over the forwarder's link.
type weakBody struct {
	io.ReadCloser
	link *Forwarder
}

func (b *weakBody) Read(into []byte) (int, error) {
	rate := b.link.rate.Load()
	if rate > 0 && len(into) > 512 {
		into = into[:512]
	}
	n, err := b.ReadCloser.Read(into)
	if rate > 0 {
		time.Sleep(time.Duration(n) * time.Second / time.Duration(rate))
	}
	carried := b.link.carried.Add(int64(n))
	if at := b.link.breaks.Load(); at > 0 && carried >= at {
		b.link.breaks.Store(0)
		return n, errors.New("the link broke")
	}
	return n, err
}
