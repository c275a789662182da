package web_test

import (
	"bytes"
	"testing/fstest"

	"github.com/andybalholm/brotli"

	"rimside/calc/registry"
	"rimside/server/web"
)

const (
	shell  = "<!doctype html><title>the shell</title>"
	script = "console.log('main')"
	worker = "self.version = 1"
	wasm   = "\x00asm plain"
)

// builtApp is a made-up build with every kind of file. The compressed copies are marked rather than compressed.
func builtApp() fstest.MapFS {
	files := fstest.MapFS{}
	for name, content := range map[string]string{
		".keep": "", "index.html": shell, "index.html.br": "br shell", "index.html.gz": "gz shell",
		"recover/index.html": "<!doctype html><title>the recovery page</title>", "sw.js": worker, "sw.js.br": "br worker",
		"version.json": `{"version":"abc123abc123"}`, "app.webmanifest": `{"name":"Rimside"}`,
		"a/11/main.js": script, "a/11/main.js.br": "br script", "a/11/main.js.gz": "gz script",
		"a/22/calc.wasm": wasm, "a/22/calc.wasm.br": "br wasm", "a/33/main.css": "body{}", "a/44/icon.png": "\x89PNG",
		"a/77/packed.wasm.br": shrunk("packed"),
	} {
		files[name] = &fstest.MapFile{Data: []byte(content)}
	}
	return files
}

func shrunk(text string) string {
	var small bytes.Buffer
	writer := brotli.NewWriter(&small)
	_, _ = writer.Write([]byte(text)) // a buffer takes all
	_ = writer.Close()
	return small.String()
}

// calculations answers "echo" with its input, refuses "picky", breaks at "broken", and knows nothing else.
var calculations = web.Calculations{
	Contracts: func() []registry.Contract { return []registry.Contract{{Name: "echo", Example: "{}"}} },
	Call: func(name string, body []byte) ([]byte, error) {
		switch name {
		case "echo":
			return body, nil
		case "picky":
			return nil, &registry.Error{Code: "out_of_bounds", Field: "front.tyre.label_mm", Values: map[string]any{"min": 18.0, "max": 70.0, "unit": "mm"}}
		case "broken":
			panic("secret cause")
		}
		return nil, &registry.Error{Code: "unknown_calculation"}
	},
}

var realCalculations = web.Calculations{Call: registry.Call, Contracts: registry.Contracts}

var unbuiltApp = fstest.MapFS{".keep": &fstest.MapFile{}}
