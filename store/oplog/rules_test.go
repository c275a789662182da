package oplog_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"rimside/store/oplog"
)

func parsed(t *testing.T, text string) oplog.Op {
	t.Helper()
	op, fault := oplog.Parse([]byte(text))
	if fault != nil {
		t.Fatalf("%s: %v", text, fault)
	}
	return op
}

const (
	idA    = "a0000000000000000000000000000000"
	idB    = "b0000000000000000000000000000000"
	rec    = "7ec00000000000000000000000000000"
	shaOfA = "dcae39569870aee7303e408b95cd621af049575754900333308afd550ef5571c"
	sum1   = "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"
	sum2   = "bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb"
)

func TestARefusalNamesTheOp(t *testing.T) {
	large := fmt.Sprintf(`{"set":{"note":%q},"id":%q}`, strings.Repeat("x", oplog.MaxOpBytes), idA)
	for text, id := range map[string]string{
		`{"id":"` + idA + `","at":1}`: idA, `{"id":7}`: "", large: idA, `{"id":"` + idA + `","x":"` + "\xff" + `"}`: idA,
	} {
		if _, fault := oplog.Parse([]byte(text)); fault == nil || fault.ID != id {
			t.Errorf("%.60s: got %+v, want id %q", text, fault, id)
		}
	}
}

func TestSameContent(t *testing.T) {
	base := `{"id":"` + idA + `","at":1790000000000,"kind":"tyre","rec":"` + rec + `","set":{"x":[1,{"p":2.50,"q":null}]}}`
	moved := `{ "kind":"tyre","set":{"x":[1.0,{"q":null,"p":2.5}]},"rec":"` + rec + `","id":"` + idA + `","at":1790000000000 }`
	for text, same := range map[string]bool{
		base:                                     true,
		moved:                                    true,
		strings.Replace(base, "2.50", "2.51", 1): false,
		strings.Replace(base, "null", "false", 1):                         false,
		strings.Replace(base, "null", "{}", 1):                            false,
		strings.Replace(base, "[1,", "[1,1,", 1):                          false,
		strings.Replace(base, "tyre", "wheel", 1):                         false,
		strings.Replace(base, idA, idB, 1):                                false,
		base[:len(base)-1] + `,"glow":1}`:                                 false,
		string(parsed(t, base).Erase().Raw):                               true,
		strings.Replace(string(parsed(t, base).Erase().Raw), idA, idB, 1): false,
		strings.Replace(string(parsed(t, base).Erase().Raw), rec, idB, 1): false, // another record's
		"{": false,
	} {
		if oplog.Same([]byte(base), []byte(text)) != same {
			t.Errorf("%s: same must be %v", text, same)
		}
	}
}

func TestAnErasedOpKeepsItsFrameOnly(t *testing.T) {
	op := parsed(t, `{"secret":"Y","id":"`+idA+`","at":1790000000000,"kind":"person","rec":"`+rec+`","schema":1,
		"set":{"name":"Secret","mass_kg":72},"bases":{"name":["`+idB+`"],"mass_kg":[]},"author":"Secret","device":"Secret","seen":["`+idB+`"]}`)
	want := `{"id":"` + idA + `","at":1790000000000,"kind":"person","rec":"` + rec + `","set":{"mass_kg":null,"name":null},"bases":{"mass_kg":[],"name":["` + idB + `"]},"erased":true}`
	erased := op.Erase()
	if string(erased.Raw) != want {
		t.Fatalf("got  %s\nwant %s", erased.Raw, want)
	}
	again := parsed(t, string(erased.Raw))
	if !again.Erased || !again.Erases() || string(again.Erase().Raw) != want {
		t.Errorf("erasing twice must change nothing, got %s", again.Erase().Raw)
	}
	eraser := parsed(t, `{"id":"`+idB+`","at":1790000000000,"kind":"erase","rec":"`+rec+`","set":{"kind":"person"}}`)
	if string(eraser.Erase().Raw) != string(eraser.Raw) || !eraser.Erases() {
		t.Error("the erase op stays as it is")
	}
}

