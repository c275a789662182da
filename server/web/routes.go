package web

import (
	"maps"
	"net/http"
	"slices"
	"strings"

	"github.com/gorilla/mux"

	"rimside/store/fault"
)

// route is a path with its actions, and who may come: everybody, or paired devices only. What is open holds nothing of
// anybody: the app itself, its calculations, and the way in. A phone that was revoked keeps those.
type route struct {
	who     audience
	path    string
	actions methods
}

type audience bool

const (
	open   audience = false
	paired audience = true
)

func (a *app) table() []route {
	const get, post, put, patch = http.MethodGet, http.MethodPost, http.MethodPut, http.MethodPatch
	return []route{
		{open, "/", methods{get: a.shellGet}},
		{open, "/a/{hash}/{name}", methods{get: a.assetGet}},
		{open, "/sw.js", methods{get: a.workerGet}},
		{open, "/version.json", methods{get: a.versionGet}},
		{open, "/app.webmanifest", methods{get: a.manifestGet}},
		{open, "/recover", methods{get: a.recoverGet}},
		{open, "/recover/", methods{get: a.recoverGet}},
		{open, "/api/health", methods{get: a.healthGet}},
		{open, "/api/demo", methods{get: a.demoGet}},
		{open, "/api/calc", methods{get: a.calcList}},
		{open, "/api/calc/{name}", methods{post: a.calcRun}},
		{open, "/api/pair", methods{post: a.pairPost}},
		{paired, "/api/pair/code", methods{post: a.pairCodePost}},
		{paired, "/api/book", methods{get: a.bookGet}},
		{paired, "/api/ops", methods{get: a.opsPull, post: a.opsPush}},
		{paired, "/api/wanted", methods{get: a.wantedGet}},
		{paired, "/api/erasures", methods{get: a.erasuresGet}},
		{paired, "/api/export", methods{get: a.exportGet}},
		{paired, "/api/import", methods{post: a.importPost}},
		{paired, "/api/access", methods{get: a.accessGet}},
		{paired, "/api/devices", methods{get: a.devicesGet}},
		{paired, "/api/devices/{id}", methods{patch: a.devicePatch}},
		{paired, "/api/devices/{id}/revoke", methods{post: a.deviceRevoke}},
		{paired, "/api/blobs/missing", methods{post: a.blobsMissing}},
		{paired, "/api/blobs/{sha256:[0-9a-f]{64}}", methods{get: a.blobGet, put: a.blobPut}},
		{paired, "/api/blobs/{sha256:[0-9a-f]{64}}/part", methods{get: a.blobPartGet, patch: a.blobPartPatch}},
	}
}

// routes is the one place that knows the router.
func (a *app) routes() http.Handler {
	// Paths are taken as they come: cleaning would answer /a/../sw.js with a redirect.
	router := mux.NewRouter().SkipClean(true)
	for _, each := range a.table() {
		router.Handle(each.path, a.forAudience(each.who, each.actions))
	}
	router.NotFoundHandler = http.HandlerFunc(a.notFound)
	return router
}

func (a *app) forAudience(who audience, action http.Handler) http.Handler {
	if who == paired {
		return a.paired(action)
	}
	return action
}

// notFound does not tell a stranger which of the book's paths there are.
func (a *app) notFound(w http.ResponseWriter, r *http.Request) {
	who := audience(strings.HasPrefix(r.URL.Path, "/api/") && !strings.HasPrefix(r.URL.Path, "/api/calc/"))
	a.forAudience(who, http.HandlerFunc(notFound)).ServeHTTP(w, r)
}

// pathValue returns what stands in the path in place of {name}.
func pathValue(r *http.Request, name string) string {
	return mux.Vars(r)[name]
}

// methods holds the actions of one path. HEAD is GET without the body, which net/http leaves out by itself.
type methods map[string]http.HandlerFunc

func (m methods) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	method := r.Method
	if method == http.MethodHead {
		method = http.MethodGet
	}
	action, found := m[method]
	if !found {
		w.Header().Set("Allow", m.allowed())
		refuse(w, r, fault.New(fault.WrongMethod, "wrong_method", "This address takes "+m.allowed()+" only."))
		return
	}
	action(w, r)
}

func (m methods) allowed() string {
	names := slices.Collect(maps.Keys(m))
	if _, found := m[http.MethodGet]; found {
		names = append(names, http.MethodHead)
	}
	slices.Sort(names)
	return strings.Join(names, ", ")
}

func notFound(w http.ResponseWriter, r *http.Request) {
	refuse(w, r, fault.New(fault.NotFound, "not_found", "There is nothing at this address."))
}
