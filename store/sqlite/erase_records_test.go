package sqlite_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

const secret = "SECRET-VALUE"

// holding lists the files of a folder in which the text stands, as grep -a would.
func holding(t testing.TB, dir, text string) (files []string) {
	t.Helper()
	err := filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		content, err := os.ReadFile(path)
		if bytes.Contains(content, []byte(text)) {
			files = append(files, path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// TestErase brings a record's ops and its erase in every order, in pushes of every size.
func TestErase(t *testing.T) {
	first := op(idA, rec, "tyre", `{"name":"`+secret+`","x":1}`)
	second := json.RawMessage(fmt.Sprintf(`{"id":%q,"at":%d,"kind":"tyre","rec":%q,"set":{"name":"%s 2"},"bases":{"name":[%q]},"author":"%s","later":"%s"}`,
		idB, noon.UnixMilli(), rec, secret, idA, secret, secret))
	erase := op(idC, rec, oplog.KindErase, `{"kind":"tyre"}`)
	frames := map[string]string{
		idA: fmt.Sprintf(`{"id":%q,"at":%d,"kind":"tyre","rec":%q,"set":{"name":null,"x":null},"erased":true}`, idA, noon.UnixMilli(), rec),
		idB: fmt.Sprintf(`{"id":%q,"at":%d,"kind":"tyre","rec":%q,"set":{"name":null},"bases":{"name":[%q]},"erased":true}`, idB, noon.UnixMilli(), rec, idA),
		idC: string(erase),
	}
	erasedFirst := json.RawMessage(frames[idA])
	for name, pushes := range map[string][][]json.RawMessage{
		"after":                    {{first}, {second}, {erase}},
		"before":                   {{erase}, {first}, {second}},
		"between":                  {{first}, {erase}, {second}},
		"in one push, first":       {{erase, first, second}},
		"in one push, last":        {{first, second, erase}},
		"with the late one":        {{first}, {second, erase}},
		"twice":                    {{first, second}, {erase}, {erase, first, second}},
		"by an erased form":        {{second}, {erasedFirst}, {erase}},
		"by the erased form of it": {{first, second}, {erasedFirst}, {erase}},
		"full after erased form":   {{erasedFirst, first}, {second, erase}},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			book := open(t, dir)
			other := op(two, two, "tyre", `{"name":"kept"}`)
			var order []string // of arrival
			for _, ops := range append([][]json.RawMessage{{other}}, pushes...) {
				order = append(order, push(t, book, ops...).Stored...)
			}
			log := pullAll(t, book)
			if len(log) != 4 || string(log[0]) != string(other) {
				t.Fatalf("the log is %s", log)
			}
			for i, raw := range log[1:] {
				if op, _ := oplog.Parse(raw); op.ID != order[i+1] || string(raw) != frames[op.ID] {
					t.Errorf("op %d is %s\nwant %s", i+1, raw, frames[order[i+1]])
				}
			}
			if found := holding(t, dir, secret); len(found) > 0 {
				t.Errorf("the erased value stands in %v", found)
			}
			healthy(t, book)
		})
	}
}

// An op that is rejected erases nothing.
func TestRejectedEraseErasesNothing(t *testing.T) {
	book := open(t, t.TempDir())
	push(t, book, op(idA, rec, "tyre", `{"name":"kept"}`), op(idB, two, "tyre", `{}`))
	pushed := push(t, book, op(idB, rec, oplog.KindErase, `{"kind":"tyre"}`))
	if len(pushed.Rejected) != 1 {
		t.Fatalf("the answer is %+v", pushed)
	}
	if log := pullAll(t, book); !strings.Contains(string(log[0]), "kept") {
		t.Errorf("the op is %s", log[0])
	}
	healthy(t, book)
}

// TestNothingIsLeftOfErasedValues mixes ops of all sizes, so that SQLite moves rows between pages, then erases some.
func TestNothingIsLeftOfErasedValues(t *testing.T) {
	for seed := range uint64(2) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			chance := rand.New(rand.NewPCG(seed, 1))
			dir := t.TempDir()
			book := open(t, dir)
			var recs []string
			for range 30 {
				recs = append(recs, oplog.NewID())
			}
			erased := map[string]bool{}
			for round := range 40 {
				var ops []json.RawMessage
				for range 1 + chance.IntN(20) {
					rec := recs[chance.IntN(len(recs))]
					ops = append(ops, op(oplog.NewID(), rec, "note", fmt.Sprintf(`{"text":"%s of %s %s"}`, secret, rec, strings.Repeat("-", chance.IntN(1500)))))
				}
				push(t, book, ops...)
				if round%5 == 0 {
					if err := book.Tick(t.Context()); err != nil {
						t.Fatal(err)
					}
				}
				if chance.IntN(4) == 0 {
					rec := recs[chance.IntN(len(recs))]
					erased[rec] = true
					push(t, book, eraseOp(rec))
				}
			}
			for rec := range erased {
				if found := holding(t, dir, secret+" of "+rec); len(found) > 0 {
					t.Errorf("values of the erased record %s stand in %v", rec, found)
				}
			}
			healthy(t, book)
		})
	}
}

