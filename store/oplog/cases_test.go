package oplog_test

import (
	"encoding/json"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"testing"

	"rimside/store/oplog"
)

// The cases are the agreement between this program and the phone's script: both must give these answers.

type mergeCase struct {
	Name  string            `json:"name"`
	Ops   []json.RawMessage `json:"ops"`
	State caseState         `json:"state"`
}

type caseState struct {
	Kind    string               `json:"kind"`
	Erased  bool                 `json:"erased"`
	Deleted bool                 `json:"deleted"`
	Newest  int64                `json:"newest"`
	Fields  map[string]caseField `json:"fields"`
	Clashes []string             `json:"clashes"`
	Unseen  []string             `json:"unseen"`
}

type caseField struct {
	Value  any    `json:"value"`
	Op     string `json:"op"`
	Others []any  `json:"others"`
}

func readCases[T any](t *testing.T, file string) []T {
	t.Helper()
	raw, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	var cases []T
	if err := json.Unmarshal(raw, &cases); err != nil {
		t.Fatal(err)
	}
	if len(cases) < 20 {
		t.Fatalf("only %d cases in %s", len(cases), file)
	}
	return cases
}

func TestMergeCasesInAnyOrder(t *testing.T) {
	for _, test := range readCases[mergeCase](t, "merge.json") {
		t.Run(test.Name, func(t *testing.T) {
			ops := make([]oplog.Op, len(test.Ops))
			for i, raw := range test.Ops {
				op, fault := oplog.Parse(raw)
				if fault != nil {
					t.Fatal(fault)
				}
				ops[i] = op
			}
			for range 20 {
				if got := inCaseForm(t, oplog.Merge(ops)); !reflect.DeepEqual(got, test.State) {
					t.Fatalf("got  %+v\nwant %+v", got, test.State)
				}
				rand.Shuffle(len(ops), func(i, j int) { ops[i], ops[j] = ops[j], ops[i] })
			}
		})
	}
}

func inCaseForm(t *testing.T, state oplog.State) caseState {
	t.Helper()
	out := caseState{
		Kind: state.Kind, Erased: state.Erased, Deleted: state.Deleted, Newest: state.Newest,
		Fields: map[string]caseField{}, Clashes: slices.Clone(state.Conflicts), Unseen: slices.Clone(state.Unseen),
	}
	for name, field := range state.Fields {
		shown := caseField{Value: value(t, field.Winner.Value), Op: field.Winner.Op, Others: []any{}}
		for _, other := range field.Siblings {
			shown.Others = append(shown.Others, value(t, other.Value))
		}
		out.Fields[name] = shown
	}
	if out.Clashes == nil {
		out.Clashes = []string{}
	}
	if out.Unseen == nil {
		out.Unseen = []string{}
	}
	return out
}

func value(t *testing.T, raw json.RawMessage) any {
	t.Helper()
	var decoded any
	if err := json.Unmarshal(raw, &decoded); err != nil {
		t.Fatal(err)
	}
	return decoded
}

func TestEnvelopeCases(t *testing.T) {
	for _, test := range readCases[struct{ Name, Text, Code string }](t, "envelope.json") {
		op, fault := oplog.Parse([]byte(test.Text))
		code := ""
		if fault != nil {
			code = fault.Code
			if fault.Message == "" {
				t.Errorf("%s: refused without a word", test.Name)
			}
		}
		if code != test.Code {
			t.Errorf("%s: got %q, want %q", test.Name, code, test.Code)
		}
		if code == "" && string(op.Raw) != test.Text {
			t.Errorf("%s: the text was not kept as it came", test.Name)
		}
	}
}
