package web_test

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"rimside/server/access"
	"rimside/server/web"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

func TestACodePairsOnePhoneOnce(t *testing.T) {
	server := startLogin(t, web.Options{})
	server.code(t, "042137")
	try := func(name, code string, status int, has string) scenario {
		return scenario{name: name, server: server.running, method: "POST", path: "/api/pair", body: `{"code":"` + code + `","label":"Ana"}`, status: status, json: status != 200, has: []string{has}}
	}
	play(t, []scenario{
		try("wrong", "042138", 403, `"wrong_code"`),
		try("as people type it", " 042-137 ", 200, `"device":"`),
		try("a second time", "042137", 403, `"wrong_code"`),
	})
}

func TestTheCookieIsForThisServerAloneAndOutOfReachOfScripts(t *testing.T) {
	for name, secure := range map[string]bool{"http": false, "https": true} {
		t.Run(name, func(t *testing.T) {
			server := startLogin(t, web.Options{Access: web.Access{Secure: secure}})
			server.code(t, "123456")
			response, _ := exchange(t, server.addr, scenario{server: server.running, method: "POST", path: "/api/pair", body: `{"code":"123456","label":"x"}`}.request())
			about, err := server.book.About(t.Context())
			if err != nil || len(response.Cookies()) != 1 {
				t.Fatal(err, response.Header)
			}
			c := response.Cookies()[0]
			if c.Name != "rs-"+about.Server || c.Path != "/" || c.Domain != "" || !c.HttpOnly || c.Secure != secure || c.SameSite != http.SameSiteLaxMode || c.MaxAge != 180*24*3600 {
				t.Errorf("%s", response.Header.Get("Set-Cookie"))
			}
		})
	}
}

func TestWhatAPairingMustHold(t *testing.T) {
	// Behind a proxy each row may come from an address of its own, so that nobody has to wait.
	server := start(t, web.Options{Access: web.Access{Policy: access.Policy{BehindProxy: true}}})
	var scenarios []scenario
	for i, row := range []struct{ body, field string }{
		{``, ""}, {`null`, ""}, {`[]`, ""}, {`{`, ""}, {`{"label":"x"}`, "code"}, {`{"code":123456,"label":"x"}`, "code"},
		{`{"code":"12345","label":"x"}`, "code"}, {`{"code":"1234567","label":"x"}`, "code"}, {`{"code":"１２３４５６","label":"x"}`, "code"}, {`{"code":"12345a","label":"x"}`, "code"},
		{`{"code":"123456"}`, "label"}, {`{"code":"123456","label":7}`, "label"}, {`{"code":"123456","label":" \n "}`, "label"},
		{`{"code":"123456","label":"` + strings.Repeat("é", 61) + `"}`, "label"},
		{`{"code":"123456","label":"x","device":"me"}`, "device"}, {`{"code":"123456","label":"x","device":7}`, "device"},
	} {
		scenarios = append(scenarios, scenario{name: row.body, server: server, method: "POST", path: "/api/pair", headers: map[string]string{"X-Forwarded-For": fmt.Sprintf("192.0.2.%d", i)},
			body: row.body, status: 422, json: true, has: []string{`"bad_request"`, `"field":"` + row.field + `"`}})
	}
	play(t, append(scenarios,
		scenario{name: "too large", server: server, method: "POST", path: "/api/pair", body: strings.Repeat(" ", 5000), status: 413, json: true, has: []string{"4 KiB"}},
		scenario{name: "a form", server: server, method: "POST", path: "/api/pair", headers: map[string]string{"Content-Type": "application/x-www-form-urlencoded"}, body: "code=1", status: 415, json: true},
		scenario{name: "GET", server: server, path: "/api/pair", status: 405, json: true},
		scenario{name: "another site’s page", server: server, method: "POST", path: "/api/pair", headers: map[string]string{"Sec-Fetch-Site": "cross-site"}, body: "{}", status: 403, json: true, has: []string{`"foreign_page"`}},
	))
}

func TestFiftyWrongGuessesEndACodeAndAStrangersFewDoNot(t *testing.T) {
	now := time.Now()
	server := startLogin(t, web.Options{Now: func() time.Time { return now }, Access: web.Access{Policy: access.Policy{BehindProxy: true}}})
	guess := func(from int, code string, status int) {
		t.Helper()
		now = now.Add(2 * time.Second) // as fast as the server takes them from everywhere
		s := scenario{server: server.running, method: "POST", path: "/api/pair", headers: map[string]string{"X-Forwarded-For": fmt.Sprintf("192.0.2.%d", from)},
			body: `{"code":"` + code + `","label":"x"}`, status: status, json: status != 200}
		s.check(t)
	}
	for _, test := range []struct{ wrong, status int }{{sqlite.CodeTries - 1, 200}, {sqlite.CodeTries, 403}} {
		server.code(t, "500000")
		for i := range test.wrong { // each from an address of its own
			guess(i, "100000", 403)
		}
		guess(99, "500000", test.status)
	}
}

