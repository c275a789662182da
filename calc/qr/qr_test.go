package qr_test

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"
	other "rsc.io/qr"
	"rsc.io/qr/coding"

	"rimside/calc/qr"
)

// Every module is held to another encoder, through all six sizes.
func TestEveryModuleAgreesWithAnotherEncoder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Repeat("é", 1) + rapid.StringMatching(`[a-z#/:.A-Z0-9?-]{0,104}`).Draw(t, "text")
		code, err := qr.Encode(text)
		if err != nil {
			t.Fatal(err)
		}
		v := coding.Version((code.Size() - 17) / 4)
		plan, err := coding.NewPlan(v, coding.M, 0)
		if err != nil {
			t.Fatal(err)
		}
		want, err := plan.Encode(coding.String(text))
		if err != nil {
			t.Fatalf("the other encoder does not take %d bytes in size %d: %v", len(text), v, err)
		}
		for y := range code.Size() {
			for x := range code.Size() {
				if code.Dark(x, y) != want.Black(x, y) {
					t.Fatalf("size %d: module %d, %d differs", v, x, y)
				}
			}
		}
		if smallest, err := other.Encode(text, other.M); err != nil || smallest.Size != code.Size() {
			t.Fatalf("size %d where %d is enough", code.Size(), smallest.Size)
		}
	})
}

func TestTooLong(t *testing.T) {
	if _, err := qr.Encode(strings.Repeat("a", qr.MaxBytes)); err != nil {
		t.Error(err)
	}
	if _, err := qr.Encode(strings.Repeat("a", qr.MaxBytes+1)); !errors.Is(err, qr.ErrTooLong) {
		t.Errorf("got %v", err)
	}
}
