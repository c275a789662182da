package bundle

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// runtimePlugin lets a script import "wasm_exec.js": the glue that belongs to the very toolchain that compiles the
// WASM. Any other version of it may refuse to run the module.
func runtimePlugin(root string) (api.Plugin, error) {
	command := exec.Command("go", "env", "GOROOT")
	command.Dir = root
	said, err := command.Output()
	if err != nil {
		return api.Plugin{}, fmt.Errorf("asking the Go toolchain where it lives: %w", err)
	}
	glue := filepath.Join(strings.TrimSpace(string(said)), "lib", "wasm", "wasm_exec.js")
	if _, err := os.Stat(glue); err != nil {
		return api.Plugin{}, fmt.Errorf("this Go toolchain has no lib/wasm/wasm_exec.js; install a complete one: %w", err)
	}
	return api.Plugin{Name: "wasm_exec", Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: `^wasm_exec\.js$`},
			func(api.OnResolveArgs) (api.OnResolveResult, error) {
				return api.OnResolveResult{Path: glue}, nil
			})
	}}, nil
}
