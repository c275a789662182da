package trust

import (
	"bytes"
	"encoding/pem"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

func pageOf(t *testing.T, authority *Authority, origin string) func(method, path, host string) *httptest.ResponseRecorder {
	t.Helper()
	page, err := Page(authority, origin, func(host string) bool { return host == "car.local:7469" })
	if err != nil {
		t.Fatal(err)
	}
	return func(method, path, host string) *httptest.ResponseRecorder {
		request := httptest.NewRequest(method, path, nil)
		request.Host = host
		recorder := httptest.NewRecorder()
		page.ServeHTTP(recorder, request)
		return recorder
	}
}

func TestTheTrustPageHandsOutTheAuthorityAndNothingElse(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	ask := pageOf(t, authority, "https://car.local:7467")
	for _, test := range []struct {
		method, path, host string
		status             int
		kind, has          string
	}{
		{"GET", "/", "car.local:7469", 200, "text/html; charset=utf-8", `<a href="https://car.local:7467">https://car.local:7467</a>`},
		{"HEAD", "/", "car.local:7469", 200, "text/html; charset=utf-8", ""},
		{"GET", "/page.css", "car.local:7469", 200, "text/css; charset=utf-8", "color-scheme"},
		{"GET", "/qr.svg", "car.local:7469", 200, "image/svg+xml", "<svg"},
		{"GET", "/rimside-authority.crt", "car.local:7469", 200, "application/x-x509-ca-cert", string(authority.DER())},
		{"GET", "/rimside-authority.pem", "car.local:7469", 200, "application/x-pem-file", "BEGIN CERTIFICATE"},
		{"GET", "/", "evil.example", 421, "", "does not answer to that name"},
		{"POST", "/", "evil.example", 421, "", ""},
		{"OPTIONS", "/", "", 421, "", ""},
		{"POST", "/", "car.local:7469", 405, "", ""},
		{"DELETE", "/rimside-authority.crt", "car.local:7469", 405, "", ""},
		{"GET", "/api/book", "car.local:7469", 404, "", "nothing at this address"},
		{"GET", "/api/health", "car.local:7469", 404, "", ""},
		{"GET", "/../rimside.sqlite", "car.local:7469", 404, "", ""},
		{"GET", "//", "car.local:7469", 404, "", ""},
	} {
		got := ask(test.method, test.path, test.host)
		if got.Code != test.status || test.kind != "" && got.Header().Get("Content-Type") != test.kind || !strings.Contains(got.Body.String(), test.has) {
			t.Errorf("%s %s of %q: status %d, %s, %.200q", test.method, test.path, test.host, got.Code, got.Header().Get("Content-Type"), got.Body)
		}
		for name, want := range map[string]string{
			"Content-Security-Policy": "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
			"X-Content-Type-Options":  "nosniff", "Referrer-Policy": "no-referrer", "Cache-Control": "no-store",
			"Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Resource-Policy": "same-origin",
		} {
			if got.Header().Get(name) != want {
				t.Errorf("%s %s: %s is %q", test.method, test.path, name, got.Header().Get(name))
			}
		}
		if test.status == http.StatusMethodNotAllowed && got.Header().Get("Allow") != "GET, HEAD" {
			t.Errorf("%s %s: Allow is %q", test.method, test.path, got.Header().Get("Allow"))
		}
	}
}

func TestTheTrustPageShowsTheFingerprintOfWhatItHandsOut(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	ask := pageOf(t, authority, "https://car.local:7467")
	page := ask("GET", "/", "car.local:7469").Body.String()
	if !strings.Contains(page, spaced(authority.Fingerprint())) || strings.ReplaceAll(spaced(authority.Fingerprint()), " ", ":") != authority.Fingerprint() {
		t.Error("the page lacks the fingerprint")
	}
	block, _ := pem.Decode(ask("GET", "/rimside-authority.pem", "car.local:7469").Body.Bytes())
	der := ask("GET", "/rimside-authority.crt", "car.local:7469").Body.Bytes()
	if block == nil || !bytes.Equal(block.Bytes, der) || !bytes.Equal(der, authority.DER()) {
		t.Error("what it hands out is not one certificate")
	}
	for _, secret := range []string{"PRIVATE", "<script", "onload", "style=", "{origin}", "{fingerprint}"} {
		if strings.Contains(page, secret) {
			t.Errorf("the page holds %q", secret)
		}
	}
}

func TestAnAddressTooLongForACodeIsStillOnThePage(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	long := "https://" + strings.Repeat("a-long-name.", 12) + "example:7467"
	ask := pageOf(t, authority, long)
	if page := ask("GET", "/", "car.local:7469"); page.Code != http.StatusOK || !strings.Contains(page.Body.String(), long) || strings.Contains(page.Body.String(), "qr.svg") {
		t.Errorf("status %d: %.400s", page.Code, page.Body)
	}
	if picture := ask("GET", "/qr.svg", "car.local:7469"); picture.Code != http.StatusNotFound {
		t.Errorf("the picture has status %d", picture.Code)
	}
}

func TestTheTrustPageShowsNamesAsText(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	page := pageOf(t, authority, `https://"><script>alert(1)</script>`)("GET", "/", "car.local:7469").Body.String()
	if strings.Contains(page, "<script") || !strings.Contains(page, "&lt;script&gt;") {
		t.Error("a name is taken for markup")
	}
}
