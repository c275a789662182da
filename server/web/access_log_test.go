package web_test

import (
	"path/filepath"
	"testing"

	"rimside/server/access"
	"rimside/server/web"
)

func TestWhoCameToTheDoorIsNoted(t *testing.T) {
	server := startLogin(t, web.Options{Visitors: access.NewLog(filepath.Join(t.TempDir(), "access.log"))})
	one, two := server.pair(t, "one", ""), server.pair(t, "two", "")
	play(t, []scenario{
		{name: "a guess", server: server.running, method: "POST", path: "/api/pair", body: `{"code":"000001","label":"x"}`, status: 403, json: true},
		{name: "shut out", server: server.running, method: "POST", path: "/api/devices/" + two.Device + "/revoke", headers: one.headers(), status: 200},
		{name: "comes again", server: server.running, path: "/api/book", headers: two.headers(), status: 401, json: true},
		{name: "and again, within the minute", server: server.running, path: "/api/book", headers: two.headers(), status: 401, json: true},
		{name: "a guest", server: server.running, path: "/api/access", status: 401, json: true},
	})
	var got struct{ Visits []access.Visit }
	server.json(t, scenario{path: "/api/access", headers: one.headers()}, &got)
	want := []access.Visit{{What: access.Refused, Device: two.Device}, {What: access.Barred, Device: two.Device}, {What: access.Guessed},
		{What: access.Paired, Device: two.Device}, {What: access.Paired, Device: one.Device}}
	if len(got.Visits) != len(want) {
		t.Fatalf("%+v", got.Visits)
	}
	for i, visit := range got.Visits {
		if visit.What != want[i].What || visit.Device != want[i].Device || visit.From != "127.0.0.1" || visit.At == 0 {
			t.Errorf("visit %d is %+v, want %+v", i, visit, want[i])
		}
	}
}
