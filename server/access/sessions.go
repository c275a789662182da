package access

import (
	"context"
	"net/http"
	"time"

	"github.com/gorilla/sessions"
)

// CookieLife is how long a phone stays paired without meeting the server.
const CookieLife = 180 * 24 * time.Hour

// renewAfter is how old a cookie gets before it is written anew: at each use would be noise.
const renewAfter = 24 * time.Hour

// Sessions tells paired devices by their cookies. A cookie holds the device's id and when it was issued, signed and
// encrypted; nothing about it is kept here.
type Sessions struct {
	store *sessions.CookieStore
	name  string
	now   func() time.Time
}

// NewSessions opens the sessions of a server. The name has the server's id in it, since cookies do not tell ports apart.
// secure is for a server whose pages come over https.
func NewSessions(ctx context.Context, secrets Secrets, server string, secure bool, now func() time.Time) (*Sessions, error) {
	keys, err := cookieKeys(ctx, secrets, now())
	if err != nil {
		return nil, err
	}
	var pairs [][]byte
	for _, key := range keys {
		pairs = append(pairs, key.Hash, key.Block)
	}
	store := sessions.NewCookieStore(pairs...)
	store.Options = &sessions.Options{Path: "/", HttpOnly: true, SameSite: http.SameSiteLaxMode, Secure: secure}
	store.MaxAge(int(CookieLife / time.Second)) // on the options and on the codecs, which otherwise end at 30 days
	return &Sessions{store: store, name: "rs-" + server, now: now}, nil
}

const (
	deviceValue = "device"
	issuedValue = "written" // as the cookies of before have it
)

// Device is the device that a request's cookie names, "" when there is none that is still good. An old cookie is due to be
// issued anew, so that whoever comes stays. One from the future is not: either the clock was ahead then, and the cookie is good
// for longer, or it is behind now, and a cookie of now would have ended once it is put right.
func (s *Sessions) Device(r *http.Request) (device string, old bool) {
	session, err := s.store.Get(r, s.name)
	if err != nil || session.IsNew {
		return "", false
	}
	device, _ = session.Values[deviceValue].(string)
	issued, _ := session.Values[issuedValue].(int64)
	return device, s.now().Sub(time.UnixMilli(issued)) >= renewAfter
}

// Begin pairs the browser that sent a request, or writes its cookie anew.
func (s *Sessions) Begin(w http.ResponseWriter, r *http.Request, device string) error {
	session, _ := s.store.Get(r, s.name) // whatever it held before
	session.Values = map[any]any{deviceValue: device, issuedValue: s.now().UnixMilli()}
	return session.Save(r, w)
}

// End takes the cookie away.
func (s *Sessions) End(w http.ResponseWriter) {
	http.SetCookie(w, &http.Cookie{Name: s.name, Path: "/", MaxAge: -1, HttpOnly: true, SameSite: http.SameSiteLaxMode, Secure: s.store.Options.Secure})
}
