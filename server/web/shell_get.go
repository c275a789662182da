package web

import (
	"net/http"

	"rimside/store/fault"
)

var errNotBuilt = fault.New(fault.Unready, "not_built", "The app is not built yet. Run go generate ./... in the checkout, then start Rimside again.")

const notBuiltPage = `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Rimside is not built</title>
<h1>Rimside is not built yet</h1>
<p>Run <code>go generate ./...</code> in the checkout, then start Rimside again.</p>
</html>
`

// shellGet answers with the app's page.
func (a *app) shellGet(w http.ResponseWriter, r *http.Request) {
	if a.version == "" {
		answer(w, statuses[errNotBuilt.Kind], contentTypes[".html"], []byte(notBuiltPage))
		return
	}
	a.sendAsset(w, r, "index.html")
}
