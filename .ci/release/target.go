package main

import (
	"strings"
)

// target is a system and a processor that a program is made for.
type target struct {
	system, processor string
	level             string // the oldest of its kind that is to run it, as the variable that Go reads
}

var targets = []target{
	{"linux", "amd64", "GOAMD64=v1"}, {"linux", "arm64", "GOARM64=v8.0"},
	{"linux", "arm", "GOARM=6"}, // every Raspberry Pi
	{"darwin", "amd64", "GOAMD64=v1"}, {"darwin", "arm64", "GOARM64=v8.0"},
	{"windows", "amd64", "GOAMD64=v1"}, {"windows", "arm64", "GOARM64=v8.0"},
}

// name is what people call it: darwin is the core of macOS.
func (t target) name() string {
	system := t.system
	if system == "darwin" {
		system = "macos"
	}
	processor := t.processor
	if processor == "arm" {
		processor = "armv6"
	}
	return system + "-" + processor
}

func (t target) file(version string) string {
	name := "rimside-" + version + "-" + t.name()
	if t.system == "windows" {
		name += ".exe"
	}
	return name
}

// variables are those that the Go toolchain is told the target by.
func (t target) variables() []string {
	return []string{"GOOS=" + t.system, "GOARCH=" + t.processor, t.level}
}

func allNames() string {
	var names []string
	for _, each := range targets {
		names = append(names, each.name())
	}
	return strings.Join(names, ", ")
}
