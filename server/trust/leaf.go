package trust

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"log/slog"
	"net"
	"net/netip"
	"slices"
	"sync"
	"time"
)

const (
	leafLife   = 397 * 24 * time.Hour // from the first day to the last; phones refuse much longer ones
	renewAhead = 60 * 24 * time.Hour  // before the last day
	lookEvery  = time.Minute          // for other addresses of this machine
)

// Leaf is the certificate that the server shows. It renews itself when it gets old, or when the machine's addresses change.
type Leaf struct {
	authority *Authority
	host      string
	addresses func() []netip.Addr
	now       func() time.Time
	log       *slog.Logger

	mu     sync.Mutex
	shown  *tls.Certificate
	from   time.Time // its first day and its last
	until  time.Time
	of     []netip.Addr
	looked time.Time
}

// NewLeaf prepares a certificate for a host's name and for this machine's addresses.
func NewLeaf(authority *Authority, host string, addresses func() []netip.Addr, now func() time.Time, log *slog.Logger) *Leaf {
	return &Leaf{authority: authority, host: host, addresses: addresses, now: now, log: log}
}

// Config is how the server speaks TLS with it.
func (l *Leaf) Config() *tls.Config {
	return &tls.Config{MinVersion: tls.VersionTLS12, GetCertificate: func(*tls.ClientHelloInfo) (*tls.Certificate, error) { return l.Certificate() }}
}

// Certificate gives the one that is good now.
func (l *Leaf) Certificate() (*tls.Certificate, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	now := l.time()
	if l.isGood(now) && now.Sub(l.looked).Abs() < lookEvery {
		return l.shown, nil
	}
	private := l.private()
	l.looked = now
	if l.isGood(now) && slices.Equal(private, l.of) {
		return l.shown, nil
	}
	made, err := l.make(private, now)
	if err != nil {
		if l.shown != nil {
			l.log.Error("the certificate could not be renewed", "error", err)
			return l.shown, nil
		}
		return nil, err
	}
	l.shown, l.from, l.until, l.of = made, made.Leaf.NotBefore, made.Leaf.NotAfter, private
	return made, nil
}

// isGood: neither old, nor made while the clock was far ahead.
func (l *Leaf) isGood(now time.Time) bool {
	return l.shown != nil && now.After(l.from) && now.Before(l.until.Add(-renewAhead))
}

// time is now, but never before the authority was made: a computer whose clock was lost must not make a certificate that
// ended long ago.
func (l *Leaf) time() time.Time {
	made := l.authority.cert.NotBefore.Add(backdated)
	if now := l.now(); now.After(made) {
		return now
	}
	return made
}

// private lists the machine's addresses that the authority may vouch for, and the one that is the server's name, if that
// is an address.
func (l *Leaf) private() []netip.Addr {
	var found []netip.Addr
	all := l.addresses()
	if own, err := netip.ParseAddr(l.host); err == nil {
		all = append(all, own)
	}
	for _, address := range all {
		address = address.Unmap().WithZone("")
		if isPrivate(address) && !slices.Contains(found, address) {
			found = append(found, address)
		}
	}
	slices.SortFunc(found, netip.Addr.Compare)
	return found
}

func isPrivate(address netip.Addr) bool {
	return slices.ContainsFunc(privateRanges, func(text string) bool { return netip.MustParsePrefix(text).Contains(address) })
}

// CanVouchFor tells whether an authority of our own can vouch for a host: for any name, but for private addresses only.
func CanVouchFor(host string) bool {
	address, err := netip.ParseAddr(host)
	return err != nil || isPrivate(address)
}

func (l *Leaf) make(addresses []netip.Addr, now time.Time) (*tls.Certificate, error) {
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return nil, err
	}
	serial, err := newSerial()
	if err != nil {
		return nil, err
	}
	from := now.Add(-backdated)
	template := &x509.Certificate{
		SerialNumber: serial, Subject: pkix.Name{CommonName: commonName(l.host)},
		NotBefore: from, NotAfter: from.Add(leafLife),
		KeyUsage: x509.KeyUsageDigitalSignature, ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth}, BasicConstraintsValid: true,
	}
	if _, err := netip.ParseAddr(l.host); err != nil {
		template.DNSNames = []string{l.host}
	}
	for _, address := range addresses {
		template.IPAddresses = append(template.IPAddresses, net.IP(address.AsSlice()))
	}
	der, err := x509.CreateCertificate(rand.Reader, template, l.authority.cert, &key.PublicKey, l.authority.key)
	if err != nil {
		return nil, err
	}
	leaf, err := x509.ParseCertificate(der)
	return &tls.Certificate{Certificate: [][]byte{der, l.authority.cert.Raw}, PrivateKey: key, Leaf: leaf}, err
}
