package sqlite_test

import (
	"bytes"
	"fmt"
	"testing"
	"time"

	"rimside/store/blob"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

func isRevoked(t *testing.T, book *sqlite.Book, device string) bool {
	t.Helper()
	out, err := book.Revoked(t.Context(), device)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestShuttingOutIsOneWay(t *testing.T) {
	book := open(t, t.TempDir())
	one, two, three := oplog.NewID(), oplog.NewID(), oplog.NewID()
	push(t, book, op(oplog.NewID(), one, "device", `{"label":"Ana’s phone"}`), op(oplog.NewID(), two, "device", `{"revoked":false}`), op(oplog.NewID(), three, "device", `{"label":"lost"}`))
	if isRevoked(t, book, one) || isRevoked(t, book, two) || isRevoked(t, book, oplog.NewID()) {
		t.Fatal("a device is shut out that nobody shut out")
	}
	push(t, book, op(oplog.NewID(), one, "device", `{"revoked":true}`), op(oplog.NewID(), two, "tyre", `{"revoked":true}`))
	if !isRevoked(t, book, one) || isRevoked(t, book, two) {
		t.Error("shut out is not who was shut out")
	}
	push(t, book, op(oplog.NewID(), one, "device", `{"revoked":false}`), op(oplog.NewID(), one, "device", `{"label":"me again"}`))
	if !isRevoked(t, book, one) {
		t.Error("a device has let itself in again")
	}
	push(t, book, op(oplog.NewID(), three, oplog.KindErase, `{"kind":"device"}`))
	if !isRevoked(t, book, three) {
		t.Error("an erased device may still come in")
	}
}

func TestDevicesAreListedByWhoCameLast(t *testing.T) {
	at := noon
	book, err := sqlite.Open(t.TempDir(), sqlite.Options{Now: func() time.Time { return at }, Blobs: blob.In})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	one, two := oplog.NewID(), oplog.NewID()
	for n, device := range []string{one, two} {
		at = at.Add(time.Minute)
		if err := book.Pair(t.Context(), device, fmt.Sprint("phone ", n)); err != nil {
			t.Fatal(err)
		}
	}
	at = at.Add(time.Minute)
	if err := book.SeeDevice(t.Context(), one); err != nil {
		t.Fatal(err)
	}
	push(t, book, op(oplog.NewID(), two, "device", `{"label":"The car’s laptop","revoked":true}`))
	found, err := book.Devices(t.Context())
	if err != nil || len(found) != 2 {
		t.Fatalf("%v, %v", found, err)
	}
	first := sqlite.Device{ID: one, Label: "phone 0", PairedAt: noon.Add(time.Minute).UnixMilli(), SeenAt: at.UnixMilli()}
	second := sqlite.Device{ID: two, Label: "The car’s laptop", PairedAt: noon.Add(2 * time.Minute).UnixMilli(), SeenAt: noon.Add(2 * time.Minute).UnixMilli(), Revoked: true}
	if found[0] != first || found[1] != second {
		t.Errorf("listed are %+v", found)
	}
}

func TestACodeIsGoodOnceForTenMinutesAndFortyNineWrongGuesses(t *testing.T) {
	at, running := noon, time.Hour
	book, err := sqlite.Open(t.TempDir(), sqlite.Options{Now: func() time.Time { return at }, Running: func() time.Duration { return running }, Blobs: blob.In})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	add := func(code string) {
		t.Helper()
		if err := book.AddCode(t.Context(), code, at.Add(sqlite.CodeTime), 3); err != nil {
			t.Fatal(err)
		}
	}
	take := func(code string) bool {
		t.Helper()
		taken, err := book.TakeCode(t.Context(), code)
		if err != nil {
			t.Fatal(err)
		}
		return taken
	}
	add("123456")
	if !take("123456") || take("123456") {
		t.Error("a code is not good just once")
	}
	add("234567")
	running += sqlite.CodeTime - time.Millisecond
	if !take("234567") {
		t.Error("a code ends too early")
	}
	add("345678")
	running += sqlite.CodeTime
	if take("345678") {
		t.Error("a code is good for too long")
	}
	add("456789")
	for range sqlite.CodeTries - 1 {
		take("000000")
	}
	if !take("456789") {
		t.Error("a code dies too early")
	}
	add("567890")
	for range sqlite.CodeTries {
		take("000000")
	}
	if take("567890") {
		t.Error("a code survives guessing")
	}
	for n := range 4 {
		running += time.Second
		add(fmt.Sprintf("10000%d", n))
	}
	if take("100000") || !take("100001") || !take("100003") {
		t.Error("not the newest three codes are good")
	}
}

// A clock that is put right, or wrong, neither ends a code nor keeps it; a machine that was started anew has none.
func TestACodeLivesByRunningTime(t *testing.T) {
	for name, jump := range map[string]time.Duration{"1970": time.Unix(0, 0).Sub(noon), "400 days ahead": 400 * 24 * time.Hour, "11 years ahead": 11 * 365 * 24 * time.Hour, "200 days back": -200 * 24 * time.Hour} {
		for _, there := range []bool{true, false} { // and back again
			at, running := noon, time.Hour
			book, err := sqlite.Open(t.TempDir(), sqlite.Options{Now: func() time.Time { return at }, Running: func() time.Duration { return running }, Blobs: blob.In})
			if err != nil {
				t.Fatal(err)
			}
			defer book.Close()
			if !there {
				at = at.Add(jump)
			}
			for _, code := range []string{"111111", "222222", "333333"} {
				if err := book.AddCode(t.Context(), code, at.Add(sqlite.CodeTime), 5); err != nil {
					t.Fatal(err)
				}
			}
			if at = at.Add(jump); !there {
				at = noon
			}
			running += 9 * time.Minute
			if taken, err := book.TakeCode(t.Context(), "111111"); !taken || err != nil {
				t.Errorf("%s (%v): the code ended with the clock (%v)", name, there, err)
			}
			running += 2 * time.Minute
			if taken, err := book.TakeCode(t.Context(), "222222"); taken || err != nil {
				t.Errorf("%s (%v): the code lives on (%v)", name, there, err)
			}
			running = time.Minute
			if taken, err := book.TakeCode(t.Context(), "333333"); taken || err != nil {
				t.Errorf("%s (%v): the code outlived a start of the machine (%v)", name, there, err)
			}
		}
	}
}

func TestSecretsAreMadeOnceAndKeptByABackup(t *testing.T) {
	dir := t.TempDir()
	book := open(t, dir)
	made := 0
	secret := func(book *sqlite.Book) []byte {
		t.Helper()
		value, err := book.Secret(t.Context(), "cookies", func() ([]byte, error) {
			made++
			return []byte{byte(made), 0, 255}, nil
		})
		if err != nil {
			t.Fatal(err)
		}
		return value
	}
	first := secret(book)
	if again := secret(book); !bytes.Equal(first, again) || made != 1 {
		t.Errorf("%v, then %v, made %d times", first, again, made)
	}
	if err := book.PutSecret(t.Context(), "cookies", []byte("other")); err != nil {
		t.Fatal(err)
	}
	if got := secret(book); string(got) != "other" {
		t.Errorf("kept is %q", got)
	}
	healthy(t, book)
}
