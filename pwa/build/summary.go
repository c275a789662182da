package main

import (
	"fmt"
	"path"
)

// summary says in one line what was built and how much of it travels. A copy taken over from an earlier build may have been
// compressed further than this one would.
func summary(files, packed tree, version string, release bool) string {
	var wasm, scripts int
	for name := range files {
		size := len(packed[name+".br"])
		if size == 0 {
			size = len(files[name])
		}
		switch path.Ext(name) {
		case ".wasm":
			wasm += size
		case ".js", ".css":
			scripts += size
		}
	}
	return fmt.Sprintf("built version %s: %d files, WASM %d kB and scripts with styles %d kB as brotli %d",
		version, len(files), wasm/1000, scripts/1000, levelOf(release))
}
