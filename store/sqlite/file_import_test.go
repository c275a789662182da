package sqlite_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"testing"

	"rimside/store/fault"
	"rimside/store/oplog"
	"rimside/store/sqlite"
)

const header = `{"rimside":1,"book":"` + aBook + `"}` + "\n"

func TestExportAndImport(t *testing.T) {
	from := open(t, t.TempDir())
	ops := someOps(1234)
	for chunk := range slices.Chunk(ops, oplog.MaxPush) {
		push(t, from, chunk...)
	}
	spread := json.RawMessage("{\n\t\"id\": \"" + idA + "\", \"rec\":\"" + rec + "\",\r\n\"at\":1.7e12,\"kind\":\"note\",\"set\":{\"n\":9007199254740993, \"t\":\"a\\nb <&> \u2028\"} }")
	push(t, from, spread, op(idB, two, "tyre", `{"x":1}`))
	push(t, from, eraseOp(two))
	var file bytes.Buffer
	if err := from.Export(t.Context(), &file); err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(file.String(), "\n")
	if len(lines) != 1239 || lines[0]+"\n" != header || lines[1] != string(ops[0]) || lines[1238] != "" {
		t.Fatalf("%d lines, the first two %q", len(lines), lines[:2])
	}
	if want := `{"id":"` + idA + `","rec":"` + rec + `","at":1.7e12,"kind":"note","set":{"n":9007199254740993,"t":"a\nb <&> ` + "\u2028" + `"}}`; lines[1235] != want {
		t.Errorf("an op sent on several lines is exported as\n%s\nwant\n%s", lines[1235], want)
	}
	to := open(t, t.TempDir())
	pushed, err := to.Import(t.Context(), strings.NewReader(file.String()), "a-file")
	if err != nil || len(pushed.Stored) != 1237 || len(pushed.Known) != 0 || len(pushed.Rejected) != 0 || pushed.Book != aBook {
		t.Fatalf("stored %d, known %d, rejected %v (%v)", len(pushed.Stored), len(pushed.Known), pushed.Rejected, err)
	}
	a, _ := from.About(t.Context())
	b, err := to.About(t.Context())
	if err != nil || a.Digest != b.Digest || a.Count != b.Count || a.Log == b.Log {
		t.Errorf("the books are %+v and %+v (%v)", a, b, err)
	}
	healthy(t, to)
	again, err := from.Import(t.Context(), &file, "")
	if err != nil || len(again.Known) != 1237 || len(again.Stored) != 0 || len(again.Rejected) != 0 {
		t.Errorf("again: stored %d, known %d, rejected %v (%v)", len(again.Stored), len(again.Known), again.Rejected, err)
	}
}

func TestExportOfNothing(t *testing.T) {
	book := open(t, t.TempDir())
	var file bytes.Buffer
	if err := book.Export(t.Context(), &file); err != nil || file.String() != "{\"rimside\":1,\"book\":\"\"}\n" {
		t.Errorf("the file is %q (%v)", file.String(), err)
	}
	pushed, err := open(t, t.TempDir()).Import(t.Context(), &file, "")
	if err != nil || pushed.Book != "" || pushed.Log == "" {
		t.Errorf("the answer is %+v (%v)", pushed, err)
	}
}

