package registry

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"unicode/utf8"
)

// FuzzParse holds the strict reader to the standard library's judgement of what is well-formed (RFC 8259): it accepts
// nothing that the library refuses, and refuses nothing that the library accepts but for duplicates, depth and broken text.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		`{"a":[1,-0.5e+3,true,false,null,"x\u00e9\ud83d\ude00\n"]}`, `{}`, `[]`, ` 1 `, `01`, `1.`, `.5`, `-`, `1e`, `+1`, `"\x"`,
		`"\ud800"`, `"\ud800\u0041"`, `{"a":1,"a":2}`, `{"a":1}{}`, `[1,]`, `{"a":1,}`, `{"a"}`, "\"\t\"", "\"\xff\"", `nul`, ``, `1e400`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, body []byte) {
		_, fault := parse(body)
		valid := json.Valid(body)
		if fault == nil && !valid {
			t.Errorf("accepted %q, which is not JSON", body)
		}
		stricter := fault != nil && (fault.Code == CodeDuplicate || !utf8.Valid(body) || strings.Count(string(body), "[")+strings.Count(string(body), "{") > maxDepth)
		if fault != nil && valid && !stricter {
			t.Errorf("refused %q (%v), which is JSON", body, fault)
		}
	})
}

// What is written reads back as the same text and numbers.
func TestEncodeReadsBack(t *testing.T) {
	for _, s := range []string{"", "plain", "quote \" slash \\ line \n tab \t null \x00", "é 😀 \u2028", "broken \xff"} {
		raw, ok := encode(s)
		var back string
		if err := json.Unmarshal(raw, &back); err != nil || !ok || back != strings.ToValidUTF8(s, "\uFFFD") {
			t.Errorf("%q is written as %s (%v)", s, raw, err)
		}
	}
	for _, x := range []float64{0, math.Copysign(0, -1), 1, -2.5, 1e-9, 5e-324, 1e21, math.MaxFloat64, 1.0 / 3} {
		raw, ok := encode(x)
		var back float64
		if err := json.Unmarshal(raw, &back); err != nil || !ok || back != x {
			t.Errorf("%g is written as %s (%v)", x, raw, err)
		}
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if raw, ok := encode(fields{{"x", x}}); ok {
			t.Errorf("%g is written as %s", x, raw)
		}
	}
	if _, ok := encode(struct{}{}); ok {
		t.Error("a value of unknown type was written")
	}
}
