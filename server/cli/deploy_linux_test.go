package cli_test

import "syscall"

// imageUser has a program see a folder as all there is, as the image's user.
func imageUser(root string) *syscall.SysProcAttr {
	return &syscall.SysProcAttr{Chroot: root, Credential: &syscall.Credential{Uid: 10001, Gid: 10001}}
}