func TestImport(t *testing.T) {
	a, b := string(op(idA, rec, "tyre", `{"x":1}`)), string(op(idB, rec, "tyre", `{"x":2}`))
	for name, c := range map[string]struct {
		file     string
		stored   []string
		rejected []string // beginnings of messages
		code     string   // of the error
	}{
		"two ops":                     {header + a + "\n" + b + "\n", []string{idA, idB}, nil, ""},
		"no line break at the end":    {header + a, []string{idA}, nil, ""},
		"line ends of another system": {strings.ReplaceAll(header+a+"\n"+b+"\n", "\n", "\r\n"), []string{idA, idB}, nil, ""},
		"a mark before the text":      {"\xef\xbb\xbf" + header + a, []string{idA}, nil, ""},
		"empty lines":                 {header + "\n \n" + a + "\n\n", []string{idA}, nil, ""},
		"only whose it is":            {header, nil, nil, ""},
		"unreadable lines":            {header + "{\n" + a + "\n[]\n" + b, []string{idA, idB}, []string{"Line 2: ", "Line 4: "}, ""},
		"a line too long":             {header + `{"x":"` + strings.Repeat("y", 5<<20) + "\"}\n" + a, []string{idA}, []string{"Line 2: "}, ""},
		"other content":               {header + a + "\n\n" + string(op(idA, rec, "tyre", `{}`)), []string{idA}, []string{"Line 4: "}, ""},
		"more than one batch":         {header + a + strings.Repeat("\n"+a, 999) + "\nx\n" + b, []string{idA, idB}, []string{"Line 1002: "}, ""},
		"another book":                {strings.Replace(header, aBook, idC, 1) + a, nil, nil, "other_book"},
		"another book without ops":    {strings.Replace(header, aBook, idC, 1), nil, nil, "other_book"},
		"ops of no book":              {`{"rimside":1,"book":""}` + "\n" + a, nil, nil, "bad_request"},
		"a later form":                {strings.Replace(header, ":1", ":2", 1) + a, nil, nil, "newer_format"},
		"nothing":                     {"", nil, nil, "not_rimside"},
		"a text":                      {"Dear diary,\ntoday", nil, nil, "not_rimside"},
		"ops without whose they are":  {a + "\n" + b, nil, nil, "not_rimside"},
		"a book that is none":         {`{"rimside":1,"book":"x"}` + "\n" + a, nil, nil, "not_rimside"},
		"one endless line":            {strings.Repeat("x", 3<<20), nil, nil, "not_rimside"},
	} {
		t.Run(name, func(t *testing.T) {
			book := open(t, t.TempDir())
			push(t, book) // settles whose it is
			pushed, err := book.Import(t.Context(), strings.NewReader(c.file), "")
			if c.code != "" {
				wantRefusal(t, err, c.code)
			} else if err != nil {
				t.Fatal(err)
			}
			if !slices.Equal(pushed.Stored, c.stored) {
				t.Errorf("stored %q, want %q", pushed.Stored, c.stored)
			}
			if !slices.EqualFunc(pushed.Rejected, c.rejected, func(is oplog.Rejection, want string) bool {
				return strings.HasPrefix(is.Message, want) && is.Code != ""
			}) {
				t.Errorf("rejected %+v, want %q", pushed.Rejected, c.rejected)
			}
			if got := len(pullAll(t, book)); got != len(c.stored) {
				t.Errorf("%d ops in the log, want %d", got, len(c.stored))
			}
		})
	}
}

// What was stored before a connection broke stays; the rest comes with the next try.
func TestImportThatBreaksOff(t *testing.T) {
	book := open(t, t.TempDir())
	var file bytes.Buffer
	file.WriteString(header)
	ops := someOps(700)
	for _, each := range ops {
		fmt.Fprintf(&file, "%s\n", each)
	}
	whole := file.String()
	torn := io.MultiReader(strings.NewReader(whole[:len(whole)-1000]), failing{})
	if _, err := book.Import(t.Context(), torn, ""); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("error %v, want that of the connection", err)
	}
	if got := len(pullAll(t, book)); got != 500 {
		t.Errorf("%d ops stored of the first try, want the first batch", got)
	}
	pushed, err := book.Import(t.Context(), strings.NewReader(whole), "")
	if err != nil || len(pushed.Known) != 500 || len(pushed.Stored) != 200 {
		t.Errorf("the second try: known %d, stored %d (%v)", len(pushed.Known), len(pushed.Stored), err)
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, io.ErrClosedPipe }

// FuzzImport reads any file: every line comes out as it is, under its number, or not at all.
func FuzzImport(f *testing.F) {
	a := string(op(idA, rec, "tyre", `{"x":1}`))
	f.Add(header + a + "\n" + string(op(idB, rec, "erase", `{"kind":"tyre"}`)))
	f.Add(header + "\n\r\n{}\n[]\n" + a + a)
	f.Add(header + strings.Repeat("1\n", 1100))
	f.Add(`{"rimside":1,"book":""}` + "\n" + a + "\n\u2028\n")
	f.Add("\xef\xbb\xbf{\"rimside\":2}")
	f.Fuzz(func(t *testing.T, file string) {
		lines, err := sqlite.ImportLines(strings.NewReader(file))
		if refused := (*fault.Error)(nil); err != nil && !errors.As(err, &refused) {
			t.Fatal(err)
		}
		want := map[int]string{}
		for i, line := range strings.Split(file, "\n") {
			if line = string(bytes.TrimSpace([]byte(line))); i > 0 && line != "" && err == nil {
				want[i+1] = line
			}
		}
		if !maps.Equal(lines, want) {
			t.Errorf("the lines are %v, want %v", lines, want)
		}
	})
}
