//go:build !js

package main

import "fmt"

// Built for anything but a browser, there is nothing to hang functions on.
func main() { fmt.Println("Build this with GOOS=js GOARCH=wasm: go generate ./... does.") }
