package spares

import (
	"math/bits"
	"strings"
)

// set is a set of small numbers, 64 to a word.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) add(i int)      { s[i/64] |= 1 << (i % 64) }
func (s set) has(i int) bool { return s[i/64]&(1<<(i%64)) != 0 }

func (s set) empty() bool {
	for _, word := range s {
		if word != 0 {
			return false
		}
	}
	return true
}

// without tells whether s holds something that other lacks.
func (s set) without(other set) bool {
	for i, word := range s {
		if word&^other[i] != 0 {
			return true
		}
	}
	return false
}

// union is both sets together.
func (s set) union(other set) set {
	out := make(set, len(s))
	for i, word := range s {
		out[i] = word | other[i]
	}
	return out
}

// each calls for every number in s that taken lacks, in order.
func (s set) each(taken set, call func(i int)) {
	for w, word := range s {
		if taken != nil {
			word &^= taken[w]
		}
		for ; word != 0; word &= word - 1 {
			call(w*64 + bits.TrailingZeros64(word))
		}
	}
}

// key is the same for equal sets only.
func (s set) key() string {
	var b strings.Builder
	for _, word := range s {
		for i := range 8 {
			b.WriteByte(byte(word >> (8 * i)))
		}
	}
	return b.String()
}
