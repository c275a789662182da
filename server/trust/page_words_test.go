package trust

import (
	"io"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"

	"rimside/server/words"
)

func TestTheTrustPageSpeaksTheLanguageThatIsWanted(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	page, err := Page(authority, "https://car.local:7467", func(string) bool { return true })
	if err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(page)
	defer server.Close()
	says := map[string]string{"en": "<h1>Trust this Rimside server, once per phone</h1>", "de": "<h1>Diesem Rimside-Server vertrauen, einmal je Telefon</h1>"}
	for _, test := range []struct {
		accepts []string
		want    string
	}{
		{nil, "en"},
		{[]string{""}, "en"},
		{[]string{"de"}, "de"},
		{[]string{"de-AT,de;q=0.9,en;q=0.8"}, "de"},
		{[]string{"DE-ch"}, "de"},
		{[]string{"en-GB,en;q=0.9,de;q=0.8"}, "en"},
		{[]string{"en;q=0.3, de;q=0.7"}, "de"},
		{[]string{"fr-FR,fr;q=0.9,de;q=0.5,en;q=0.4"}, "de"},
		{[]string{"fr", "de"}, "de"}, // one header in two lines
		{[]string{"fr"}, "en"},
		{[]string{"*"}, "en"},
		{[]string{"de;q=0"}, "en"},
		{[]string{"den, deu"}, "en"},
		{[]string{"de;q=2"}, "en"},
		{[]string{"de;q=NaN, de;q=x, de;level=1"}, "en"},
		{[]string{";;,,=;q=, -"}, "en"},
	} {
		request, err := http.NewRequest(http.MethodGet, server.URL+"/", nil)
		if err != nil {
			t.Fatal(err)
		}
		request.Header["Accept-Language"] = test.accepts
		answer, err := server.Client().Do(request)
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(answer.Body)
		_ = answer.Body.Close()
		if err != nil {
			t.Fatal(err)
		}
		if answer.Header.Get("Vary") != "Accept-Language" || answer.Header.Get("Content-Language") != test.want {
			t.Errorf("%q: Vary %q, Content-Language %q", test.accepts, answer.Header.Get("Vary"), answer.Header.Get("Content-Language"))
		}
		for _, part := range []string{`<html lang="` + test.want + `">`, says[test.want], spaced(authority.Fingerprint()), `<a href="https://car.local:7467">`} {
			if !strings.Contains(string(body), part) {
				t.Errorf("%q: the page lacks %s", test.accepts, part)
			}
		}
		if strings.ContainsAny(string(body), "{}") {
			t.Errorf("%q: the page has a hole left", test.accepts)
		}
	}
}

func TestEveryTextOfTheTrustPageStandsOnItInEachLanguage(t *testing.T) {
	for key := range pageWords {
		if !strings.Contains(pageHTML, "{"+key+"}") {
			t.Errorf("%s stands nowhere on the page", key)
		}
	}
	for _, each := range words.Missing(pageWords) {
		t.Errorf("the trust page has no text for %s", each)
	}
	bare := regexp.MustCompile(`>([^<>{}]*\pL[^<>{}]*)<`)
	for _, found := range bare.FindAllStringSubmatch(pageHTML, -1) {
		if text := strings.TrimSpace(found[1]); text != "Rimside authority" && text != "rimside-authority" { // names, the same everywhere
			t.Errorf("%q stands on the page in one language only", text)
		}
	}
}
