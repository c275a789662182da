package cli

import (
	"errors"
	"fmt"
	"net"
	"os"
	"strconv"
	"syscall"
)

// checkAddress finds slips in an address before the system is asked, whose words for them help nobody.
func checkAddress(addr string) error {
	_, port, err := net.SplitHostPort(addr)
	if err == nil {
		_, err = strconv.ParseUint(port, 10, 16)
	}
	if err != nil {
		return usageError{fmt.Sprintf("-addr cannot be %q: give a host and a port up to 65535, such as %s", addr, usualAddress)}
	}
	return nil
}

// explainListen says what to do when the system refuses an address.
func explainListen(addr string, err error) error {
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return fmt.Errorf("%s is taken by another program, perhaps by Rimside itself: stop that one, or choose another port with -addr", addr)
	case errors.Is(err, os.ErrPermission):
		return fmt.Errorf("this account may not listen on %s: choose a port above 1023 with -addr", addr)
	}
	return fmt.Errorf("cannot listen on %s: choose an address of this machine with -addr (%w)", addr, err)
}

func hostName() string {
	name, err := os.Hostname()
	if err != nil {
		return ""
	}
	return name
}
