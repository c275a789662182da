package sqlite_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"rimside/store/fault"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

const (
	idA = "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"
	idB = "bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb"
	idC = "cccccccccccccccccccccccccccccccc"
	rec = "11111111111111111111111111111111"
	two = "22222222222222222222222222222222"
)

// TestPush holds what may arrive against what becomes of it. Each push is a list of ops.
func TestPush(t *testing.T) {
	a, b := op(idA, rec, "tyre", `{"measured_mm":41.5}`), op(idB, rec, "tyre", `{"measured_mm":42}`)
	exact := func(text string) []json.RawMessage { return []json.RawMessage{json.RawMessage(text)} }
	head := fmt.Sprintf(`"id":%q,"rec":%q,"at":%d`, idA, rec, noon.UnixMilli())
	for _, c := range []struct {
		name     string
		pushes   [][]json.RawMessage
		log      []json.RawMessage // what is in the log then, byte by byte
		known    []string          // of the last push
		rejected []string          // id and code, of the last push
	}{
		{name: "one op", pushes: [][]json.RawMessage{{a}}, log: []json.RawMessage{a}},
		{name: "nothing", pushes: [][]json.RawMessage{{}}},
		{name: "the same op twice in one push", pushes: [][]json.RawMessage{{a, a}}, log: []json.RawMessage{a}, known: []string{idA}},
		{name: "the same op in two pushes", pushes: [][]json.RawMessage{{a}, {a, b}}, log: []json.RawMessage{a, b}, known: []string{idA}},
		{name: "reversed order", pushes: [][]json.RawMessage{{b, a}, {a, b}}, log: []json.RawMessage{b, a}, known: []string{idA, idB}},
		{name: "the same op written otherwise", pushes: [][]json.RawMessage{{a}, exact(fmt.Sprintf("{ \"schema\":1.0,\"set\":{\"measured_mm\":4.15e1},\n%s,\"kind\":\"tyre\",\"author\":\"\",\"device\":\"\"}", head))},
			log: []json.RawMessage{a}, known: []string{idA}},
		{name: "other content under a stored id", pushes: [][]json.RawMessage{{a}, {op(idA, rec, "tyre", `{"measured_mm":50}`), b}}, log: []json.RawMessage{a, b}, rejected: []string{idA + " other_content"}},
		{name: "other content under an id of the same push", pushes: [][]json.RawMessage{{a, op(idA, two, "tyre", `{"measured_mm":41.5}`)}}, log: []json.RawMessage{a}, rejected: []string{idA + " other_content"}},
		{name: "an erased form of another record's op", pushes: [][]json.RawMessage{{a}, exact(fmt.Sprintf(`{"id":%q,"rec":%q,"at":%d,"kind":"tyre","set":{},"erased":true}`, idA, two, noon.UnixMilli()))},
			log: []json.RawMessage{a}, rejected: []string{idA + " other_content"}},
		{name: "a poisoned op among good ones", pushes: [][]json.RawMessage{{a, json.RawMessage(`{"id":"` + idC + `"}`), json.RawMessage(`null`), json.RawMessage(`[1`), b}},
			log: []json.RawMessage{a, b}, rejected: []string{idC + " op_malformed", " op_malformed", " op_malformed"}},
		{name: "a newer schema, an unknown kind, unknown members, large numbers", pushes: [][]json.RawMessage{exact(fmt.Sprintf(`{%s,"kind":"no such kind","schema":99,"set":{"n":9007199254740993,"x":1e400},"later":{"deep":[1,{"é":"\u00e9"}]},"z":-0.0}`, head))},
			log: exact(fmt.Sprintf(`{%s,"kind":"no such kind","schema":99,"set":{"n":9007199254740993,"x":1e400},"later":{"deep":[1,{"é":"\u00e9"}]},"z":-0.0}`, head))},
		{name: "words of SQL as names and values", pushes: [][]json.RawMessage{{op(idA, rec, "DROP TABLE ops", `{"select":"'; DROP TABLE ops; --","order by":1,"":2,"from\u0000where":"\u0000"}`)}},
			log: []json.RawMessage{op(idA, rec, "DROP TABLE ops", `{"select":"'; DROP TABLE ops; --","order by":1,"":2,"from\u0000where":"\u0000"}`)}},
		{name: "a value of a megabyte", pushes: [][]json.RawMessage{{op(idA, rec, "note", `{"text":"`+strings.Repeat("ä", 1<<19)+`"}`)}},
			log: []json.RawMessage{op(idA, rec, "note", `{"text":"`+strings.Repeat("ä", 1<<19)+`"}`)}},
		{name: "more than two megabytes", pushes: [][]json.RawMessage{{op(idA, rec, "note", `{"text":"`+strings.Repeat("x", 2<<20)+`"}`)}}, rejected: []string{idA + " op_too_large"}},
		{name: "year 3000", pushes: [][]json.RawMessage{exact(fmt.Sprintf(`{"id":%q,"rec":%q,"at":32503680000000,"kind":"tyre","set":{}}`, idA, rec))}, rejected: []string{idA + " at_out_of_range"}},
		{name: "year 2200", pushes: [][]json.RawMessage{exact(fmt.Sprintf(`{"id":%q,"rec":%q,"at":7289654399999,"kind":"tyre","set":{}}`, idA, rec))}, log: exact(fmt.Sprintf(`{"id":%q,"rec":%q,"at":7289654399999,"kind":"tyre","set":{}}`, idA, rec))},
		{name: "nested too deeply", pushes: [][]json.RawMessage{{op(idA, rec, "tyre", `{"x":`+strings.Repeat("[", 64)+strings.Repeat("]", 64)+`}`)}}, rejected: []string{idA + " op_malformed"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			book := open(t, t.TempDir())
			var last sqlite.Pushed
			for _, ops := range c.pushes {
				last = push(t, book, ops...)
			}
			if got := pullAll(t, book); !slices.EqualFunc(got, c.log, func(a, b json.RawMessage) bool { return string(a) == string(b) }) {
				t.Errorf("the log is\n%.300s\nwant\n%.300s", got, c.log)
			}
			if !slices.Equal(last.Known, c.known) {
				t.Errorf("known %q, want %q", last.Known, c.known)
			}
			var rejected []string
			for _, each := range last.Rejected {
				rejected = append(rejected, each.ID+" "+each.Code)
				if each.Message == "" {
					t.Errorf("%s is rejected without a word", each.ID)
				}
			}
			slices.Sort(rejected)
			slices.Sort(c.rejected)
			if !slices.Equal(rejected, c.rejected) {
				t.Errorf("rejected %q, want %q", rejected, c.rejected)
			}
			healthy(t, book)
		})
	}
}

