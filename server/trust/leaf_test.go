package trust

import (
	"crypto/x509"
	"net/netip"
	"slices"
	"testing"
	"time"
)

func TestTheServersCertificateIsGoodForItsNameAndPrivateAddresses(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	m := machineOf(authority, host, "192.168.1.20", "::ffff:10.0.0.7", "127.0.0.1", "fe80::1%eth0", "fd00::5", "192.0.2.9", "2001:db8::9", "10.0.0.7")
	leaf := m.shows(t)
	for _, name := range []string{host, "CAR.local", "192.168.1.20", "10.0.0.7", "127.0.0.1", "fe80::1", "fd00::5"} {
		if err := verify(authority, leaf, name, noon); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, name := range []string{"192.0.2.9", "2001:db8::9", "192.168.1.21", "van.local", "x.car.local"} {
		if err := verify(authority, leaf, name, noon); err == nil {
			t.Errorf("%s: good, want it refused", name)
		}
	}
	if len(leaf.IPAddresses) != 5 || leaf.IsCA || !slices.Equal(leaf.ExtKeyUsage, []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth}) || leaf.KeyUsage != x509.KeyUsageDigitalSignature {
		t.Errorf("%v, authority %v, uses %v %v", leaf.IPAddresses, leaf.IsCA, leaf.ExtKeyUsage, leaf.KeyUsage)
	}
	if life := leaf.NotAfter.Sub(leaf.NotBefore); life > 397*24*time.Hour || noon.Sub(leaf.NotBefore) < 100*24*time.Hour {
		t.Errorf("good from %s for %s: phones refuse more than 397 days, and theirs may be behind", leaf.NotBefore, life)
	}
	if shown, _ := m.Certificate(); len(shown.Certificate) != 2 || string(shown.Certificate[1]) != string(authority.DER()) {
		t.Error("the authority does not come along")
	}
}

func TestAServerThatIsCalledByItsAddress(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, "192.168.1.20", noon)
	leaf := machineOf(authority, "192.168.1.20", "10.0.0.7").shows(t)
	if err := verify(authority, leaf, "192.168.1.20", noon); err != nil || len(leaf.DNSNames) != 0 {
		t.Errorf("%v, names %q", err, leaf.DNSNames)
	}
	for name, want := range map[string]bool{"car.local": true, "wheels.example": true, "192.168.1.20": true, "10.1.2.3": true, "127.0.0.1": true, "192.0.2.1": false, "8.8.8.8": false} {
		if CanVouchFor(name) != want {
			t.Errorf("vouching for %s: want %v", name, want)
		}
	}
	for _, name := range []string{"bank.example", "car.local", "20"} {
		bad, _ := sign(t, forServers([]string{name}), authority.cert, authority.key)
		if verify(authority, bad, name, noon) == nil {
			t.Errorf("an authority for an address vouches for %s", name)
		}
	}
}

func TestTheServersCertificateRenewsItself(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	m := machineOf(authority, host, "10.0.0.7")
	first := m.shows(t)
	step := func(what string, to time.Time, renewed bool) {
		t.Helper()
		before := m.shows(t)
		m.now = to
		after := m.shows(t)
		if before.Equal(after) == renewed {
			t.Errorf("%s: renewed is not %v", what, renewed)
		}
		if err := verify(authority, after, host, to); err != nil && to.After(noon) {
			t.Errorf("%s: %v", what, err)
		}
	}
	step("the next day", noon.AddDate(0, 0, 1), false)
	step("61 days before the end", first.NotAfter.Add(-renewAhead-time.Minute), false)
	step("60 days before the end", first.NotAfter.Add(-renewAhead), true)
	step("long after the end", noon.AddDate(3, 0, 0), true)
	step("the clock is put right", noon.AddDate(0, 0, 2), true)
}

func TestTheServersCertificateFollowsTheAddresses(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	m := machineOf(authority, host, "10.0.0.7")
	first := m.shows(t)
	m.addresses = []string{"10.0.0.8"}
	m.now = m.now.Add(lookEvery - time.Second)
	if !m.shows(t).Equal(first) || m.asked != 1 {
		t.Errorf("the machine was asked %d times within a minute", m.asked)
	}
	m.now = m.now.Add(time.Second)
	second := m.shows(t)
	if err := verify(authority, second, "10.0.0.8", m.now); err != nil || second.Equal(first) {
		t.Errorf("a new address: %v", err)
	}
	m.addresses = []string{"10.0.0.8", "192.0.2.1"}
	m.now = m.now.Add(time.Hour)
	if !m.shows(t).Equal(second) {
		t.Error("an address that it does not stand for made a new certificate")
	}
}

// A small computer without a battery starts in 1970, or whenever it was last switched off.
func TestAClockFarBackMakesACertificateThatPhonesTake(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	for _, clock := range []time.Time{time.Unix(0, 0), noon.AddDate(-4, 0, 0), noon.AddDate(0, -2, 0)} {
		m := machineOf(authority, host)
		m.now = clock
		if err := verify(authority, m.shows(t), host, noon.AddDate(0, 0, 30)); err != nil {
			t.Errorf("clock at %s: %v", clock, err)
		}
		m.now = noon.AddDate(2, 0, 0)
		if err := verify(authority, m.shows(t), host, m.now); err != nil {
			t.Errorf("clock put right after %s: %v", clock, err)
		}
	}
}

// A server that was first started with such a clock makes an authority that ended long ago, and another when it knows better.
func TestAnAuthorityMadeWithTheClockFarBackIsMadeAnew(t *testing.T) {
	secrets := kept{}
	authorityOf(t, secrets, host, time.Unix(0, 0))
	authority, fresh := authorityOf(t, secrets, host, noon)
	if err := verify(authority, machineOf(authority, host).shows(t), host, noon); err != nil || !fresh {
		t.Errorf("%v, new %v", err, fresh)
	}
}

func TestPrivateRangesAreWhatTheyShouldBe(t *testing.T) {
	for text, want := range map[string]bool{
		"10.255.255.255": true, "11.0.0.0": false, "172.15.255.255": false, "172.16.0.0": true, "172.31.255.255": true, "172.32.0.0": false, "192.168.0.0": true, "192.169.0.0": false,
		"169.254.1.1": true, "127.1.2.3": true, "100.64.0.1": false, "fc00::": true, "fdff::1": true, "fe80::1": true, "fec0::1": false, "::1": true, "::2": false, "2001:db8::1": false,
	} {
		if isPrivate(netip.MustParseAddr(text)) != want {
			t.Errorf("%s: want %v", text, want)
		}
	}
}
