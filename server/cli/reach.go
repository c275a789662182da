package cli

import (
	"context"
	"crypto/tls"
	"log/slog"
	"net"
	"net/netip"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"rimside/server/access"
	"rimside/server/trust"
	"rimside/server/web"
	"rimside/store/sqlite"
)

// reach is how a server can be reached: by which name, with which certificate, and where phones learn to trust it.
type reach struct {
	access    web.Access
	tls       *tls.Config      // nil for plain http
	authority *trust.Authority // of -lan; nil otherwise
	fresh     bool             // the authority is new: phones have to trust it
	page      string           // where they learn to; "" for none
}

// checkReach finds flags that do not go together before anything is opened.
func (s *serveSettings) checkReach() error {
	switch {
	case (s.cert == "") != (s.key == ""):
		return misused("misused.cert")
	case s.lan && s.cert != "":
		return misused("misused.lan")
	case s.proxy && (s.lan || s.cert != ""):
		return misused("misused.proxy")
	case s.proxy && s.name == "":
		return misused("misused.unnamed")
	case s.name != "" && !isHostPort(s.name):
		return misused("misused.name", "given", strconv.Quote(s.name))
	case s.lan && !trust.CanVouchFor(s.host()):
		return misused("misused.public", "given", strconv.Quote(s.name))
	}
	return nil
}

var labelForm = regexp.MustCompile(`^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?$`)

const longestName = 253 // with the points, RFC 1035

func isHostPort(text string) bool {
	host, port, found := strings.Cut(strings.ToLower(text), ":")
	if number, err := strconv.ParseUint(port, 10, 16); found && (err != nil || number == 0) {
		return false
	}
	badLabel := func(label string) bool { return !labelForm.MatchString(label) }
	return len(host) <= longestName && !slices.ContainsFunc(strings.Split(host, "."), badLabel)
}

// host is the name that was given, without its port.
func (s *serveSettings) host() string {
	host, _, _ := strings.Cut(strings.ToLower(s.name), ":")
	return host
}

// reachOf works out how a server is reached that listens at an address.
func reachOf(ctx context.Context, s serveSettings, at net.Addr, book *sqlite.Book, log *slog.Logger) (r reach, err error) {
	r.access.Policy = access.Policy{Login: s.login || s.lan || s.proxy, BehindProxy: s.proxy}
	r.access.Secure = s.lan || s.proxy || s.cert != ""
	r.access.Strict = s.cert != ""
	tcp, isTCP := at.(*net.TCPAddr)
	others := !isTCP || !tcp.IP.IsLoopback()
	host, port := s.canonical(at)
	if s.name != "" || s.lan || others {
		r.access.Host = host
		r.access.Origin = origin(host, port, r.access.Secure)
	} // else only this machine comes, and any of its names will do
	switch {
	case s.lan:
		if r.authority, r.fresh, err = trust.OpenAuthority(ctx, book, host, book.Now()); err == nil {
			r.tls = trust.NewLeaf(r.authority, host, machineAddresses, book.Now, log).Config()
		}
	case s.cert != "":
		var files *trust.Files
		if files, err = trust.OpenFiles(s.cert, s.key, time.Now, log); err == nil {
			r.tls = files.Config()
		}
	}
	return r, err
}

// canonical is the one name and port that the app lives at.
func (s *serveSettings) canonical(at net.Addr) (host, port string) {
	host, port, _ = strings.Cut(strings.ToLower(s.name), ":")
	if host == "" {
		host = localName()
	}
	if tcp, isTCP := at.(*net.TCPAddr); isTCP && port == "" && !s.proxy {
		port = strconv.Itoa(tcp.Port)
	}
	return host, port
}

// localName is the name by which this machine is found on its network without a name server (RFC 6762).
func localName() string {
	name, err := os.Hostname()
	if err != nil || name == "" {
		return "rimside.local"
	}
	short, _, _ := strings.Cut(strings.ToLower(name), ".")
	return short + ".local"
}

func origin(host, port string, secure bool) string {
	scheme, usual := "http", "80"
	if secure {
		scheme, usual = "https", "443"
	}
	if port == "" || port == usual {
		return scheme + "://" + host
	}
	return scheme + "://" + host + ":" + port
}

// machineAddresses are the addresses that others reach this machine by.
func machineAddresses() []netip.Addr {
	found, err := net.InterfaceAddrs()
	if err != nil {
		return nil
	}
	var addresses []netip.Addr
	for _, each := range found {
		if network, isNetwork := each.(*net.IPNet); isNetwork {
			if address, fine := netip.AddrFromSlice(network.IP); fine {
				addresses = append(addresses, address)
			}
		}
	}
	return addresses
}
