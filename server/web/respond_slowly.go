package web

import (
	"net/http"
	"time"
)

// longTime is how long a whole book may take to go in or out over a slow network.
const longTime = 15 * time.Minute

// mayTakeLong lifts the usual limits off one request.
func mayTakeLong(w http.ResponseWriter) {
	control := http.NewResponseController(w)
	until := time.Now().Add(longTime)
	_ = control.SetReadDeadline(until)  // a writer without deadlines needs none lifted
	_ = control.SetWriteDeadline(until) //
}
