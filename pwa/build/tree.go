package main

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"
)

// tree maps a file's slash-separated path in the built app to its bytes.
type tree map[string][]byte

// addHashed files content under a/<hash of content>/name and returns that path. Such a file never changes at its
// address, so browsers may keep it for good.
func (t tree) addHashed(name string, content []byte) string {
	sum := sha256.Sum256(content)
	address := path.Join("a", hex.EncodeToString(sum[:])[:10], name)
	t[address] = content
	return address
}

// addModules files scripts that load each other, in one folder named by the content of all, and returns the folder.
func (t tree) addModules(scripts map[string][]byte) string {
	folder := path.Join("a", tree(scripts).version()[:10])
	for name, content := range scripts {
		t[path.Join(folder, name)] = content
	}
	return folder
}

// paths returns the tree's paths in order.
func (t tree) paths() []string {
	return slices.Sorted(maps.Keys(t))
}

// version is a hash over what the app consists of. The service worker and version.json are not in the tree yet when it
// is taken: they carry it.
func (t tree) version() string {
	var list strings.Builder
	for _, name := range t.paths() {
		fmt.Fprintf(&list, "%s %x\n", name, sha256.Sum256(t[name]))
	}
	sum := sha256.Sum256([]byte(list.String()))
	return hex.EncodeToString(sum[:])[:12]
}
