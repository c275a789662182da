package web_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"rimside/server/web"
)

// FuzzPath wants that no spelling of a path reaches the book unpaired, through the whole server.
func FuzzPath(f *testing.F) {
	for _, path := range []string{"/api/book", "//api/book", "/api/../api/book", "/API/book", "/api/book/", "/api/%2e%2e/api/book", "/api/calc/../book", "/api/calc/..%2fbook",
		"/api/pair/../export", "/%61pi/ops", "/api/ops?since=0", "/api/health/..;/book", "/a/x/../../api/devices", "/api/pair/code", "\\api\\book", "/api/book%00"} {
		f.Add("GET", path)
		f.Add("POST", path)
	}
	handler := handlerOf(f, web.Options{Access: mustPair})
	f.Fuzz(func(t *testing.T, method, path string) {
		where, err := url.ParseRequestURI(path)
		if err != nil || where.Host != "" || strings.ContainsAny(method, " \r\n") || method == "" {
			return // the network would not let this through
		}
		request := httptest.NewRequest(http.MethodGet, "http://localhost/", nil)
		request.Method, request.URL, request.RequestURI = method, where, path
		recorder := httptest.NewRecorder()
		handler.ServeHTTP(recorder, request)
		for _, text := range []string{`"digest"`, `"devices"`, `"expires_at"`, `"rimside":1`, `"stored"`, `"missing"`} {
			if strings.Contains(recorder.Body.String(), text) {
				t.Errorf("%s %q: status %d, %.200s", method, path, recorder.Code, recorder.Body)
			}
		}
	})
}
