//go:build !js

package main

// Built for anything but a browser, there is nothing to hang functions on.
func main() { println("Build this with GOOS=js GOARCH=wasm: go generate ./... does.") }
