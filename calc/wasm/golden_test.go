package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

// The registry's golden answers once more, computed by WebAssembly: the tests themselves are compiled for it and run.
func TestGoldenInWebAssembly(t *testing.T) {
	program := filepath.Join(t.TempDir(), "registry.wasm")
	build := exec.Command("go", "test", "-c", "-o", program, "rimside/calc/registry")
	build.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm", "GOFLAGS=")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("building the tests for WebAssembly: %v\n%s", err, out)
	}
	code, err := os.ReadFile(program)
	if err != nil {
		t.Fatal(err)
	}
	const golden = "TestGolden"
	out := runInWebAssembly(t, code, "-test.v", "-test.run=^("+golden+"|TestGoldenReferencePoints|TestEveryExampleIsAnswered)$")
	for _, name := range []string{golden, "TestGoldenReferencePoints", "TestEveryExampleIsAnswered"} {
		if !strings.Contains(out, "--- PASS: "+name+" (") {
			t.Errorf("%s did not pass in WebAssembly:\n%s", name, out)
		}
	}
}

// runInWebAssembly runs a program in the registry's folder and returns what it printed; an exit code other than 0 fails.
func runInWebAssembly(t *testing.T, code []byte, args ...string) string {
	t.Helper()
	ctx := context.Background()
	machine := wazero.NewRuntime(ctx)
	defer machine.Close(ctx)
	wasi_snapshot_preview1.MustInstantiate(ctx, machine)
	var out bytes.Buffer
	config := wazero.NewModuleConfig().WithArgs(append([]string{"registry.test"}, args...)...).
		WithStdout(&out).WithStderr(&out).WithEnv("PWD", "/").
		WithSysWalltime().WithSysNanotime().WithSysNanosleep().WithRandSource(zeros{}).
		WithFSConfig(wazero.NewFSConfig().WithReadOnlyDirMount(filepath.Join("..", "registry"), "/"))
	started := time.Now()
	module, err := machine.InstantiateWithConfig(ctx, code, config)
	if err != nil && !strings.Contains(err.Error(), "exit_code(0)") {
		t.Fatalf("%v\n%s", err, &out)
	}
	if module != nil {
		defer module.Close(ctx)
	}
	t.Logf("compiled and run in %v", time.Since(started))
	return out.String()
}

// zeros is a random source that is not random: the same run every time.
type zeros struct{}

func (zeros) Read(p []byte) (int, error) {
	clear(p)
	return len(p), nil
}
