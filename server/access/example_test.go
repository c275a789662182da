package access_test

import (
	"context"
	"fmt"
	"net/http/httptest"
	"os"
	"time"

	"rimside/server/access"
	"rimside/store/blob"
	"rimside/store/sqlite"
)

// A code lets one phone in, once. From then on its cookie says who it is, until somebody revokes it.
func ExampleSessions() {
	ctx := context.Background()
	dir, err := os.MkdirTemp("", "rimside-example-")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	book, err := sqlite.Open(dir, sqlite.Options{Blobs: blob.In})
	if err != nil {
		panic(err)
	}
	defer book.Close()
	about, _ := book.About(ctx)
	sessions, err := access.NewSessions(ctx, book, about.Server, false, time.Now)
	if err != nil {
		panic(err)
	}

	code := access.NewCode()
	_ = book.AddCode(ctx, code, time.Now().Add(sqlite.CodeTime), 5)
	typed, _ := access.ReadCode(access.SpokenCode(code))
	first, _ := book.TakeCode(ctx, typed)
	second, _ := book.TakeCode(ctx, typed)
	fmt.Println("the code lets in:", first, "and once more:", second)

	const phone = "d0000000000000000000000000000000"
	answer := httptest.NewRecorder()
	_ = book.Pair(ctx, phone, "Blue phone")
	_ = sessions.Begin(answer, httptest.NewRequest("POST", "/api/pair", nil), phone)
	request := httptest.NewRequest("GET", "/api/book", nil)
	request.AddCookie(answer.Result().Cookies()[0])
	device, _ := sessions.Device(request)
	fmt.Println("it is known again:", device == phone)

	_ = book.NoteDevice(ctx, phone, "revoked", true)
	revoked, _ := book.Revoked(ctx, phone)
	fmt.Println("revoked:", revoked)
	// Output:
	// the code lets in: true and once more: false
	// it is known again: true
	// revoked: true
}
