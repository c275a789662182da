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
	if l.shown != nil && now.Before(l.until.Add(-renewAhead)) && now.Sub(l.looked).Abs() < lookEvery {
		return l.shown, nil
	}
	private := l.private()
	l.looked = now
	if l.shown != nil && now.Before(l.until.Add(-renewAhead)) && slices.Equal(private, l.of) {
		return l.shown, nil
	}
	made, until, err := l.make(private, now)
	if err != nil {
		if l.shown != nil {
			l.log.Error("the certificate could not be renewed", "error", err)
			return l.shown, nil
		}
		return nil, err
	}
	l.shown, l.until, l.of = made, until, private
	return made, nil
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

// private lists the machine's addresses that the authority may vouch for.
func (l *Leaf) private() []netip.Addr {
	var found []netip.Addr
	for _, address := range l.addresses() {
		address = address.Unmap().WithZone("")
		inside := slices.ContainsFunc(privateRanges, func(text string) bool { return netip.MustParsePrefix(text).Contains(address) })
		if inside && !slices.Contains(found, address) {
			found = append(found, address)
		}
	}
	slices.SortFunc(found, netip.Addr.Compare)
	return found
}

func (l *Leaf) make(addresses []netip.Addr, now time.Time) (*tls.Certificate, time.Time, error) {
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return nil, now, err
	}
	serial, err := newSerial()
	if err != nil {
		return nil, now, err
	}
	from := now.Add(-backdated)
	template := &x509.Certificate{
		SerialNumber: serial, Subject: pkix.Name{CommonName: l.host}, DNSNames: []string{l.host},
		NotBefore: from, NotAfter: from.Add(leafLife),
		KeyUsage: x509.KeyUsageDigitalSignature, ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth}, BasicConstraintsValid: true,
	}
	for _, address := range addresses {
		template.IPAddresses = append(template.IPAddresses, net.IP(address.AsSlice()))
	}
	der, err := x509.CreateCertificate(rand.Reader, template, l.authority.cert, &key.PublicKey, l.authority.key)
	if err != nil {
		return nil, now, err
	}
	return &tls.Certificate{Certificate: [][]byte{der, l.authority.cert.Raw}, PrivateKey: key}, template.NotAfter, nil
}
