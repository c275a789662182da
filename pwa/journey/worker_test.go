package journey

import (
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
)

// portal stands between phone and server, as the network of a hotel does: what the service worker fetches for later use it
// answers in its own way. What the page itself asks for passes.
type portal struct {
	*httptest.Server
	spoil   atomic.Pointer[http.HandlerFunc]
	mutex   sync.Mutex
	fetched map[string]string // path -> what the worker's request says of the browser's own cache
}

func openPortal(t *testing.T, server *Server) *portal {
	t.Helper()
	p := &portal{fetched: map[string]string{}}
	target, err := url.Parse(server.URL())
	if err != nil {
		t.Fatal(err)
	}
	proxy := &httputil.ReverseProxy{Rewrite: func(r *httputil.ProxyRequest) { r.SetURL(target) }}
	p.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		byWorker := r.Header.Get("Sec-Fetch-Dest") == "empty" && !strings.HasPrefix(r.URL.Path, "/api/")
		if byWorker {
			p.note(r.URL.Path, r.Header.Get("Cache-Control"))
		}
		if spoil := p.spoil.Load(); spoil != nil && byWorker && strings.HasPrefix(r.URL.Path, "/a/") {
			(*spoil)(w, r)
			return
		}
		proxy.ServeHTTP(w, r)
	}))
	t.Cleanup(p.Server.Close)
	return p
}

// note keeps what was said of a path. The calculations are fetched by the page too, in its own way and at its own time: that
// does not take back what the service worker said.
func (p *portal) note(path, policy string) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	if policy != "" || p.fetched[path] == "" {
		p.fetched[path] = policy
	}
}

// forget begins anew, so that what was asked for while the network spoilt it does not count for what came later.
func (p *portal) forget() {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	clear(p.fetched)
}

// What the network answers in the app's place is never kept: neither an error nor a redirect to a login page. When the
// network is itself again, the whole app is kept, each file fetched past the browser's own cache, and nothing else is.
func TestOnlyTheRealAppIsKept(t *testing.T) {
	server := StartServer(t)
	portal := openPortal(t, server)
	login := func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		_, _ = w.Write([]byte("<title>Welcome</title>Log in to the network"))
	}
	for name, spoil := range map[string]http.HandlerFunc{
		"an error": func(w http.ResponseWriter, r *http.Request) {
			http.Error(w, "Log in to the network", http.StatusBadGateway)
		},
		"a redirect": func(w http.ResponseWriter, r *http.Request) {
			if strings.HasSuffix(r.URL.Path, ".js") {
				http.Redirect(w, r, "/a/login", http.StatusFound)
				return
			}
			login(w, r)
		},
	} {
		portal.spoil.Store(&spoil)
		p := OpenBrowser(t).Open(portal.URL + "/")
		p.Allow("502", "MIME type", "Failed to load resource")
		p.at("pressure")
		p.Eventually("the worker given up", func() bool {
			return Eval[bool](p, `navigator.serviceWorker.getRegistration().then((found) => found === undefined || (!found.installing && !found.waiting && !found.active))`)
		})
		if kept := Eval[int](p, "caches.keys().then((names) => names.length)"); kept != 0 {
			t.Errorf("after %s %d versions are kept", name, kept)
		}
		portal.spoil.Store(nil)
		portal.forget()
		p.Reload()
		p.installed()
		said := Eval[string](p, `caches.keys().then(async ([name]) => {
			const cache = await caches.open(name);
			const all = await Promise.all((await cache.keys()).map(async (each) => [new URL(each.url).pathname, await cache.match(each, {ignoreVary: true})]));
			const bad = await Promise.all(all.map(async ([path, answer]) => [path, !answer.ok || answer.redirected || (await answer.text()).includes("Log in to the network")]));
			return bad.filter(([, is]) => is).map(([path]) => "bad " + path).concat(bad.map(([path]) => path)).join("\n");
		})`)
		portal.mutex.Lock()
		for path := range strings.SplitSeq(said, "\n") {
			if policy := portal.fetched[path]; !strings.Contains(policy, "no-cache") {
				t.Errorf("after %s: %s was kept, and asked for with %q", name, path, policy)
			}
		}
		if len(portal.fetched) < 5 {
			t.Errorf("the worker fetched only %v", portal.fetched)
		}
		portal.mutex.Unlock()
		p.Close()
	}
}
