package main

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"rimside/calc/registry"
)

type told struct {
	Error struct {
		Code, Field string
		Values      struct{ Message, Details string }
	}
}

func calling(t *testing.T, name, body string, run func(string, []byte) ([]byte, error)) (int, told) {
	t.Helper()
	status, answer := call(name, []byte(body), run)
	var e told
	if err := json.Unmarshal(answer, &e); err != nil {
		t.Fatalf("%s: %q is not JSON: %v", name, answer, err)
	}
	return status, e
}

// A panic is told with its stack, for the page to show: never a dead button.
func TestPanicBecomesAMessage(t *testing.T) {
	for name, thrown := range map[string]any{"text": "the wheel came off", "error": errors.New("the wheel came off"), "quotes": "the wheel came off: \"\x00<\xff"} {
		status, e := calling(t, name, "{}", func(string, []byte) ([]byte, error) { panic(thrown) })
		if status != 500 || e.Error.Code != "panic" || !strings.Contains(e.Error.Values.Message, "the wheel came off") || !strings.Contains(e.Error.Values.Details, "goroutine") {
			t.Errorf("%s: %d %+v", name, status, e)
		}
	}
	status, e := calling(t, "nil pointer", "{}", func(string, []byte) ([]byte, error) {
		var none *told
		return []byte(none.Error.Code), nil
	})
	if status != 500 || !strings.Contains(e.Error.Values.Message, "nil pointer") {
		t.Errorf("%d %+v", status, e)
	}
	// An error that is not one of the registry's is a fault of ours, and told as such.
	if status, e := calling(t, "stray", "{}", func(string, []byte) ([]byte, error) { return nil, errors.New("stray") }); status != 500 || e.Error.Code != "panic" {
		t.Errorf("a stray error: %d %+v", status, e)
	}
}

func TestStatusIsTheServers(t *testing.T) {
	if status, e := calling(t, "presure", "{}", registry.Call); status != 404 || e.Error.Code != registry.CodeUnknown {
		t.Errorf("unknown: %d %+v", status, e)
	}
	if status, e := calling(t, "air", "{", registry.Call); status != 422 || e.Error.Code != registry.CodeMalformed {
		t.Errorf("malformed: %d %+v", status, e)
	}
	if status, e := calling(t, "air", `{"kpa":"x"}`, registry.Call); status != 422 || e.Error.Field != "kpa" || e.Error.Values.Details != "" {
		t.Errorf("wrong type: %d %+v", status, e)
	}
	for _, name := range registry.Names() {
		want, err := registry.Call(name, []byte(registry.Example(name)))
		if err != nil {
			t.Fatal(err)
		}
		if status, got := call(name, []byte(registry.Example(name)), registry.Call); status != 200 || string(got) != string(want) {
			t.Errorf("%s: %d %s", name, status, got)
		}
	}
}
