package web

import (
	"maps"
	"net/http"
	"slices"
	"strings"

	"github.com/gorilla/mux"
)

// routes is the one place that knows the router.
func (a *app) routes() http.Handler {
	// Paths are taken as they come: cleaning would answer /a/../sw.js with a redirect.
	router := mux.NewRouter().SkipClean(true)
	for path, actions := range map[string]methods{
		"/":                                {http.MethodGet: a.shellGet},
		"/a/{hash}/{name}":                 {http.MethodGet: a.assetGet},
		"/sw.js":                           {http.MethodGet: a.workerGet},
		"/version.json":                    {http.MethodGet: a.versionGet},
		"/app.webmanifest":                 {http.MethodGet: a.manifestGet},
		"/recover":                         {http.MethodGet: a.recoverGet},
		"/recover/":                        {http.MethodGet: a.recoverGet},
		"/api/health":                      {http.MethodGet: a.healthGet},
		"/api/demo":                        {http.MethodGet: a.demoGet},
		"/api/book":                        {http.MethodGet: a.bookGet},
		"/api/ops":                         {http.MethodGet: a.opsPull, http.MethodPost: a.opsPush},
		"/api/export":                      {http.MethodGet: a.exportGet},
		"/api/import":                      {http.MethodPost: a.importPost},
		"/api/calc":                        {http.MethodGet: a.calcList},
		"/api/calc/{name}":                 {http.MethodPost: a.calcRun},
		"/api/pair":                        {http.MethodPost: a.pairPost},
		"/api/pair/code":                   {http.MethodPost: a.pairCodePost},
		"/api/devices":                     {http.MethodGet: a.devicesGet},
		"/api/devices/{id}":                {http.MethodPatch: a.devicePatch},
		"/api/devices/{id}/revoke":         {http.MethodPost: a.deviceRevoke},
		"/api/blobs/missing":               {http.MethodPost: a.blobsMissing},
		"/api/blobs/{sha256:[0-9a-f]{64}}": {http.MethodGet: a.blobGet, http.MethodPut: a.blobPut},
	} {
		router.Handle(path, actions)
	}
	router.NotFoundHandler = http.HandlerFunc(notFound)
	return router
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
		refuse(w, r, problem{Code: wrongMethod, Message: "This address takes " + m.allowed() + " only."})
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
	refuse(w, r, problem{Code: nothingHere, Message: "There is nothing at this address."})
}