func TestBlobsAreFoundWhereverTheyStand(t *testing.T) {
	op := parsed(t, `{"id":"`+idA+`","at":1790000000000,"kind":"glow","rec":"`+rec+`","set":{"sha256":"`+sum2+`","list":[{"deep":["`+sum1+`"]}],"short":"ab","twice":"`+sum1+`","other":"`+strings.ToUpper(sum1)+`"}}`)
	if got := oplog.Blobs(op); !slices.Equal(got, []string{sum1, sum2}) {
		t.Errorf("got %v", got)
	}
}

func TestClock(t *testing.T) {
	const now = 1790000000000
	for _, test := range []struct{ now, newest, want int64 }{
		{now, 0, now},                           // a new record
		{now, now - 5, now},                     // time went on
		{now, now, now + 1},                     // two within one millisecond
		{now, now + 7200000, now + 7200001},     // another phone is ahead
		{now - 400*86400000, now, now + 1},      // this clock went back
		{0, 0, oplog.MinAt},                     // no clock at all
		{-5, 0, oplog.MinAt},                    //
		{32503680000000, 0, oplog.EndAt - 1},    // the year 3000
		{now, oplog.EndAt - 1, oplog.EndAt - 1}, // somebody used the last moment there is
		{1<<63 - 1, 1<<63 - 2, oplog.EndAt - 1}, // no overflow
	} {
		if got := oplog.NextAt(test.now, test.newest); got != test.want {
			t.Errorf("NextAt(%d, %d) = %d, want %d", test.now, test.newest, got, test.want)
		}
	}
}

// The expected digest was made with: printf %s ID | sha256sum.
func TestDigest(t *testing.T) {
	var d oplog.Digest
	if d.String() != strings.Repeat("0", 64) {
		t.Errorf("no ops: %s", d)
	}
	d.Toggle(idA)
	if want := shaOfA; d.String() != want {
		t.Errorf("one op: got %s, want %s", d, want)
	}
	one := d
	d.Toggle(idB)
	d.Toggle(idA)
	other := oplog.Digest{}
	other.Toggle(idB)
	if d != other || d == one {
		t.Error("taking an op out must leave the digest of the rest")
	}
	back, err := oplog.ParseDigest(d.String())
	if err != nil || back != d {
		t.Errorf("%v %v", back, err)
	}
	for _, wrong := range []string{"", "ab", strings.Repeat("g", 64), d.String() + "00"} {
		if _, err := oplog.ParseDigest(wrong); err == nil {
			t.Errorf("%q is no digest", wrong)
		}
	}
}

func TestIDs(t *testing.T) {
	seen := map[string]bool{}
	for range 1000 {
		id := oplog.NewID()
		if !oplog.IsID(id) || seen[id] {
			t.Fatalf("%q", id)
		}
		seen[id] = true
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(`{"id":"` + idA + `","at":1790000000000,"kind":"tyre","rec":"` + rec + `","set":{"x":"\ud83d\udeb2"},"bases":{"x":["` + idB + `"]},"seen":[]}`))
	f.Add([]byte(`{"id":"` + idA + `","set":{"x":"\ud83d"}}`))
	f.Fuzz(func(t *testing.T, raw []byte) {
		op, fault := oplog.Parse(raw)
		if fault != nil {
			return
		}
		again, fault := oplog.Parse(op.Erase().Raw)
		if fault != nil || again.ID != op.ID || again.At != op.At || again.Rec != op.Rec {
			t.Fatalf("%s\nerased: %s\n%v", raw, op.Erase().Raw, fault)
		}
		if !oplog.Same(op.Raw, op.Raw) || !oplog.Same(op.Raw, op.Erase().Raw) {
			t.Fatalf("%s is not the same as itself", raw)
		}
		oplog.Merge([]oplog.Op{op, again})
		oplog.Blobs(op)
	})
}
