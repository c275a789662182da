package oplog

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
)

// Digest tells whether two holders have the same ops: the XOR of the SHA-256 of their ids. Two sets of ops that differ
// have, for all practical purposes, different digests, and adding an op costs the same however many there are.
type Digest [sha256.Size]byte

// Toggle adds an op's id, or takes it out again.
func (d *Digest) Toggle(id string) {
	for i, b := range sha256.Sum256([]byte(id)) {
		d[i] ^= b
	}
}

// String writes the digest as 64 hex digits.
func (d Digest) String() string { return hex.EncodeToString(d[:]) }

// ParseDigest reads what String wrote.
func ParseDigest(text string) (Digest, error) {
	var d Digest
	if raw, err := hex.DecodeString(text); err == nil && len(raw) == len(d) {
		copy(d[:], raw)
		return d, nil
	}
	return d, fmt.Errorf("a digest is 64 hex digits, not %q", text)
}
