package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// deployed reads a file of those by which the program runs by itself, and holds its settings to the flags that there are.
func deployed(t *testing.T, name string) string {
	t.Helper()
	content, err := os.ReadFile(filepath.Join("..", "deploy", name))
	if err != nil {
		t.Fatal(err)
	}
	_, help, _ := finish(t, program(t, nil, "serve", "-h"))
	named := regexp.MustCompile(`RIMSIDE_[A-Z_]+`).FindAllString(string(content), -1)
	if len(named) < 2 {
		t.Fatalf("%s sets %v: nothing was compared", name, named)
	}
	for _, variable := range named {
		if !strings.Contains(help, variable+"\n") {
			t.Errorf("%s sets %s, which serve does not know", name, variable)
		}
	}
	return string(content)
}

func TestTheUnitIsOneThatSystemdTakes(t *testing.T) {
	unit := deployed(t, "rimside.service")
	if _, err := exec.LookPath("systemd-analyze"); err != nil {
		t.Skip("systemd-analyze is not here: only the unit's variables were checked")
	}
	installed := strings.ReplaceAll(unit, "/usr/local/bin/rimside", binary)
	if installed == unit {
		t.Fatal("the unit starts another program than the page installs")
	}
	verify := func(text string) (string, error) {
		file := filepath.Join(t.TempDir(), "rimside.service")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		said, err := exec.Command("systemd-analyze", "verify", "--man=no", file).CombinedOutput()
		return string(said), err
	}
	if said, err := verify(installed); err != nil || strings.Contains(said, "rimside.service") {
		t.Errorf("systemd-analyze: %v\n%s", err, said)
	}
	if said, _ := verify(strings.Replace(installed, "ProtectHome=yes", "ProtectHomes=yes", 1)); !strings.Contains(said, "ProtectHomes") {
		t.Errorf("a wrong line is not noticed: %s", said)
	}
}

// What an image holds is the program and an empty folder. Where this may be tried, the program runs in just that, as the image's
// user, with the image's variables.
func TestTheProgramRunsInAnEmptyContainer(t *testing.T) {
	var env []string
	var did []string
	for line := range strings.Lines(deployed(t, "Containerfile")) {
		instruction, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
		if instruction == "" || instruction == "#" {
			continue
		}
		did = append(did, instruction)
		if instruction == "ENV" {
			env = strings.Fields(rest)
		}
	}
	if want := []string{"FROM", "COPY", "COPY", "USER", "WORKDIR", "ENV", "VOLUME", "EXPOSE", "STOPSIGNAL", "ENTRYPOINT", "CMD"}; !slices.Equal(did, want) {
		t.Errorf("the container file holds %v, want %v", did, want)
	}
	if runtime.GOOS != "linux" || os.Geteuid() != 0 {
		t.Skip("only root on Linux may try the program in an empty root folder; the file's instructions and variables were checked")
	}
	root := t.TempDir()
	if err := os.Chmod(root, 0o755); err != nil {
		t.Fatal(err)
	}
	alone := exec.Command("go", "build", "-o", filepath.Join(root, "rimside"), "rimside/server")
	alone.Env = append(os.Environ(), "CGO_ENABLED=0") // as releases are
	if said, err := alone.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	if err := os.Mkdir(filepath.Join(root, "data"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Chown(filepath.Join(root, "data"), 10001, 10001); err != nil {
		t.Fatal(err)
	}
	inside := func(args ...string) *exec.Cmd {
		command := exec.Command("/rimside", args...)
		command.Dir, command.Env = "/data", append(slices.Clone(env), "RIMSIDE_NAME=wheels.example", "RIMSIDE_ADDR=127.0.0.1:0")
		command.SysProcAttr = imageUser(root)
		return command
	}
	server := inside("serve")
	url := serving(t, server)
	if url != "https://wheels.example" {
		t.Errorf("it says to be at %s", url)
	}
	if code, said, wrong := finish(t, inside("pair")); code != 0 || !regexp.MustCompile(`\d{3} ?\d{3}`).MatchString(said) {
		t.Errorf("pair beside it: %d, %s%s", code, said, wrong)
	}
	if err := server.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if err := server.Wait(); err != nil {
		t.Errorf("it does not stop by the image's signal: %v", err)
	}
	if code, said, wrong := finish(t, inside("verify")); code != 0 {
		t.Errorf("verify: %s%s", said, wrong)
	}
}
