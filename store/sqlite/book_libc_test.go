package sqlite_test

import (
	"os/exec"
	"strings"
	"testing"
)

// The driver is C turned into Go against one version of its C library. Another one may link and then corrupt memory.
func TestLibcIsTheOneTheDriverWasMadeFor(t *testing.T) {
	const driver, libc = "modernc.org/sqlite", "modernc.org/libc"
	used := versions(t, "list", "-m", "-f", "{{.Path}} {{.Version}}", driver, libc)
	if used[driver] == "" || used[libc] == "" {
		t.Fatalf("the modules in use are not known: %v", used)
	}
	file := said(t, "list", "-m", "-f", "{{.GoMod}}", driver)
	wanted := versions(t, "mod", "edit", "-fmt", "-print", strings.TrimSpace(file))
	if wanted[libc] == "" {
		t.Fatalf("%s does not say which %s it needs", file, libc)
	}
	if used[libc] != wanted[libc] {
		t.Errorf("%s is %s, but %s %s needs %s: go get %s@%s", libc, used[libc], driver, used[driver], wanted[libc], libc, wanted[libc])
	}
}

// versions reads lines of a module and its version.
func versions(t *testing.T, args ...string) map[string]string {
	t.Helper()
	found := map[string]string{}
	for line := range strings.Lines(said(t, args...)) {
		if fields := strings.Fields(strings.TrimPrefix(strings.TrimSpace(line), "require ")); len(fields) >= 2 {
			found[fields[0]] = fields[1]
		}
	}
	return found
}

func said(t *testing.T, args ...string) string {
	t.Helper()
	out, err := exec.Command("go", args...).Output()
	if err != nil {
		t.Fatalf("go %s: %v", strings.Join(args, " "), err)
	}
	return string(out)
}
