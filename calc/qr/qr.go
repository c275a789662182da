// Package qr draws a short text as a QR code, the two-dimensional bar code of ISO/IEC 18004: byte mode, error correction M,
// sizes 1 to 6, mask 0. That is enough for an address on a wheel's tag
// and for the address that phones open.
package qr

import "errors"

// Quiet is the white rim that a reader needs, in modules (ISO/IEC 18004).
const Quiet = 4

// MaxBytes is the longest text.
const MaxBytes = 106

// ErrTooLong says that a text does not go into the largest size.
var ErrTooLong = errors.New("the text is longer than 106 bytes")

// Code is a square of modules, without the quiet zone.
type Code struct {
	size  int
	dark  []bool
	fixed []bool // modules that carry no data
}

// Size is how many modules a side has.
func (c *Code) Size() int { return c.size }

// Dark tells whether a module is dark; outside of the square none is.
func (c *Code) Dark(x, y int) bool {
	return x >= 0 && y >= 0 && x < c.size && y < c.size && c.dark[y*c.size+x]
}

// version is one size at error correction M (ISO/IEC 18004, tables 7 and 9): blocks of data and check bytes.
type version struct{ blocks, data, check int }

var versions = []version{{1, 16, 10}, {1, 28, 16}, {1, 44, 26}, {2, 32, 18}, {2, 43, 24}, {4, 27, 16}}

// Encode draws a text. Errors: ErrTooLong.
func Encode(text string) (*Code, error) {
	for n, v := range versions {
		if len(text)+2 <= v.blocks*v.data { // mode and length take 12 bits, the end 4
			c := blank(n + 1)
			c.fill(v.codewords(text))
			return c, nil
		}
	}
	return nil, ErrTooLong
}

// codewords are the data with their check bytes, the blocks interleaved.
func (v version) codewords(text string) []byte {
	data := v.stuffed(text)
	blocks, checks := make([][]byte, v.blocks), make([][]byte, v.blocks)
	for i := range blocks {
		blocks[i] = data[i*v.data : (i+1)*v.data]
		checks[i] = remainder(blocks[i], v.check)
	}
	var out []byte
	for _, part := range [][][]byte{blocks, checks} {
		for i := range part[0] {
			for _, block := range part {
				out = append(out, block[i])
			}
		}
	}
	return out
}

// stuffed is mode 0100, the length, the text, an end of four zeros, and padding.
func (v version) stuffed(text string) []byte {
	out := make([]byte, 0, v.blocks*v.data)
	last := byte(0x40)
	for _, b := range append([]byte{byte(len(text))}, text...) {
		out = append(out, last|b>>4)
		last = b << 4
	}
	out = append(out, last)
	for pad := byte(0xEC); len(out) < cap(out); pad ^= 0xEC ^ 0x11 {
		out = append(out, pad)
	}
	return out
}

// remainder is what is left of the data after division by the Reed-Solomon generator of that many check bytes.
func remainder(data []byte, check int) []byte {
	generator := make([]byte, check)
	generator[check-1] = 1
	root := byte(1)
	for range check {
		for j := range generator {
			generator[j] = times(generator[j], root)
			if j+1 < check {
				generator[j] ^= generator[j+1]
			}
		}
		root = times(root, 2)
	}
	left := make([]byte, check)
	for _, b := range data {
		factor := b ^ left[0]
		copy(left, left[1:])
		left[check-1] = 0
		for i := range left {
			left[i] ^= times(generator[i], factor)
		}
	}
	return left
}

// times multiplies in GF(256) over x^8 + x^4 + x^3 + x^2 + 1.
func times(a, b byte) byte {
	var product byte
	for i := 7; i >= 0; i-- {
		carry := product >> 7
		product = product<<1 ^ carry*0x1D ^ (b>>i&1)*a
	}
	return product
}
