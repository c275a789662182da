// Command wasirun runs a WebAssembly program on this machine: wasirun PROGRAM DIR [ARG...], with DIR as its root folder. It is a
// program of its own so that the compiler of WebAssembly is never itself slowed by the race detector.
package main

import (
	"context"
	"crypto/rand"
	"fmt"
	"os"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
	"github.com/tetratelabs/wazero/sys"
)

func main() {
	if err := run(os.Args[1], os.Args[2], os.Args[3:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(program, dir string, args []string) error {
	code, err := os.ReadFile(program)
	if err != nil {
		return err
	}
	ctx := context.Background()
	machine := wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfig().WithDebugInfoEnabled(false))
	defer machine.Close(ctx)
	wasi_snapshot_preview1.MustInstantiate(ctx, machine)
	config := wazero.NewModuleConfig().WithArgs(append([]string{program}, args...)...).
		WithStdout(os.Stdout).WithStderr(os.Stderr).WithEnv("PWD", "/").
		WithSysWalltime().WithSysNanotime().WithSysNanosleep().WithRandSource(rand.Reader).
		WithFSConfig(wazero.NewFSConfig().WithReadOnlyDirMount(dir, "/"))
	_, err = machine.InstantiateWithConfig(ctx, code, config)
	if exit, ended := err.(*sys.ExitError); ended && exit.ExitCode() == 0 {
		return nil
	}
	return err
}
