package cli

import (
	"errors"
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
		return misused("misused.addr", "given", strconv.Quote(addr))
	}
	return nil
}

// explainListen says what to do when the system refuses an address.
func explainListen(addr string, err error) error {
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return trouble("addr.taken", "addr", addr)
	case errors.Is(err, os.ErrPermission):
		return trouble("addr.forbidden", "addr", addr)
	}
	return trouble("addr.cannot", "addr", addr, "why", err)
}

func hostName() string {
	name, err := os.Hostname()
	if err != nil {
		return ""
	}
	return name
}
