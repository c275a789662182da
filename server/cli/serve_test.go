package cli_test

import (
	"io"
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"

	"rimside/pwa"
)

func get(t testing.TB, url string) (int, string) {
	t.Helper()
	response, err := http.Get(url)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	body, err := io.ReadAll(response.Body)
	if err != nil {
		t.Fatal(err)
	}
	return response.StatusCode, string(body)
}

func TestServeAnswersAndStops(t *testing.T) {
	data := filepath.Join(t.TempDir(), "some", "book")
	command := program(t, []string{"RIMSIDE_ADDR=nowhere"}, "serve", "-addr", "127.0.0.1:0", "-data", data)
	url := serving(t, command)
	if status, body := get(t, url+"/api/health"); status != 200 || !strings.Contains(body, `"ok":true`) {
		t.Errorf("health: status %d, %s", status, body)
	}
	want := http.StatusOK
	if pwa.Version(pwa.Dist()) == "" {
		want = http.StatusServiceUnavailable
	}
	if status, _ := get(t, url+"/"); status != want {
		t.Errorf("page: status %d, want %d", status, want)
	}
	if status, _ := get(t, url+"/api/demo"); status != http.StatusNoContent {
		t.Errorf("the invented event is there without -demo: status %d", status)
	}
	if runtime.GOOS == "windows" {
		return // neither these permissions nor this signal exist there
	}
	facts, err := os.Stat(data)
	if err != nil || facts.Mode().Perm() != 0o700 {
		t.Errorf("data folder: %v, %v, want one for the user's eyes only", facts, err)
	}
	if err := command.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if err := command.Wait(); err != nil {
		t.Errorf("asked to stop, it ended with %v; stderr: %s", err, command.Stderr)
	}
}

func TestTheDataFolderIsTheUsersOwnUnlessNamed(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("looks for the folder where Linux has it")
	}
	command := program(t, []string{"RIMSIDE_ADDR=127.0.0.1:0"})
	serving(t, command)
	if _, err := os.Stat(filepath.Join(command.Dir, ".local", "share", "rimside")); err != nil {
		t.Error(err)
	}
}

func TestDemoHandsOutTheInventedEventAndLeavesNoFolder(t *testing.T) {
	for name, command := range map[string]struct{ env, args []string }{
		"flag":     {nil, []string{"-demo", "-addr", "127.0.0.1:0"}},
		"variable": {[]string{"RIMSIDE_DEMO=true", "RIMSIDE_ADDR=127.0.0.1:0"}, nil},
	} {
		t.Run(name, func(t *testing.T) {
			run := program(t, command.env, command.args...)
			if status, body := get(t, serving(t, run)+"/api/demo"); status != 200 || !strings.Contains(body, `"draft"`) {
				t.Errorf("status %d, %.100s", status, body)
			}
			if left, err := os.ReadDir(run.Dir); err != nil || len(left) != 0 {
				t.Errorf("the demo left %v in the home (%v)", left, err)
			}
		})
	}
}

// BenchmarkFirstAnswer is the time from starting the program to its first answer.
func BenchmarkFirstAnswer(b *testing.B) {
	for b.Loop() {
		command := program(b, nil, "-addr", "127.0.0.1:0")
		if status, _ := get(b, serving(b, command)+"/api/health"); status != 200 {
			b.Fatalf("status %d", status)
		}
		b.StopTimer()
		_ = command.Process.Kill()
		_ = command.Wait()
		b.StartTimer()
	}
}
