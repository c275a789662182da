package pwa

import (
	"bytes"
	"compress/gzip"
	"io"
)

// Unpack gives back what a file of the build held before it became a ".gz" one. The largest file, the calculations, is
// there in compressed forms only: its plain form would be a fifth of the whole program.
func Unpack(small []byte) ([]byte, error) {
	reader, err := gzip.NewReader(bytes.NewReader(small))
	if err != nil {
		return nil, err
	}
	return io.ReadAll(reader)
}
