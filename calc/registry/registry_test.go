package registry_test

import (
	"encoding/json"
	"testing"

	"rimside/calc/registry"
)

func TestEveryExampleIsAnswered(t *testing.T) {
	for _, name := range registry.Names() {
		answer, err := registry.Call(name, []byte(registry.Example(name)))
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if !json.Valid(answer) {
			t.Errorf("%s answers %q", name, answer)
		}
	}
}
