package registry

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rimside/calc/unit"
)

// conforms tells where a decoded answer departs from its table, or nil. TypeScript believes the table.
func (f *Field) conforms(path string, got any) error {
	if got == nil {
		if f.Nullable {
			return nil
		}
		return fmt.Errorf("%s: null", path)
	}
	fits := false
	switch f.Kind {
	case number, integer:
		x, isNumber := got.(float64)
		fits = isNumber && x >= f.Min && x <= f.Max && (f.Kind == number || x == math.Trunc(x))
	case boolean:
		_, fits = got.(bool)
	case choice:
		key, isText := got.(string)
		fits = isText && slices.Contains(f.Choices, key)
	case day:
		written, isText := got.(string)
		_, isDay := unit.ParseDay(written)
		fits = isText && isDay
	case text:
		_, fits = got.(string)
	case span, twin:
		low, high, isPair := twoNumbers(got)
		fits = isPair && (f.Kind == twin || low <= high)
	case named:
		return namedConform(path, got)
	case list:
		return f.itemsConform(path, got)
	case object:
		return membersConform(path, got, f.Fields)
	}
	if !fits {
		return fmt.Errorf("%s: %v is no %s", path, got, f.Kind)
	}
	return nil
}

func twoNumbers(got any) (first, second float64, ok bool) {
	items, isList := got.([]any)
	if !isList || len(items) != 2 {
		return 0, 0, false
	}
	first, isFirst := items[0].(float64)
	second, isSecond := items[1].(float64)
	return first, second, isFirst && isSecond
}

func namedConform(path string, got any) error {
	members, ok := got.(map[string]any)
	if !ok {
		return fmt.Errorf("%s: %v is no object", path, got)
	}
	for name, value := range members {
		switch value.(type) {
		case float64, string, bool, nil:
		default:
			return fmt.Errorf("%s.%s: %v is neither a number, a text nor a flag", path, name, value)
		}
	}
	return nil
}

func (f *Field) itemsConform(path string, got any) error {
	items, ok := got.([]any)
	if !ok || float64(len(items)) < f.Min || float64(len(items)) > f.Max {
		return fmt.Errorf("%s: %v is no list of %v to %v", path, got, f.Min, f.Max)
	}
	each := &Field{Kind: object, Fields: f.Fields}
	if f.Item != "" {
		each = &Field{Kind: f.Item, Choices: f.Choices, Min: math.Inf(-1), Max: math.Inf(1)}
	}
	for i, item := range items {
		if err := each.conforms(fmt.Sprintf("%s.%d", path, i), item); err != nil {
			return err
		}
	}
	return nil
}

func membersConform(path string, got any, table []*Field) error {
	members, ok := got.(map[string]any)
	if !ok {
		return fmt.Errorf("%s: %v is no object", path, got)
	}
	for name := range members {
		if _, known := fieldNamed(table, name); !known {
			return fmt.Errorf("%s.%s: not in the table", path, name)
		}
	}
	for _, f := range table {
		value, there := members[f.Name]
		if !there && !f.Optional {
			return fmt.Errorf("%s.%s: missing", path, f.Name)
		}
		if there {
			if err := f.conforms(path+"."+f.Name, value); err != nil {
				return err
			}
		}
	}
	return nil
}

func TestEveryGoldenAnswerConformsToItsTable(t *testing.T) {
	raw, err := os.ReadFile(filepath.Join("testdata", "golden.json"))
	if err != nil {
		t.Fatal(err)
	}
	var list []struct {
		Name, About string
		Body        json.RawMessage
	}
	if err := json.Unmarshal(raw, &list); err != nil {
		t.Fatal(err)
	}
	tables := map[string]*Field{}
	for _, c := range Contracts() {
		if tables[c.Name] = c.Answer; c.Answer == nil {
			t.Errorf("%s has no table of its answer", c.Name)
		}
	}
	for _, golden := range list {
		answer, err := Call(golden.Name, golden.Body)
		if err != nil {
			t.Errorf("%s: %v", golden.About, err)
			continue
		}
		var got any
		if err := json.Unmarshal(answer, &got); err != nil {
			t.Fatal(err)
		}
		if err := tables[golden.Name].conforms(golden.Name, got); err != nil {
			t.Errorf("%s: %v", golden.About, err)
		}
	}
}

// The comparison can fail: each of these departs from the table in one way.
func TestConformingHasTeeth(t *testing.T) {
	table := result(figure("n", ""), tally("i", "").nullable(), key("k", "a", "b"), rangeOf("r", ""), onDay("d"), flag("f"),
		parts("p", wording("t")), wordings("w").optional(), valuesOf("v"))
	const good = `{"n":1.5,"i":null,"k":"a","r":[1,2],"d":"2026-07-14","f":true,"p":[{"t":"x"}],"v":{"a":1,"b":"x"}}`
	judge := func(text string) error {
		var got any
		if err := json.Unmarshal([]byte(text), &got); err != nil {
			t.Fatal(err)
		}
		return table.conforms("", got)
	}
	if err := judge(good); err != nil {
		t.Fatal(err)
	}
	for old, bad := range map[string]string{
		`"n":1.5`: `"n":"1.5"`, `"n":1.5,`: ``, `"i":null`: `"i":1.5`, `"k":"a"`: `"k":"c"`, `[1,2]`: `[2,1]`, `"r":[1,2]`: `"r":[1]`, `"2026-07-14"`: `"14.7.2026"`, `"f":true`: `"f":null`,
		`{"t":"x"}`: `{"t":1}`, `[{"t":"x"}]`: `{}`, `"v":{"a":1,`: `"v":{"a":[1],`, `{"n"`: `{"other":1,"n"`, `"d":`: `"w":[1],"d":`,
	} {
		if err := judge(strings.Replace(good, old, bad, 1)); err == nil {
			t.Errorf("%s in place of %s passes", bad, old)
		}
	}
}
