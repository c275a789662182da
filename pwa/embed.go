// Package pwa holds the built web app, embedded so that one binary is all there is to carry.
package pwa

import (
	"embed"
	"io/fs"
)

//go:generate go run ./build

// The folder is embedded whole ("all:" takes .keep along), so that the package compiles before the first build.
//
//go:embed all:dist
var dist embed.FS

// Dist returns the built app: index.html at its root once `go generate ./...` has run, and only .keep before.
func Dist() fs.FS {
	sub, err := fs.Sub(dist, "dist")
	if err != nil {
		panic(err) // only a malformed constant path could cause it
	}
	return sub
}
