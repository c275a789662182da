package access

import (
	"net/http"
	"net/netip"
	"strings"
)

// forwarding are the headers by which a proxy says that it stands between: whoever sends one is not just this machine.
func isForwarded(r *http.Request) bool {
	for name := range r.Header {
		if name == "Forwarded" || name == "Via" || name == "X-Real-Ip" || strings.HasPrefix(name, "X-Forwarded") {
			return true
		}
	}
	return false
}

// peer is the address that a request comes from. Behind a proxy it is the last one that the proxy has noted; all others
// could be invented.
func peer(r *http.Request, behindProxy bool) netip.Addr {
	if behindProxy {
		noted := r.Header.Values("X-Forwarded-For")
		if len(noted) > 0 {
			all := strings.Split(noted[len(noted)-1], ",")
			if address, err := netip.ParseAddr(strings.TrimSpace(all[len(all)-1])); err == nil {
				return address.Unmap()
			}
		}
	}
	at, err := netip.ParseAddrPort(r.RemoteAddr)
	if err != nil {
		return netip.Addr{}
	}
	return at.Addr().Unmap()
}
