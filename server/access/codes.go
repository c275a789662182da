package access

import (
	"crypto/rand"
	"fmt"
	"math/big"
	"strings"
)

// CodeDigits is the length of a pairing code.
const CodeDigits = 6

// NewCode draws a pairing code.
func NewCode() string {
	n, err := rand.Int(rand.Reader, big.NewInt(1_000_000))
	if err != nil {
		panic(err) // the system's source of chance never fails
	}
	return fmt.Sprintf("%0*d", CodeDigits, n)
}

// ReadCode reads a code as a person types it: spaces and a hyphen between the digits do not count.
func ReadCode(text string) (code string, ok bool) {
	code = strings.NewReplacer(" ", "", "-", "", "\u00a0", "", "\u202f", "").Replace(text)
	if len(code) != CodeDigits || strings.Trim(code, "0123456789") != "" {
		return "", false
	}
	return code, true
}

// SpokenCode writes a code so that it is read without slips: "123 456".
func SpokenCode(code string) string { return code[:CodeDigits/2] + " " + code[CodeDigits/2:] }