// SQLite packs the rows of a full page anew when one of them grows, and leaves what stood there before. In these books,
// found by trying, an erased value would be left so, although secure_delete is on.
func TestNothingIsLeftWhereRowsMoved(t *testing.T) {
	for _, seed := range []uint64{6, 22, 28, 34} {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			chance := rand.New(rand.NewPCG(seed, 9))
			id := func() string { return fmt.Sprintf("%016x%016x", chance.Uint64(), chance.Uint64()) }
			dir := t.TempDir()
			book := open(t, dir)
			recs := make([]string, 40)
			for i := range recs {
				recs[i] = id()
			}
			for chunk := range slices.Chunk(growingAndShrinking(chance, id, recs), oplog.MaxPush) {
				push(t, book, chunk...)
			}
			for turn := range 4 {
				var erases []json.RawMessage
				for i := turn; i < len(recs); i += 4 {
					erases = append(erases, op(id(), recs[i], oplog.KindErase, `{"kind":"t"}`))
				}
				if _, err := book.Push(t.Context(), aBook, "", erases, fmt.Sprint("phone ", turn)); err != nil { // ten each
					t.Fatal(err)
				}
				book.Settle()
				for i := turn; i < len(recs); i += 4 {
					if found := holding(t, dir, "<"+recs[i]+">"); len(found) > 0 {
						t.Errorf("values of record %s stand in %v", recs[i], found)
					}
				}
			}
		})
	}
}

// growingAndShrinking are ops that become longer or shorter when they are erased.
func growingAndShrinking(chance *rand.Rand, id func() string, recs []string) (ops []json.RawMessage) {
	for range 1500 {
		which := chance.IntN(len(recs))
		rest := `"` + strings.Repeat("-", chance.IntN(500)) + `"`
		if which%3 > 0 {
			rest = "1"
			for name := range chance.IntN(40) {
				rest += fmt.Sprintf(`,"%d":1`, name)
			}
		}
		ops = append(ops, json.RawMessage(fmt.Sprintf(`{"id":%q,"at":1700000000000,"kind":"t","rec":%q,"set":{"a":"<%s>","b":%s}}`, id(), recs[which], recs[which], rest)))
	}
	return ops
}

// A crash right after the commit leaves the traces; the next start, push or tick clears them.
func TestTracesAreClearedAfterACrash(t *testing.T) {
	for name, next := range map[string]func(*testing.T, string, *sqlite.Book) *sqlite.Book{
		"start": func(t *testing.T, dir string, book *sqlite.Book) *sqlite.Book {
			return open(t, dir)
		},
		"push": func(t *testing.T, _ string, book *sqlite.Book) *sqlite.Book {
			push(t, book, op(idC, two, "tyre", `{}`))
			return book
		},
		"tick": func(t *testing.T, _ string, book *sqlite.Book) *sqlite.Book {
			if err := book.Tick(t.Context()); err != nil {
				t.Fatal(err)
			}
			return book
		},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			book := open(t, dir)
			hash := aPhoto(t, book, "crash")
			push(t, book, op(idA, rec, "photo", `{"name":"`+secret+`","blob":"`+hash+`"}`))
			if err := book.Tick(t.Context()); err != nil { // makes copies
				t.Fatal(err)
			}
			if err := book.PushWithoutTidying(t.Context(), aBook, []json.RawMessage{eraseOp(rec)}); err != nil {
				t.Fatal(err)
			}
			if found := holding(t, dir, secret); len(found) < 3 {
				t.Fatalf("the value stands in %v only: this test shows nothing", found)
			}
			book = next(t, dir, book)
			if found := holding(t, dir, secret); len(found) > 0 {
				t.Errorf("the value still stands in %v", found)
			}
			if has, err := book.Blobs().Has(hash); has || err != nil {
				t.Errorf("the photo is here: %v, %v", has, err)
			}
			if report := healthy(t, book); len(report.Remarks) > 0 {
				t.Errorf("remarks %q", report.Remarks)
			}
		})
	}
}

