package trust

import (
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"log/slog"
	"math/big"
	"net"
	"net/netip"
	"testing"
	"time"
)

// kept keeps secrets in memory.
type kept map[string][]byte

func (k kept) Secret(_ context.Context, name string, make func() ([]byte, error)) ([]byte, error) {
	if value, found := k[name]; found {
		return value, nil
	}
	value, err := make()
	if err == nil {
		k[name] = value
	}
	return value, err
}

func (k kept) PutSecret(_ context.Context, name string, value []byte) error {
	k[name] = value
	return nil
}

var noon = time.Date(2026, 6, 1, 12, 0, 0, 0, time.UTC)

var quiet = slog.New(slog.DiscardHandler)

func authorityOf(t testing.TB, secrets Secrets, host string, now time.Time) (*Authority, bool) {
	t.Helper()
	authority, fresh, err := OpenAuthority(t.Context(), secrets, host, now)
	if err != nil {
		t.Fatal(err)
	}
	return authority, fresh
}

// machine is a server whose clock and addresses a test moves.
type machine struct {
	*Leaf
	now       time.Time
	addresses []string
	asked     int
}

func machineOf(authority *Authority, host string, addresses ...string) *machine {
	m := &machine{now: noon, addresses: addresses}
	m.Leaf = NewLeaf(authority, host, func() (found []netip.Addr) {
		m.asked++
		for _, text := range m.addresses {
			found = append(found, netip.MustParseAddr(text))
		}
		return found
	}, func() time.Time { return m.now }, quiet)
	return m
}

func (m *machine) shows(t testing.TB) *x509.Certificate {
	t.Helper()
	shown, err := m.Certificate()
	if err != nil {
		t.Fatal(err)
	}
	leaf, err := x509.ParseCertificate(shown.Certificate[0])
	if err != nil {
		t.Fatal(err)
	}
	return leaf
}

// verify is what a phone does that trusts the authority.
func verify(authority *Authority, leaf *x509.Certificate, name string, at time.Time, between ...*x509.Certificate) error {
	roots, middle := x509.NewCertPool(), x509.NewCertPool()
	roots.AddCert(authority.cert)
	for _, each := range between {
		middle.AddCert(each)
	}
	_, err := leaf.Verify(x509.VerifyOptions{DNSName: name, Roots: roots, Intermediates: middle, CurrentTime: at})
	return err
}

// sign misuses an authority's key, as a thief would.
func sign(t testing.TB, template *x509.Certificate, parent *x509.Certificate, key *ecdsa.PrivateKey) (*x509.Certificate, *ecdsa.PrivateKey) {
	t.Helper()
	own, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	template.SerialNumber, template.NotBefore, template.NotAfter = big.NewInt(7), noon.Add(-time.Hour), noon.Add(time.Hour)
	der, err := x509.CreateCertificate(rand.Reader, template, parent, &own.PublicKey, key)
	if err != nil {
		t.Fatal(err)
	}
	cert, err := x509.ParseCertificate(der)
	if err != nil {
		t.Fatal(err)
	}
	return cert, own
}

func forServers(names []string, addresses ...string) *x509.Certificate {
	cert := &x509.Certificate{DNSNames: names, KeyUsage: x509.KeyUsageDigitalSignature, ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth}}
	for _, text := range addresses {
		cert.IPAddresses = append(cert.IPAddresses, net.ParseIP(text))
	}
	return cert
}
