//go:build !linux

package cli_test

import "syscall"

// imageUser is asked for on Linux only.
func imageUser(string) *syscall.SysProcAttr { return nil }