// Somebody who reads for long keeps the old pages alive; the erase is answered, and its traces go later.
func TestEraseWhileSomebodyReads(t *testing.T) {
	dir := t.TempDir()
	book := open(t, dir)
	push(t, book, op(idA, rec, "tyre", `{"name":"`+secret+`"}`))
	done := book.Reading(t)
	push(t, book, eraseOp(rec))
	if found := holding(t, dir, secret); len(found) == 0 {
		t.Fatal("nothing is left: this test shows nothing")
	}
	if report := healthy(t, book); len(report.Remarks) != 1 {
		t.Errorf("remarks %q, want that traces are left", report.Remarks)
	}
	done()
	if err := book.Tick(t.Context()); err != nil {
		t.Fatal(err)
	}
	if found := holding(t, dir, secret); len(found) > 0 {
		t.Errorf("the value still stands in %v", found)
	}
}

// A copy that cannot be read cannot be cleared, and so must not stay.
func TestBrokenCopyGoesWithAnErase(t *testing.T) {
	dir := t.TempDir()
	book := open(t, dir)
	push(t, book, op(idA, rec, "tyre", `{"name":"`+secret+`"}`))
	if err := book.Tick(t.Context()); err != nil {
		t.Fatal(err)
	}
	broken := filepath.Join(dir, "copies", "hourly-000000-2020-01-01T00.sqlite")
	unfinished := filepath.Join(dir, "copies", ".unfinished-1.sqlite")
	for _, path := range []string{broken, unfinished} {
		if err := os.WriteFile(path, []byte("not a database, but "+secret), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	push(t, book, eraseOp(rec))
	if found := holding(t, dir, secret); len(found) > 0 {
		t.Errorf("the value still stands in %v", found)
	}
	if left, err := os.ReadDir(filepath.Join(dir, "copies")); err != nil || len(left) != 2 {
		t.Errorf("%d copies are left (%v), want the two good ones", len(left), err)
	}
}

func TestErasedPhotos(t *testing.T) {
	book := open(t, t.TempDir())
	alone, shared, late, inList := aPhoto(t, book, "alone"), aPhoto(t, book, "shared"), aPhoto(t, book, "late"), aPhoto(t, book, "list")
	push(t, book,
		op(idA, rec, "photo", `{"blob":"`+alone+`","all":[{"x":"`+inList+`"}]}`), op(idB, rec, "photo", `{"blob":"`+shared+`"}`),
		op(idC, two, "photo", `{"blob":"`+shared+`"}`))
	push(t, book, eraseOp(rec), op(oplog.NewID(), rec, "photo", `{"blob":"`+late+`"}`))
	for hash, kept := range map[string]bool{alone: false, shared: true, late: false, inList: false} {
		has, err := book.Blobs().Has(hash)
		erased, errOf := book.BlobErased(t.Context(), hash)
		if has != kept || erased == kept || err != nil || errOf != nil {
			t.Errorf("photo %.8s: here %v, erased %v; want here %v (%v, %v)", hash, has, erased, kept, err, errOf)
		}
	}
	if err := book.PutBlob(t.Context(), alone, strings.NewReader(jpeg("alone"))); !errors.Is(err, sqlite.ErrErased) {
		t.Errorf("a late photo: error %v, want that it was erased", err)
	}
	if err := book.PutBlob(t.Context(), shared, strings.NewReader(jpeg("shared"))); err != nil {
		t.Errorf("a photo that a live op names: %v", err)
	}
	// A live op that names it brings the right to send it back.
	push(t, book, op(oplog.NewID(), two, "photo", `{"blob":"`+alone+`"}`))
	if err := book.PutBlob(t.Context(), alone, strings.NewReader(jpeg("alone"))); err != nil {
		t.Errorf("a photo named anew: %v", err)
	}
	// What is remembered of an erased photo is not even its hash.
	if found := holdingHash(t, book, late); found {
		t.Error("the hash of an erased photo is in the database")
	}
	healthy(t, book)
}

func holdingHash(t *testing.T, book *sqlite.Book, hash string) bool {
	return slices.ContainsFunc([]string{"named_blobs", "leaving_blobs"}, func(table string) bool {
		return book.Value(t, true, "SELECT count(*) FROM "+table+" WHERE hash = unhex(?)", hash) != "0"
	})
}
