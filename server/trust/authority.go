// Package trust lets phones speak https with a server that no public authority knows: it makes a small authority of its
// own, which can vouch for this server and for nothing else, and a page that helps people to trust it.
//
// Certificates follow RFC 5280; name constraints its section 4.2.1.10; private addresses are those of RFC 1918, RFC 4193
// and RFC 3927.
package trust

import (
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/sha256"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"fmt"
	"math/big"
	"net"
	"strings"
	"time"

	"rimside/store/sqlite"
)

// Secrets is where the authority is kept.
type Secrets interface {
	Secret(ctx context.Context, name string, make func() ([]byte, error)) ([]byte, error)
	PutSecret(ctx context.Context, name string, value []byte) error
}

const (
	secretName    = "authority of " // and the host's name
	authorityLife = 10 * 365 * 24 * time.Hour
	backdated     = 180 * 24 * time.Hour // a phone whose clock is behind must not find a certificate from the future
)

// privateRanges are the only addresses that the authority may vouch for.
var privateRanges = []string{"10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "127.0.0.0/8", "fc00::/7", "fe80::/10", "::1/128"}

// Authority vouches for one name and for private addresses. Its key never leaves the data folder and its backups.
type Authority struct {
	cert *x509.Certificate
	key  *ecdsa.PrivateKey
}

// OpenAuthority gives the authority for a host's name. Each name has its own, so that whoever goes back to an earlier name
// need not have phones trust anew. None is ever overwritten: one that has ended by a clock that is years ahead is good again
// once the clock is put right. fresh tells that phones have to trust it.
func OpenAuthority(ctx context.Context, secrets Secrets, host string, now time.Time) (authority *Authority, fresh bool, err error) {
	name := secretName + host
	for number := 2; ; number++ {
		stored, err := secrets.Secret(ctx, name, func() ([]byte, error) {
			fresh = true
			return newAuthority(host, now)
		})
		if err != nil {
			return nil, false, err
		}
		authority, err = readAuthority(stored)
		if err != nil || now.Before(authority.cert.NotAfter) {
			return authority, fresh, err
		}
		name = fmt.Sprintf("%s%s, %d", secretName, host, number)
	}
}

func newAuthority(host string, now time.Time) ([]byte, error) {
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return nil, err
	}
	serial, err := newSerial()
	if err != nil {
		return nil, err
	}
	template := &x509.Certificate{
		SerialNumber: serial,
		Subject:      pkix.Name{CommonName: commonName("Rimside authority of " + host)},
		NotBefore:    now.Add(-backdated), NotAfter: now.Add(authorityLife),
		KeyUsage: x509.KeyUsageCertSign, BasicConstraintsValid: true, IsCA: true, MaxPathLen: 0, MaxPathLenZero: true,
		PermittedDNSDomainsCritical: true, PermittedDNSDomains: []string{host},
	}
	for _, text := range privateRanges {
		_, network, err := net.ParseCIDR(text)
		if err != nil {
			return nil, err
		}
		template.PermittedIPRanges = append(template.PermittedIPRanges, network)
	}
	der, err := x509.CreateCertificate(rand.Reader, template, template, &key.PublicKey, key)
	if err == nil {
		_, err = x509.ParseCertificate(der) // not every name can stand in one, and what is made is kept for good
	}
	if err != nil || strings.Trim(host, ".") != host || host == "" { // an empty name would stand for all
		return nil, fmt.Errorf("no authority can be made for the name %q: choose another with -name", host)
	}
	secret, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		return nil, err
	}
	return append(pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der}), pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: secret})...), nil
}

var errUnreadable = fmt.Errorf("the authority in the data folder cannot be read. %s", sqlite.HowToMend)

func readAuthority(stored []byte) (*Authority, error) {
	first, after := pem.Decode(stored)
	second, _ := pem.Decode(after)
	if first == nil || second == nil {
		return nil, errUnreadable
	}
	cert, err := x509.ParseCertificate(first.Bytes)
	if err != nil {
		return nil, fmt.Errorf("%w (%w)", errUnreadable, err)
	}
	key, err := x509.ParsePKCS8PrivateKey(second.Bytes)
	if err != nil {
		return nil, fmt.Errorf("%w (%w)", errUnreadable, err)
	}
	signer, isECDSA := key.(*ecdsa.PrivateKey)
	if !isECDSA {
		return nil, errUnreadable
	}
	return &Authority{cert, signer}, nil
}

// DER is the certificate that phones are asked to trust.
func (a *Authority) DER() []byte { return a.cert.Raw }

// Fingerprint is the SHA-256 of the certificate as phones show it: pairs of hex digits.
func (a *Authority) Fingerprint() string {
	sum := sha256.Sum256(a.cert.Raw)
	pairs := make([]string, len(sum))
	for i, b := range sum {
		pairs[i] = fmt.Sprintf("%02X", b)
	}
	return strings.Join(pairs, ":")
}

// commonName cuts a name to what a certificate may hold of it (RFC 5280, ub-common-name). It is for people only.
func commonName(text string) string { return text[:min(len(text), 64)] }

func newSerial() (*big.Int, error) {
	return rand.Int(rand.Reader, new(big.Int).Lsh(big.NewInt(1), 127))
}

// PEM is the certificate as text, for computers.
func (a *Authority) PEM() []byte {
	return pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: a.cert.Raw})
}
