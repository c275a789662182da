package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// twice makes one release in two folders and returns the second, once it is the same as the first.
func twice(t *testing.T, o order, cache string) string {
	t.Helper()
	first, second := filepath.Join(t.TempDir(), "first"), filepath.Join(t.TempDir(), "a second, elsewhere")
	o.out = first
	if err := release(o); err != nil {
		t.Fatal(err)
	}
	o.out, o.cache = second, cache
	if err := release(o); err != nil {
		t.Fatal(err)
	}
	a, b := contents(t, first), contents(t, second)
	if len(a) != len(o.only)+2 || len(b) != len(a) {
		t.Fatalf("%d and %d files, want %d programs, the licences and the checksums", len(a), len(b), len(o.only))
	}
	for name, content := range a {
		if !bytes.Equal(content, b[name]) {
			t.Errorf("%s differs between two builds of one commit", name)
		}
		sum := fmt.Sprintf("%x  %s\n", sha256.Sum256(content), name)
		if name != "SHA256SUMS" && !strings.Contains(string(a["SHA256SUMS"]), sum) {
			t.Errorf("SHA256SUMS lacks %s", sum)
		}
	}
	return second
}

func contents(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string][]byte{}
	for _, entry := range entries {
		if all[entry.Name()], err = os.ReadFile(filepath.Join(folder, entry.Name())); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// One system, on any day. RIMSIDE_RELEASE=1 builds for all, the second time from nothing, which takes a quarter of an hour.
func TestTwoBuildsAreTheSame(t *testing.T) {
	here := slices.IndexFunc(targets, func(each target) bool { return each.system == runtime.GOOS && each.processor == runtime.GOARCH })
	if here < 0 {
		t.Skipf("there is no release for %s/%s to try", runtime.GOOS, runtime.GOARCH)
	}
	o, cache := order{version: "9.8.7-test", only: targets[here : here+1], quick: true}, ""
	if os.Getenv("RIMSIDE_RELEASE") != "" {
		o.only, o.quick, cache = targets, false, t.TempDir()
	}
	folder := twice(t, o, cache)
	program := filepath.Join(folder, targets[here].file(o.version))
	say := func(args ...string) string {
		said, err := exec.Command(program, args...).Output()
		if err != nil {
			t.Fatalf("%v: %v", args, err)
		}
		return string(said)
	}
	if said := say("version"); !strings.HasPrefix(said, "rimside 9.8.7-test app ") || !strings.Contains(said, runtime.Version()) {
		t.Errorf("version says %q", said)
	}
	beside, err := os.ReadFile(filepath.Join(folder, "LICENCES.txt"))
	if err != nil || say("licences") != string(beside) {
		t.Errorf("the program tells other licences than the file beside it (%v)", err)
	}
	for _, needed := range []string{"Go's standard library " + runtime.Version(), "modernc.org/sqlite v", "LICENSE-SQLITE", "github.com/gorilla/mux v", "gonum.org/v1/gonum v", "github.com/evanw/esbuild v", "Redistribution and use in source"} {
		if !strings.Contains(string(beside), needed) {
			t.Errorf("the licences lack %q", needed)
		}
	}
	for _, stranger := range []string{"github.com/chromedp/", "honnef.co/", "pgregory.net/", "github.com/tetratelabs/"} {
		if strings.Contains(string(beside), stranger) {
			t.Errorf("%s stands in the licences and is in no program", stranger)
		}
	}
	content, err := os.ReadFile(program)
	if root, wrong := git("", "rev-parse", "--show-toplevel"); err != nil || wrong != nil || bytes.Contains(content, bytes.TrimSpace(root)) || bytes.Contains(content, []byte("rimside-release-")) {
		t.Errorf("the program tells in what folder it was made (%v, %v)", err, wrong)
	}
}

func TestAPartWithoutALicenceStopsTheRelease(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "PATENTS"), []byte("none"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []part{{"example.org/nothing", "v1", folder}, {"example.org/absent", "v1", ""}} {
		if _, err := page([]part{bad}); err == nil || !strings.Contains(err.Error(), bad.name) {
			t.Errorf("%s: %v", bad.name, err)
		}
	}
	if err := os.WriteFile(filepath.Join(folder, "COPYING"), []byte("Take it."), 0o600); err != nil {
		t.Fatal(err)
	}
	text, err := page([]part{{"example.org/a", "v1", folder}, {"example.org/b", "v2", folder}})
	if err != nil || strings.Count(text, "Take it.") != 1 || !strings.Contains(text, "example.org/a v1 (COPYING)\nexample.org/b v2 (COPYING)") {
		t.Errorf("%v: %s", err, text)
	}
}

func TestWhatCannotBeReleasedIsRefused(t *testing.T) {
	for _, version := range []string{"", "v1", "1 -X a=b", "1/2", "1.2.3.4.5"} {
		if err := release(order{version: version, out: t.TempDir(), only: targets[:1]}); err == nil {
			t.Errorf("version %q was taken", version)
		}
	}
	full := t.TempDir()
	if err := os.WriteFile(filepath.Join(full, "x"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := release(order{version: "1.0", out: full, only: targets[:1]}); err == nil || !strings.Contains(err.Error(), full) {
		t.Errorf("a folder with something in it: %v", err)
	}
	if _, err := choose("linux-amd64,plan9-mips"); err == nil || !strings.Contains(err.Error(), "linux-armv6") {
		t.Errorf("a system that is none: %v", err)
	}
}
