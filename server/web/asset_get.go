package web

import "net/http"

// assetGet answers with a file whose address holds the hash of its content.
func (a *app) assetGet(w http.ResponseWriter, r *http.Request) {
	a.sendAsset(w, r, "a/"+pathValue(r, "hash")+"/"+pathValue(r, "name"))
}