func TestPushAnswers(t *testing.T) {
	book := open(t, t.TempDir())
	before, err := book.About(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if before.Book != "" || before.Count != 0 || before.Digest != (oplog.Digest{}).String() || !oplog.IsID(before.Log) || !oplog.IsID(before.Server) {
		t.Errorf("a new book is %+v", before)
	}
	pushed := push(t, book, op(idA, rec, "tyre", `{"measured_mm":41.5}`))
	if pushed.Book != aBook || pushed.Log != before.Log || !slices.Equal(pushed.Stored, []string{idA}) {
		t.Errorf("the answer is %+v", pushed)
	}
	var digest oplog.Digest
	digest.Toggle(idA)
	after, err := book.About(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if after.Book != aBook || after.Count != 1 || after.Digest != digest.String() || after.Log != before.Log || after.Server != before.Server {
		t.Errorf("the book is %+v", after)
	}
	if _, err := book.Push(t.Context(), aBook, "ffffffffffffffffffffffffffffffff", []json.RawMessage{op(idB, rec, "tyre", `{}`)}, ""); err != nil {
		t.Errorf("a push for an unknown log: %v, want it stored all the same", err)
	}
}

func TestPushOfAnotherBook(t *testing.T) {
	book := open(t, t.TempDir())
	push(t, book) // no op is needed to settle whose book it is
	_, err := book.Push(t.Context(), idB, "", []json.RawMessage{op(idA, rec, "tyre", `{}`)}, "")
	if refused := (*fault.Error)(nil); !errors.Is(err, sqlite.ErrOtherBook) || !errors.As(err, &refused) || refused.Code != "other_book" {
		t.Errorf("error %v, want that it is another book", err)
	}
	if got := pullAll(t, book); len(got) != 0 {
		t.Errorf("%d ops of another book are here", len(got))
	}
	for _, wrong := range []string{"", "abc", strings.ToUpper(idA)} {
		if _, err := book.Push(t.Context(), wrong, "", nil, ""); err == nil {
			t.Errorf("a push for the book %q was taken", wrong)
		}
	}
}

// A push that brings nothing new must not write: phones that reset send everything again.
func TestPushOfKnownOpsChangesNothing(t *testing.T) {
	book := open(t, t.TempDir())
	ops := someOps(20)
	push(t, book, ops...)
	before := book.Value(t, false, "SELECT changes FROM book")
	if again := push(t, book, ops...); len(again.Known) != 20 || len(again.Stored) != 0 {
		t.Errorf("the answer is %+v", again)
	}
	if after := book.Value(t, false, "SELECT changes FROM book"); after != before {
		t.Errorf("the book changed %s -> %s", before, after)
	}
}

func TestPushAfterTheAskerLeft(t *testing.T) {
	book := open(t, t.TempDir())
	gone, leave := context.WithCancel(t.Context())
	leave()
	if _, err := book.Push(gone, aBook, "", []json.RawMessage{op(idA, rec, "tyre", `{}`)}, ""); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want that the asker left", err)
	}
	if got := pullAll(t, book); len(got) != 0 {
		t.Errorf("%d ops stored for nobody", len(got))
	}
}
