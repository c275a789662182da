package access

import (
	"strings"
	"testing"
)

func TestCodesAreReadAsPeopleTypeThem(t *testing.T) {
	for text, want := range map[string]string{
		"123456": "123456", "123 456": "123456", " 1 2 3-4 5 6 ": "123456", "000\u202f000": "000000", "12\u00a03456": "123456",
		"": "", "12345": "", "1234567": "", "12345x": "", "+12345": "", "１２３４５６": "", "123,456": "", "-------": "", "0x1234": "",
	} {
		if got, fine := ReadCode(text); got != want || fine != (want != "") {
			t.Errorf("%q is read as %q, %v", text, got, fine)
		}
	}
}

func TestCodesAreSixDigitsAndDiffer(t *testing.T) {
	seen := map[string]bool{}
	for range 1000 {
		code := NewCode()
		if read, fine := ReadCode(SpokenCode(code)); !fine || read != code || len(code) != CodeDigits {
			t.Fatalf("%q is no code", code)
		}
		seen[code] = true
	}
	if len(seen) < 990 {
		t.Errorf("only %d of 1000 codes differ", len(seen))
	}
}

func FuzzReadCode(f *testing.F) {
	for _, text := range []string{"123456", "123 456", "", "１２３４５６", "12345\x00", "\xff\xfe"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		code, fine := ReadCode(text)
		if fine != (len(code) == CodeDigits) || strings.Trim(code, "0123456789") != "" {
			t.Errorf("%q is read as %q, %v", text, code, fine)
		}
	})
}
