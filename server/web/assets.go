package web

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"net/http"
	"path"
	"strconv"
	"strings"
	"sync"

	"rimside/pwa"
)

// asset is a file of the built app, ready to send.
type asset struct {
	kind     string // content type
	tag      string // a hash of the content, for files whose address stays while they change
	variants map[string][]byte
	rare     *rareForms // of a file that the build has as brotli only; nil for others
}

// rareForms are made of a file when a client first wants it otherwise than it is stored.
type rareForms struct {
	once        sync.Once
	plain, gzip []byte
	err         error
}

// has tells whether the file can be sent in an encoding.
func (file asset) has(encoding string) bool {
	_, found := file.variants[encoding]
	return found || encoding == "gzip" && file.rare != nil
}

// encodings maps the ending of a compressed file to the encoding's name, in the order of preference.
var encodings = []struct{ ending, name string }{{".br", "br"}, {".gz", "gzip"}}

// loadAssets reads the built app into memory once: it is small, and no request can then reach the file system.
func loadAssets(dist fs.FS) (map[string]asset, error) {
	assets := map[string]asset{}
	err := fs.WalkDir(dist, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || strings.HasPrefix(path.Base(name), ".") {
			return err
		}
		if name = withoutEnding(name); assets[name].variants == nil {
			assets[name], err = loadAsset(dist, name)
		}
		return err
	})
	return assets, err
}

// withoutEnding is the name of the file that a compressed one stands for.
func withoutEnding(name string) string {
	for _, encoding := range encodings {
		name = strings.TrimSuffix(name, encoding.ending)
	}
	return name
}

// loadAsset reads a file with its compressed ones. A large file may be there in compressed forms only.
func loadAsset(dist fs.FS, name string) (asset, error) {
	kind, err := contentType(name)
	if err != nil {
		return asset{}, err
	}
	loaded := asset{kind: kind, variants: map[string][]byte{}}
	plain, err := fs.ReadFile(dist, name)
	if err == nil {
		loaded.variants["identity"] = plain
	} else if !errors.Is(err, fs.ErrNotExist) {
		return asset{}, err
	}
	if !strings.HasPrefix(name, "a/") {
		sum := sha256.Sum256(plain)
		loaded.tag = hex.EncodeToString(sum[:])[:16]
	}
	for _, encoding := range encodings {
		if small, err := fs.ReadFile(dist, name+encoding.ending); err == nil {
			loaded.variants[encoding.name] = small
		}
	}
	if _, found := loaded.variants["identity"]; !found {
		loaded.rare = &rareForms{}
	}
	return loaded, nil
}

// sendAsset answers with a file of the app, in the best encoding that the client takes.
func (a *app) sendAsset(w http.ResponseWriter, r *http.Request, name string) {
	file, found := a.assets[name]
	if !found {
		notFound(w, r)
		return
	}
	encoding := chooseEncoding(r.Header.Get("Accept-Encoding"), file.has)
	header := w.Header()
	header.Set("Vary", "Accept-Encoding")
	if file.tag == "" {
		header.Set("Cache-Control", "public, max-age=31536000, immutable")
	} else {
		tag := `"` + file.tag + "-" + encoding + `"`
		header.Set("Cache-Control", "no-cache")
		header.Set("ETag", tag)
		if matchesTag(r.Header.Get("If-None-Match"), tag) {
			w.WriteHeader(http.StatusNotModified)
			return
		}
	}
	body := file.body(encoding)
	if encoding != "identity" {
		header.Set("Content-Encoding", encoding)
	}
	header.Set("Content-Type", file.kind)
	header.Set("Content-Length", strconv.Itoa(len(body)))
	_, _ = w.Write(body) // a client that went away has no need of it
}

// body is the file in an encoding.
func (file asset) body(encoding string) []byte {
	if body, found := file.variants[encoding]; found {
		return body
	}
	file.rare.once.Do(func() { file.rare.make(file.variants["br"]) })
	if file.rare.err != nil {
		panic(file.rare.err) // the build made it
	}
	if encoding == "gzip" {
		return file.rare.gzip
	}
	return file.rare.plain
}

func (f *rareForms) make(small []byte) {
	if f.plain, f.err = pwa.Unpack(small); f.err != nil {
		return
	}
	var packed bytes.Buffer
	writer := gzip.NewWriter(&packed)
	_, err := writer.Write(f.plain)
	f.err = errors.Join(err, writer.Close())
	f.gzip = packed.Bytes()
}

// sendPart answers with a file that every build has; without a build it says what is missing.
func (a *app) sendPart(w http.ResponseWriter, r *http.Request, name string) {
	if a.version == "" {
		refuse(w, r, errNotBuilt)
		return
	}
	a.sendAsset(w, r, name)
}

// matchesTag tells whether an If-None-Match header names the tag. What a proxy marked as weak still names it.
func matchesTag(header, tag string) bool {
	for candidate := range strings.SplitSeq(header, ",") {
		candidate = strings.TrimSpace(candidate)
		if candidate == "*" || strings.TrimPrefix(candidate, "W/") == tag {
			return true
		}
	}
	return false
}
