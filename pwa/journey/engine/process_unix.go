//go:build unix

package engine

import (
	"os/exec"
	"syscall"
)

// together puts a program and all that it starts into one group, so that they can be ended together.
func together(command *exec.Cmd) { command.SysProcAttr = &syscall.SysProcAttr{Setpgid: true} }

func end(command *exec.Cmd) { _ = syscall.Kill(-command.Process.Pid, syscall.SIGKILL) }
