package pwa

import (
	"bytes"
	"io"

	"github.com/andybalholm/brotli"
)

// Unpack gives back what a file of the build held before it became a ".br" one. Large files are there in that form only:
// their plain forms and the gzip ones would be a tenth of the whole program, for the few clients that want them.
func Unpack(small []byte) ([]byte, error) {
	return io.ReadAll(brotli.NewReader(bytes.NewReader(small)))
}
