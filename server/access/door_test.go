package access

import (
	"context"
	"net"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"
)

// fakeStore keeps secrets and who is shut out in memory.
type fakeStore struct {
	secrets map[string][]byte
	out     map[string]bool
}

func newFake() *fakeStore { return &fakeStore{map[string][]byte{}, map[string]bool{}} }

func (f *fakeStore) Secret(_ context.Context, name string, make func() ([]byte, error)) ([]byte, error) {
	if value, found := f.secrets[name]; found {
		return value, nil
	}
	value, err := make()
	f.secrets[name] = value
	return value, err
}

func (f *fakeStore) PutSecret(_ context.Context, name string, value []byte) error {
	f.secrets[name] = value
	return nil
}

func (f *fakeStore) Revoked(_ context.Context, device string) (bool, error) {
	return f.out[device], nil
}
func (f *fakeStore) SeeDevice(context.Context, string) error { return nil }

func doorOf(t testing.TB, store *fakeStore, server string, policy Policy) *Door {
	t.Helper()
	sessions, err := NewSessions(t.Context(), store, server, false, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	return &Door{Sessions: sessions, Devices: store, Hosts: ForListener(&net.TCPAddr{IP: net.IPv4(127, 0, 0, 1)}, ""), Policy: policy}
}

func cookieOf(t testing.TB, d *Door, device string) string {
	t.Helper()
	recorder := httptest.NewRecorder()
	if err := d.Sessions.Begin(recorder, httptest.NewRequest(http.MethodPost, "/", nil), device); err != nil {
		t.Fatal(err)
	}
	cookie := recorder.Result().Cookies()[0]
	return cookie.Name + "=" + cookie.Value
}

func enter(t testing.TB, d *Door, cookie string) Entry {
	t.Helper()
	request := httptest.NewRequest(http.MethodGet, "/", nil)
	request.Header.Set("Cookie", cookie)
	entry, err := d.Enter(httptest.NewRecorder(), request)
	if err != nil {
		t.Fatal(err)
	}
	return entry
}

func TestKeysChangeWithoutSendingPhonesAway(t *testing.T) {
	store := newFake()
	old := cookieOf(t, doorOf(t, store, "s", Policy{Login: true}), "phone")
	rotate := func() *Door {
		t.Helper()
		if err := Rotate(t.Context(), store, time.Now()); err != nil {
			t.Fatal(err)
		}
		return doorOf(t, store, "s", Policy{Login: true})
	}
	second := rotate()
	if got := enter(t, second, old); !got.In || got.Device != "phone" {
		t.Errorf("after one change of keys: %+v", got)
	}
	fresh := cookieOf(t, second, "phone")
	third := rotate()
	if enter(t, third, old).In {
		t.Error("a cookie outlives two changes of keys")
	}
	if !enter(t, third, fresh).In {
		t.Error("a cookie of the key before is refused")
	}
}

func TestBrokenKeysAreSaidAtTheStart(t *testing.T) {
	for _, kept := range []string{"", "x", "[]", "null", `{"a":1}`, "[{}]", `[{"Hash":"QQ==","Block":"QQ=="}]`} {
		store := newFake()
		store.secrets[cookieSecret] = []byte(kept)
		if _, err := NewSessions(t.Context(), store, "s", false, time.Now); err == nil {
			t.Errorf("keys %q are taken", kept)
		}
	}
}

func TestWhoeverIsShutOutMayStillSitAtTheMachine(t *testing.T) {
	store := newFake()
	guarded, open := doorOf(t, store, "s", Policy{Login: true}), doorOf(t, store, "s", Policy{})
	cookie := cookieOf(t, guarded, "phone")
	store.out["phone"] = true
	if got := enter(t, guarded, cookie); got.In || !got.Revoked || got.Device != "" {
		t.Errorf("shut out: %+v", got)
	}
	request := httptest.NewRequest(http.MethodGet, "http://localhost/", nil)
	request.RemoteAddr = "127.0.0.1:1"
	request.Header.Set("Cookie", cookie)
	if got, err := open.Enter(httptest.NewRecorder(), request); err != nil || !got.In || got.Device != "" {
		t.Errorf("at the machine itself: %+v %v", got, err)
	}
}

func TestThePeerBehindAProxyIsWhomTheProxyNoted(t *testing.T) {
	for _, test := range []struct {
		noted  []string
		behind bool
		want   string
	}{
		{nil, false, "192.0.2.1"}, {[]string{"10.0.0.1"}, false, "192.0.2.1"},
		{nil, true, "192.0.2.1"}, {[]string{"10.0.0.1"}, true, "10.0.0.1"}, {[]string{"1.1.1.1, 10.0.0.1"}, true, "10.0.0.1"},
		{[]string{"1.1.1.1", "2.2.2.2,10.0.0.1 "}, true, "10.0.0.1"}, {[]string{"10.0.0.1, nonsense"}, true, "192.0.2.1"}, {[]string{""}, true, "192.0.2.1"},
		{[]string{"::ffff:10.0.0.1"}, true, "10.0.0.1"}, {[]string{"2001:db8::1"}, true, "2001:db8::1"},
	} {
		request := httptest.NewRequest(http.MethodGet, "/", nil)
		request.RemoteAddr = "192.0.2.1:1234"
		request.Header["X-Forwarded-For"] = test.noted
		if got := peer(request, test.behind).String(); got != test.want {
			t.Errorf("%q, behind a proxy %v: %s, want %s", test.noted, test.behind, got, test.want)
		}
	}
}
