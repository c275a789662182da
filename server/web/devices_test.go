package web_test

import (
	"strings"
	"testing"

	"rimside/server/web"
	"rimside/store/oplog"
)

func TestDevicesAreNamedAndShutOutBeforeThereIsABook(t *testing.T) {
	checkDevices(t, startLogin(t, web.Options{}), "")
}

func TestDevicesAreNamedAndShutOutInTheLog(t *testing.T) {
	checkDevices(t, startLogin(t, web.Options{}), bookA)
}

func checkDevices(t *testing.T, server *guarded, book string) {
	t.Helper()
	one, two := server.pair(t, "one", ""), server.pair(t, "  two ", "")
	if book != "" {
		server.push(t, one, book, deviceOp(1, one.Device, `{"label":"first"}`))
	}
	at := "/api/devices/" + two.Device
	patch := func(name, path, body string, status int, has ...string) scenario {
		return scenario{name: name, server: server.running, method: "PATCH", path: path, headers: one.headers(), body: body, status: status, json: status != 200, has: has}
	}
	headers := one.headers()
	play(t, []scenario{
		patch("rename", at, `{"label":" The <b>car</b> "}`, 200, `"label":"The \u003cb\u003ecar\u003c/b\u003e"`, two.Device),
		patch("rename again", at, `{"label":"The car"}`, 200, `"label":"The car"`),
		patch("no name", at, `{}`, 422, `"field":"label"`),
		patch("empty name", at, `{"label":"   "}`, 422, `"field":"label"`),
		patch("long name", at, `{"label":"`+strings.Repeat("x", 61)+`"}`, 422, "60"),
		patch("a number", at, `{"label":1}`, 422, `"field":"label"`),
		patch("not an object", at, `[]`, 422, `"bad_request"`),
		patch("nothing", at, ``, 422, `"bad_request"`),
		patch("nobody", "/api/devices/"+oplog.NewID(), `{"label":"x"}`, 404, `"field":"id"`),
		patch("no id", "/api/devices/%27%3B--", `{"label":"x"}`, 404, `"field":"id"`),
		{name: "shut nobody out", server: server.running, method: "POST", path: "/api/devices/" + oplog.NewID() + "/revoke", headers: headers, status: 404, json: true},
		{name: "shut out", server: server.running, method: "POST", path: at + "/revoke", headers: headers, status: 200, has: []string{`"revoked":true`}},
		{name: "shut out twice", server: server.running, method: "POST", path: at + "/revoke", headers: headers, status: 200, has: []string{`"revoked":true`}},
		patch("a name for who is out", at, `{"label":"Lost"}`, 200, `"revoked":true`, `"Lost"`),
		{name: "is out", server: server.running, path: "/api/book", headers: two.headers(), status: 401, json: true, has: []string{`"shut_out"`}},
		{name: "is not let in by itself", server: server.running, method: "POST", path: at + "/revoke", headers: two.headers(), status: 401, json: true},
	})
	shown := server.devices(t, one)
	if len(shown) != 2 || !shown[one.Device].Here || shown[two.Device].Here || shown[two.Device].Label != "Lost" || shown[two.Device].PairedAt == 0 || shown[one.Device].SeenAt == 0 {
		t.Errorf("%+v", shown)
	}
}

func TestNoOpLetsAShutOutPhoneBackIn(t *testing.T) {
	server := startLogin(t, web.Options{})
	one, two := server.pair(t, "one", ""), server.pair(t, "two", "")
	server.push(t, one, bookA, deviceOp(1, two.Device, `{"revoked":true}`))
	server.push(t, one, bookA, deviceOp(2, two.Device, `{"revoked":false}`), deviceOp(3, two.Device, `{"deleted":true}`))
	scenario{server: server.running, path: "/api/book", headers: two.headers(), status: 401, json: true}.check(t)
}

// Trust is at team level: what a shut-out phone wrote is taken from whoever carries it, and the log says who that was.
func TestEntriesOfAShutOutPhoneAreTakenFromOthers(t *testing.T) {
	server := startLogin(t, web.Options{})
	carrier, lost := server.pair(t, "carrier", ""), server.pair(t, "lost", "")
	server.push(t, carrier, bookA, deviceOp(1, lost.Device, `{"revoked":true}`))
	server.push(t, carrier, bookA, opText(id(2), `{"x":1}`, `,"device":"`+lost.Device+`"`))
	var got page
	server.json(t, scenario{path: "/api/ops?book=" + bookA, headers: carrier.headers()}, &got)
	last := len(got.Ops) - 1
	if !strings.Contains(string(got.Ops[last]), lost.Device) || got.Via[last].ID != id(2) || got.Via[last].Device != carrier.Device {
		t.Errorf("%s by way of %+v", got.Ops[last], got.Via[last])
	}
}

// The door's own writing, such as a name, is marked with whose session asked for it.
func TestWhatTheServerWritesCarriesWhoAsked(t *testing.T) {
	server := startLogin(t, web.Options{})
	one := server.pair(t, "one", "")
	server.push(t, one, bookA)
	two := server.pair(t, "two", "")
	scenario{server: server.running, method: "PATCH", path: "/api/devices/" + two.Device, headers: one.headers(), body: `{"label":"2"}`, status: 200}.check(t)
	var got page
	server.json(t, scenario{path: "/api/ops", headers: one.headers()}, &got)
	if len(got.Via) != 2 || got.Via[0].Device != two.Device || got.Via[1].Device != one.Device || !strings.Contains(string(got.Ops[1]), `"bases":{"label":["`+got.Via[0].ID+`"]}`) {
		t.Errorf("%s by way of %+v", got.Ops, got.Via)
	}
}
