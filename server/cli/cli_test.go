package cli_test

import (
	"net"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"rimside/pwa"
)

func TestExitCodesAndMessages(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	full := t.TempDir()
	file := filepath.Join(full, "letter.txt")
	if err := os.WriteFile(file, []byte("dear"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		name string
		env  []string
		args []string
		code int
		says []string
	}{
		{"unknown command", nil, []string{"sevre"}, 2, []string{`"sevre"`, "rimside help"}},
		{"unknown flag", nil, []string{"-port", "80"}, 2, []string{"-port", "rimside help"}},
		{"flag without its value", nil, []string{"serve", "-addr"}, 2, []string{"-addr"}},
		{"flag with nonsense", nil, []string{"-demo=perhaps"}, 2, []string{"demo", "perhaps"}},
		{"argument of serve", nil, []string{"serve", "now"}, 2, []string{`"now"`}},
		{"argument of licences", nil, []string{"licences", "all"}, 2, []string{`"all"`}},
		{"licences of no release", nil, []string{"licences"}, 1, []string{"./.ci/release"}},
		{"argument of version", nil, []string{"version", "now"}, 2, []string{`"now"`}},
		{"no port", nil, []string{"-addr", "127.0.0.1"}, 2, []string{`"127.0.0.1"`, "127.0.0.1:7467"}},
		{"port too high", nil, []string{"-addr", "127.0.0.1:70000"}, 2, []string{"65535"}},
		{"port by name", nil, []string{"-addr", "127.0.0.1:http"}, 2, []string{"-addr"}},
		{"bad address by variable", []string{"RIMSIDE_ADDR=nowhere"}, nil, 2, []string{`"nowhere"`}},
		{"bad variable", []string{"RIMSIDE_DEMO=perhaps"}, nil, 2, []string{"RIMSIDE_DEMO", "perhaps"}},
		{"port taken", nil, []string{"-addr", taken.Addr().String()}, 1, []string{taken.Addr().String(), "taken", "-addr"}},
		{"address of another machine", nil, []string{"-addr", "192.0.2.1:7467"}, 1, []string{"192.0.2.1:7467", "-addr"}},
		{"data folder below a file", nil, []string{"-addr", "127.0.0.1:0", "-data", filepath.Join(file, "book")}, 1, []string{"-data", file}},
		{"data folder is a file", nil, []string{"-addr", "127.0.0.1:0", "-data", file}, 1, []string{"-data", file}},
		{"data folder by variable", []string{"RIMSIDE_DATA=" + file}, []string{"-addr", "127.0.0.1:0"}, 1, []string{file}},
		{"no home", []string{"HOME=", "LocalAppData="}, []string{"-addr", "127.0.0.1:0"}, 1, []string{"-data"}},
		{"certificate without its key", nil, []string{"-cert", file}, 2, []string{"-cert and -key go together"}},
		{"key without its certificate", nil, []string{"-key", file}, 2, []string{"-cert and -key go together"}},
		{"lan with a certificate", nil, []string{"-lan", "-cert", file, "-key", file}, 2, []string{"-lan makes a certificate by itself"}},
		{"proxy with lan", nil, []string{"-behind-proxy", "-name", "a.example", "-lan"}, 2, []string{"leave out -lan"}},
		{"proxy with a certificate", nil, []string{"-behind-proxy", "-name", "a.example", "-cert", file, "-key", file}, 2, []string{"leave out -lan, -cert and -key"}},
		{"proxy without a name", nil, []string{"-behind-proxy"}, 2, []string{"-name HOST"}},
		{"proxy without a name, by variable", []string{"RIMSIDE_BEHIND_PROXY=true"}, nil, 2, []string{"-name HOST"}},
		{"name with a scheme", nil, []string{"-name", "https://a.example"}, 2, []string{"-name cannot be", "car.local:7467"}},
		{"name with a gap", nil, []string{"-lan", "-name", "car..local"}, 2, []string{`"car..local"`}},
		{"name with an end", nil, []string{"-lan", "-name", "car.local."}, 2, []string{`"car.local."`}},
		{"name with a sign", nil, []string{"-name", "c_r.local"}, 2, []string{`"c_r.local"`}},
		{"name with the port 0", nil, []string{"-name", "car.local:0"}, 2, []string{`"car.local:0"`}},
		{"name with a port by name", nil, []string{"-name", "car.local:https"}, 2, []string{`"car.local:https"`}},
		{"public address as a name", nil, []string{"-lan", "-name", "192.0.2.1"}, 2, []string{"private", "192.168.1.20"}},
		{"files that hold no certificate", nil, []string{"-cert", file, "-key", file, "-addr", "127.0.0.1:0", "-data", filepath.Join(full, "data")}, 1, []string{"the certificate cannot be used"}},
		{"argument of pair", nil, []string{"pair", "now"}, 2, []string{`"now"`}},
		{"pair without a book", nil, []string{"pair", "-data", filepath.Join(full, "nothing")}, 1, []string{"no book in"}},
		{"site without a folder", nil, []string{"site"}, 2, []string{"site DIR"}},
		{"site with two folders", nil, []string{"site", "a", "b"}, 2, []string{"site DIR"}},
		{"site over something else", nil, []string{"site", full}, 1, []string{buildOr("empty folder")}},
	} {
		t.Run(test.name, func(t *testing.T) {
			code, stdout, stderr := finish(t, program(t, test.env, test.args...))
			if code != test.code || stdout != "" {
				t.Errorf("exit code %d, stdout %q, want %d and nothing", code, stdout, test.code)
			}
			line, isLine := strings.CutSuffix(stderr, "\n")
			if !isLine || strings.Contains(line, "\n") || !strings.HasPrefix(line, "rimside: ") {
				t.Errorf("stderr is not one line of ours: %q", stderr)
			}
			for _, text := range test.says {
				if !strings.Contains(stderr, text) {
					t.Errorf("stderr lacks %q: %s", text, stderr)
				}
			}
		})
	}
	if text, err := os.ReadFile(file); err != nil || string(text) != "dear" {
		t.Errorf("a file that is not ours was touched: %q, %v", text, err)
	}
}

// buildOr is what a command that needs the built app says: the text, or that a build is missing.
func buildOr(text string) string {
	if pwa.Version(pwa.Dist()) == "" {
		return "go generate ./..."
	}
	return text
}

func TestHelp(t *testing.T) {
	for _, args := range [][]string{{"help"}, {"-h"}, {"--help"}, {"serve", "-h"}} {
		code, stdout, stderr := finish(t, program(t, nil, args...))
		if code != 0 || stderr != "" {
			t.Errorf("%v: exit code %d, stderr %q", args, code, stderr)
		}
		for _, text := range []string{"-addr", "RIMSIDE_ADDR", "-data", "RIMSIDE_DATA", "book's file", "-demo", "RIMSIDE_DEMO", "-dev", "127.0.0.1:7467"} {
			if !strings.Contains(stdout, text) {
				t.Errorf("%v: the help lacks %q: %s", args, text, stdout)
			}
		}
	}
}

func TestVersion(t *testing.T) {
	code, stdout, _ := finish(t, program(t, nil, "version"))
	want := pwa.Version(pwa.Dist())
	if want == "" {
		want = "go generate ./..."
	}
	if code != 0 || !strings.Contains(stdout, want) || !strings.Contains(stdout, runtime.Version()) || strings.Count(stdout, "\n") != 1 {
		t.Errorf("exit code %d, stdout %q, want one line with %q and %s", code, stdout, want, runtime.Version())
	}
}

func TestSiteCommand(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "site")
	code, stdout, stderr := finish(t, program(t, nil, "site", dir))
	if pwa.Version(pwa.Dist()) == "" {
		if code != 1 || !strings.Contains(stderr, "go generate ./...") {
			t.Errorf("without a build: exit code %d, stderr %q", code, stderr)
		}
		return
	}
	if code != 0 || !strings.Contains(stdout, dir) {
		t.Fatalf("exit code %d, stdout %q, stderr %q", code, stdout, stderr)
	}
	for _, name := range []string{"index.html", "recover/index.html"} {
		page, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil || !strings.Contains(string(page), `http-equiv="Content-Security-Policy"`) {
			t.Errorf("%s: %v, or no policy in it", name, err)
		}
	}
	if code, _, stderr := finish(t, program(t, nil, "site", dir)); code != 0 {
		t.Errorf("writing it once more: exit code %d, %s", code, stderr)
	}
}
