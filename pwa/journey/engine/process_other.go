//go:build !unix

package engine

import "os/exec"

func together(*exec.Cmd) {}

func end(command *exec.Cmd) { _ = command.Process.Kill() }
