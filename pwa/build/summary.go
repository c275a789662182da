package main

import (
	"fmt"
	"path"
)

// summary says in one line what was built and how much of it travels.
func summary(files, packed tree, version string) string {
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
	return fmt.Sprintf("built version %s: %d files, WASM %d kB and scripts with styles %d kB as brotli",
		version, len(files), wasm/1000, scripts/1000)
}
