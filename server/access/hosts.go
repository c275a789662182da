// Package access decides who may speak to the server.
package access

import (
	"net"
	"net/netip"
	"strconv"
	"strings"
	"sync"
	"time"
)

// Hosts is the list of names that requests may call this server by. A page of a foreign site that makes its own name
// point at this machine still sends that name, and is turned away by it.
type Hosts struct {
	loopback bool   // only this machine can reach the listener
	own      string // the name that the server was given, "" for none
	names    func() []string
	now      func() time.Time

	mu    sync.Mutex
	known map[string]bool
	read  time.Time
}

// namesKeptFor bounds how often the machine is asked for its names: a request must not be able to make it busy.
const namesKeptFor = time.Minute

// ForListener returns the names for a server that listens at addr: the loopback names always, the name that the server was
// given ("" for none), and this machine's names and addresses when others can reach it.
func ForListener(addr net.Addr, own string) *Hosts {
	tcp, isTCP := addr.(*net.TCPAddr)
	return &Hosts{loopback: !isTCP || tcp.IP.IsLoopback(), own: strings.ToLower(own), names: MachineNames, now: time.Now}
}

// Loopback tells whether a Host header names this machine as it calls itself.
func (h *Hosts) Loopback(header string) bool {
	name, fine := hostname(header)
	return fine && isLoopback(name)
}

// Allows tells whether a request may carry this Host header. A malformed or empty one it may not.
func (h *Hosts) Allows(header string) bool {
	name, fine := hostname(header)
	switch {
	case !fine:
		return false
	case isLoopback(name), name == h.own && h.own != "":
		return true
	case h.loopback:
		return false
	}
	return h.isMachine(name)
}

func (h *Hosts) isMachine(name string) bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	if now := h.now(); h.known == nil || now.Sub(h.read) >= namesKeptFor {
		h.known = map[string]bool{}
		for _, name := range h.names() {
			h.known[name] = true
		}
		h.read = now
	}
	return h.known[name]
}

// hostname takes the port off a Host header and returns the after in one spelling: lower case, addresses as netip writes
// them.
func hostname(header string) (string, bool) {
	name, port := header, ""
	if strings.HasPrefix(header, "[") {
		inside, after, closed := strings.Cut(header[1:], "]")
		address, err := netip.ParseAddr(inside)
		if !closed || err != nil || !address.Is6() || address.Zone() != "" {
			return "", false
		}
		return address.String(), after == "" || isPort(after)
	}
	if at := strings.IndexByte(header, ':'); at >= 0 {
		name, port = header[:at], header[at:]
	}
	if !isName(name) || port != "" && !isPort(port) {
		return "", false
	}
	return strings.ToLower(name), true
}

func isName(name string) bool {
	for _, c := range []byte(name) {
		letter := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9'
		if !letter && c != '.' && c != '-' && c != '_' {
			return false
		}
	}
	return name != ""
}

// isPort takes ":" and one to five digits.
func isPort(text string) bool {
	if len(text) < 2 || text[0] != ':' || text[1] < '0' || text[1] > '9' {
		return false
	}
	_, err := strconv.ParseUint(text[1:], 10, 16)
	return err == nil
}

var loopback4 = netip.MustParsePrefix("127.0.0.0/8")

func isLoopback(name string) bool {
	if name == "localhost" {
		return true
	}
	address, err := netip.ParseAddr(name)
	return err == nil && (loopback4.Contains(address) || address == netip.IPv6Loopback())
}
