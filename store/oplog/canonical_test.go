package oplog

import (
	"encoding/json"
	"fmt"
	"testing"

	"pgregory.net/rapid"
)

// jsonValue draws JSON texts that are often nearly equal: numbers written in several ways, members in several orders.
func jsonValue() *rapid.Generator[string] {
	var value *rapid.Generator[string]
	scalar := rapid.SampledFrom([]string{
		"0", "-0", "0.0", "1", "1.0", "1e0", "10e-1", "9007199254740993", "9007199254740992", "1e400", "2e400", "-1e400", "0.1", "0.10",
		`"1"`, `"a"`, `"\u0061"`, `"\u0000"`, `""`, "true", "false", "null",
	})
	value = rapid.Custom(func(t *rapid.T) string {
		switch rapid.IntRange(0, 5).Draw(t, "what") {
		case 0:
			return fmt.Sprintf("[%s, %s]", scalar.Draw(t, "first"), scalar.Draw(t, "second"))
		case 1:
			a, b := scalar.Draw(t, "a"), scalar.Draw(t, "b")
			if rapid.Bool().Draw(t, "turned") {
				return fmt.Sprintf(`{"b":%s,"a":%s}`, b, a)
			}
			return fmt.Sprintf(`{"a" : %s, "b":%s}`, a, b)
		case 2:
			return fmt.Sprintf(`[[%s]]`, scalar.Draw(t, "inner"))
		case 3:
			return fmt.Sprintf(`{"a":[%s,]`, scalar.Draw(t, "broken"))
		}
		return scalar.Draw(t, "scalar")
	})
	return value
}

func TestCanonicalTextsAreEqualWhenTheValuesAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := []byte(jsonValue().Draw(t, "a")), []byte(jsonValue().Draw(t, "b"))
		if same := canonical(a) == canonical(b); same != equalValues(a, b) {
			t.Fatalf("%s and %s: equal %v, canonical %q and %q", a, b, !same, canonical(a), canonical(b))
		}
	})
}

func BenchmarkMergeOfManyClashingValues(b *testing.B) {
	for _, n := range []int{100, 1000} {
		var ops []Op
		for i := range n {
			ops = append(ops, Op{ID: fmt.Sprintf("%032x", i), Rec: "r", Kind: "tyre", At: int64(i), Set: map[string]json.RawMessage{"n": json.RawMessage(fmt.Sprintf("%d", i))}})
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Merge(ops)
			}
		})
	}
}
