package web

import (
	"fmt"
	"path"
)

// contentTypes is what the app consists of. The system's own table is not asked: it differs between machines, and a
// worker with a wrong type does not start.
var contentTypes = map[string]string{
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".json":        "application/json",
	".webmanifest": "application/manifest+json",
	".wasm":        "application/wasm",
	".png":         "image/png",
	".svg":         "image/svg+xml",
}

func contentType(name string) (string, error) {
	kind, found := contentTypes[path.Ext(name)]
	if !found {
		return "", fmt.Errorf("no content type is known for %s in the built app; add its ending to server/web/types.go", name)
	}
	return kind, nil
}
