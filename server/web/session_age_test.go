package web_test

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"rimside/server/web"
	"rimside/store/sqlite"
)

const day = 24 * time.Hour

// In a bubble the clock of the cookies' own library stands still too, and months pass in no time. The book is opened
// outside, as it works in the background.
func TestACookieLivesForHalfAYearFromItsLastUse(t *testing.T) {
	book, blobs := newBook(t, t.TempDir())
	synctest.Test(t, func(t *testing.T) {
		handler := handlerOf(t, web.Options{Book: book, Blobs: blobs, Access: mustPair})
		cookie := pairAt(t, handler, book)
		if status, renewed := visit(handler, cookie); status != 200 || renewed != "" {
			t.Errorf("at once: status %d, renewed %q", status, renewed)
		}
		time.Sleep(31 * day) // where the library ends by itself
		status, renewed := visit(handler, cookie)
		if status != 200 || renewed == "" || renewed == cookie {
			t.Fatalf("after 31 days: status %d, renewed %q", status, renewed)
		}
		time.Sleep(148 * day) // 179 days since the first
		if status, _ := visit(handler, cookie); status != 200 {
			t.Errorf("after 179 days: status %d", status)
		}
		time.Sleep(2 * day) // 181 since the first, 150 since the renewal
		if status, _ := visit(handler, cookie); status != 401 {
			t.Errorf("after 181 days: status %d, want 401", status)
		}
		if status, _ := visit(handler, renewed); status != 200 {
			t.Errorf("the renewed one after 150 days: status %d", status)
		}
		time.Sleep(31 * day)
		if status, again := visit(handler, renewed); status != 401 || again != "" {
			t.Errorf("the renewed one after 181 days: status %d, renewed %q", status, again)
		}
	})
}

func TestWhoeverIsShutOutGetsNoRenewedCookie(t *testing.T) {
	book, blobs := newBook(t, t.TempDir())
	synctest.Test(t, func(t *testing.T) {
		handler := handlerOf(t, web.Options{Book: book, Blobs: blobs, Access: mustPair})
		cookie := pairAt(t, handler, book)
		devices, err := book.Devices(t.Context())
		if err != nil || len(devices) != 1 {
			t.Fatal(devices, err)
		}
		if err := book.NoteDevice(t.Context(), devices[0].ID, "revoked", true); err != nil {
			t.Fatal(err)
		}
		time.Sleep(31 * day)
		request := bookRequest(cookie)
		recorder := httptest.NewRecorder()
		handler.ServeHTTP(recorder, request)
		if set := recorder.Header().Values("Set-Cookie"); recorder.Code != 401 || len(set) != 1 || !strings.Contains(set[0], "=; Path=/; Max-Age=0") {
			t.Errorf("status %d, cookies %q", recorder.Code, set)
		}
	})
}

// A cookie is never renewed backwards: while a clock is behind that would end it once the clock is put right.
func TestACookieIsNeverRenewedBackwards(t *testing.T) {
	book, blobs := newBook(t, t.TempDir())
	var cookie string
	synctest.Test(t, func(t *testing.T) {
		time.Sleep(400 * day)
		cookie = pairAt(t, handlerOf(t, web.Options{Book: book, Blobs: blobs, Access: mustPair}), book)
	})
	synctest.Test(t, func(t *testing.T) {
		if status, renewed := visit(handlerOf(t, web.Options{Book: book, Blobs: blobs, Access: mustPair}), cookie); status != 200 || renewed != "" {
			t.Errorf("status %d, renewed %q", status, renewed)
		}
	})
}

func pairAt(t *testing.T, handler http.Handler, book *sqlite.Book) (cookie string) {
	t.Helper()
	if err := book.AddCode(t.Context(), "123456", time.Now().Add(sqlite.CodeTime), 1); err != nil {
		t.Fatal(err)
	}
	request := httptest.NewRequest(http.MethodPost, "http://localhost/api/pair", strings.NewReader(`{"code":"123456","label":"x"}`))
	recorder := httptest.NewRecorder()
	handler.ServeHTTP(recorder, request)
	cookies := recorder.Result().Cookies()
	if len(cookies) != 1 {
		t.Fatalf("status %d, %s", recorder.Code, recorder.Body)
	}
	return cookies[0].Name + "=" + cookies[0].Value
}

func bookRequest(cookie string) *http.Request {
	request := httptest.NewRequest(http.MethodGet, "http://localhost/api/book", nil)
	request.Header.Set("Cookie", cookie)
	return request
}

// visit asks for the book and tells which new cookie came back, "" for none.
func visit(handler http.Handler, cookie string) (status int, renewed string) {
	recorder := httptest.NewRecorder()
	handler.ServeHTTP(recorder, bookRequest(cookie))
	for _, each := range recorder.Result().Cookies() {
		renewed = each.Name + "=" + each.Value
	}
	return recorder.Code, renewed
}