func TestGuessingIsSlow(t *testing.T) {
	now := time.Now()
	server := startLogin(t, web.Options{Now: func() time.Time { return now }, Access: web.Access{Policy: access.Policy{BehindProxy: true}}})
	try := func(name, from string, status int) scenario {
		s := scenario{name: name, server: server.running, method: "POST", path: "/api/pair", headers: map[string]string{"X-Forwarded-For": from}, body: `{"code":"000000","label":"x"}`, status: status, json: true}
		if status == http.StatusTooManyRequests {
			s.wantHeaders, s.has = map[string]string{"Retry-After": "30"}, []string{`"too_many_tries"`}
		}
		return s
	}
	var scenarios []scenario
	for range 5 {
		scenarios = append(scenarios, try("at first", "192.0.2.1", 403))
	}
	scenarios = append(scenarios, try("then", "192.0.2.1", 429), try("another, invented by the first", "10.0.0.1, 192.0.2.1", 429),
		try("another", "192.0.2.2", 403), try("a whole network of IPv6 is one", "2001:db8::1", 403))
	for n := range 4 {
		scenarios = append(scenarios, try("the same network", fmt.Sprintf("2001:db8::%d:1", n+2), 403))
	}
	scenarios = append(scenarios, try("the same network, then", "2001:db8::9:9", 429), try("another network", "2001:db8:0:1::1", 403))
	play(t, scenarios)
	now = now.Add(30 * time.Second)
	play(t, []scenario{try("after half a minute", "192.0.2.1", 403), try("once", "192.0.2.1", 429)})
}

// Every phone of a book knows the ids of all others. Saying one does not make it one's own.
func TestNobodyClaimsTheIdOfAnother(t *testing.T) {
	server := startLogin(t, web.Options{})
	owner := server.pair(t, "Ana", oplog.NewID())
	server.push(t, owner, bookA)
	thief := server.pair(t, "Not Ana", owner.Device)
	if thief.Device == owner.Device {
		t.Fatal("a claimed id was given away")
	}
	if got := server.devices(t, owner); got[owner.Device].Label != "Ana" || got[thief.Device].Label != "Not Ana" {
		t.Errorf("the devices are %+v", got)
	}
	scenario{server: server.running, method: "POST", path: "/api/devices/" + thief.Device + "/revoke", headers: owner.headers(), status: 200}.check(t)
	scenario{name: "the owner stays", server: server.running, path: "/api/book", headers: owner.headers(), status: 200}.check(t)
	scenario{name: "the thief is out", server: server.running, path: "/api/book", headers: thief.headers(), status: 401, json: true}.check(t)
}

func TestAnErasedPhonesNameIsGone(t *testing.T) {
	server := startLogin(t, web.Options{})
	one, two := server.pair(t, "one", ""), server.pair(t, "Zwetschgenwind", "")
	server.push(t, one, bookA, strings.NewReplacer(`"kind":"tyre"`, `"kind":"erase"`, "7ec00000000000000000000000000000", two.Device).Replace(opText(id(1), `{"kind":"device"}`, "")))
	if got := server.devices(t, one)[two.Device]; got.Label != "" || !got.Revoked {
		t.Errorf("the erased device is %+v", got)
	}
}

func TestOnlyACertificateOfOnesOwnAsksForHTTPSAlways(t *testing.T) {
	for strict, want := range map[bool]string{true: "max-age=31536000", false: ""} {
		server := start(t, web.Options{Access: web.Access{Secure: true, Strict: strict}})
		scenario{server: server, path: "/", status: 200, wantHeaders: map[string]string{"Strict-Transport-Security": want}}.check(t)
	}
}

func TestAPhoneKeepsItsIdentityUnlessItWasShutOut(t *testing.T) {
	server := startLogin(t, web.Options{})
	own := oplog.NewID()
	first := server.pair(t, "Ana", own)
	if first.Device != own || first.Book != "" {
		t.Errorf("paired as %s with the book %q, want its own id and no book yet", first.Device, first.Book)
	}
	server.push(t, first, bookA)
	if again := server.pairAgain(t, first, "Ana’s new name"); again.Device != own || again.Book != bookA {
		t.Errorf("paired anew as %+v", again)
	}
	if got := server.devices(t, first)[own]; got.Label != "Ana’s new name" {
		t.Errorf("the device is %+v", got)
	}
	server.push(t, first, bookA, deviceOp(1, own, `{"revoked":true}`))
	later := server.pair(t, "Ana", own)
	if later.Device == own || later.Device == "" {
		t.Errorf("whoever was shut out came back as %q", later.Device)
	}
	if shown := server.devices(t, later); !shown[own].Revoked || shown[own].Here || shown[later.Device].Revoked || !shown[later.Device].Here {
		t.Errorf("%+v", shown)
	}
}

func TestAPairedPhoneMakesACodeForTheNext(t *testing.T) {
	server := startLogin(t, web.Options{})
	phone := server.pair(t, "first", "")
	var made struct {
		Code      string
		ExpiresAt int64 `json:"expires_at"`
	}
	server.json(t, scenario{method: "POST", path: "/api/pair/code", headers: phone.headers()}, &made)
	left := time.Until(time.UnixMilli(made.ExpiresAt))
	if _, fine := access.ReadCode(made.Code); !fine || left > 10*time.Minute || left < 9*time.Minute {
		t.Fatalf("%+v", made)
	}
	scenario{server: server.running, method: "POST", path: "/api/pair", body: `{"code":"` + made.Code + `","label":"second"}`, status: 200}.check(t)
}
