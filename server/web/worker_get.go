package web

import "net/http"

// workerGet answers with the service worker. Its address stays the same for ever and always leads to it: a phone that
// got a 404 or a page here would keep its old version for good.
func (a *app) workerGet(w http.ResponseWriter, r *http.Request) {
	a.sendPart(w, r, "sw.js")
}
