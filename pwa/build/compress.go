package main

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"github.com/andybalholm/brotli"
)

const (
	brotliDaily   = 9 // half a second for the whole app
	brotliRelease = 11
)

// codec is one way to compress: the suffix of its files, and both directions.
type codec struct {
	suffix string
	shrink func(content []byte, release bool) ([]byte, error)
	expand func(io.Reader) (io.Reader, error)
}

var codecs = []codec{
	{".br", shrinkBrotli, func(r io.Reader) (io.Reader, error) { return brotli.NewReader(r), nil }},
	{".gz", shrinkGzip, func(r io.Reader) (io.Reader, error) { return gzip.NewReader(r) }},
}

// packedOnly tells whether a file is in the build as brotli alone: the server's binary holds the whole build, and makes
// the other forms for the few clients that want them.
func packedOnly(name string) bool {
	return strings.HasPrefix(name, "a/") && slices.Contains([]string{".wasm", ".js", ".css"}, path.Ext(name))
}

// compressAll returns the files with a compressed one beside each that gains by it. Work done by an earlier build in
// out is taken over, but not for a release, as that build may have been a quick one.
func compressAll(files tree, out string, release bool) (tree, error) {
	packed := tree{}
	for name, content := range files {
		if !packedOnly(name) {
			packed[name] = content
		}
		if path.Ext(name) == ".png" {
			continue // compressed by nature
		}
		for _, way := range codecs {
			if packedOnly(name) && way.suffix != ".br" {
				continue
			}
			small, err := way.compress(name, content, out, release)
			if err != nil {
				return nil, err
			}
			if len(small) < len(content) || packedOnly(name) {
				packed[name+way.suffix] = small
			}
		}
	}
	return packed, nil
}

func (c codec) compress(name string, content []byte, out string, release bool) ([]byte, error) {
	if !release && strings.HasPrefix(name, "a/") {
		earlier, err := os.ReadFile(filepath.Join(out, filepath.FromSlash(name)+c.suffix))
		if err == nil && c.expandsTo(earlier, content) {
			return earlier, nil
		}
	}
	return c.shrink(content, release)
}

// expandsTo tells whether small is a whole compressed copy of content, and not the rest of an interrupted build.
func (c codec) expandsTo(small, content []byte) bool {
	reader, err := c.expand(bytes.NewReader(small))
	if err != nil {
		return false
	}
	full, err := io.ReadAll(io.LimitReader(reader, int64(len(content))+1))
	return err == nil && bytes.Equal(full, content)
}

func levelOf(release bool) int {
	if release {
		return brotliRelease
	}
	return brotliDaily
}

func shrinkBrotli(content []byte, release bool) ([]byte, error) {
	var small bytes.Buffer
	writer := brotli.NewWriterLevel(&small, levelOf(release))
	if _, err := writer.Write(content); err != nil {
		return nil, err
	}
	err := writer.Close()
	return small.Bytes(), err
}

func shrinkGzip(content []byte, _ bool) ([]byte, error) {
	var small bytes.Buffer
	writer, err := gzip.NewWriterLevel(&small, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := writer.Write(content); err != nil {
		return nil, err
	}
	err = writer.Close()
	return small.Bytes(), err
}
