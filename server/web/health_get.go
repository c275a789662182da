package web

import (
	"fmt"
	"net/http"
)

// healthGet says that the server runs, and which version of the app it hands out.
func (a *app) healthGet(w http.ResponseWriter, _ *http.Request) {
	answer(w, http.StatusOK, "application/json", fmt.Appendf(nil, `{"ok":true,"version":%q}`, a.version))
}
