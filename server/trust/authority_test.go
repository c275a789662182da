package trust

import (
	"bytes"
	"crypto/x509"
	"encoding/asn1"
	"strings"
	"testing"
	"time"
)

const host = "car.local"

// extension finds one in the bytes of a certificate, which the parser of crypto/x509 may read more kindly than a phone's.
func extension(t *testing.T, der []byte, wanted asn1.ObjectIdentifier) (value []byte, critical bool) {
	t.Helper()
	cert, err := x509.ParseCertificate(der)
	if err != nil {
		t.Fatal(err)
	}
	for _, each := range cert.Extensions {
		if each.Id.Equal(wanted) {
			return each.Value, each.Critical
		}
	}
	t.Fatalf("the certificate lacks the extension %v", wanted)
	return nil, false
}

func TestTheAuthorityMayVouchForOneNameAndPrivateAddressesOnly(t *testing.T) {
	authority, fresh := authorityOf(t, kept{}, host, noon)
	if !fresh {
		t.Error("a new authority is not told as new")
	}
	var basic struct {
		IsCA    bool
		MaxPath int
	}
	value, critical := extension(t, authority.DER(), asn1.ObjectIdentifier{2, 5, 29, 19})
	if rest, err := asn1.Unmarshal(value, &basic); err != nil || len(rest) > 0 || !critical || !basic.IsCA || basic.MaxPath != 0 || len(value) != 8 {
		t.Errorf("basic constraints %x, critical %v: %+v %v; want an authority with the path length 0 spelled out", value, critical, basic, err)
	}
	var usage asn1.BitString
	value, critical = extension(t, authority.DER(), asn1.ObjectIdentifier{2, 5, 29, 15})
	if _, err := asn1.Unmarshal(value, &usage); err != nil || !critical || usage.At(5) != 1 || usage.BitLength != 6 || usage.Bytes[0] != 0x04 {
		t.Errorf("key usage %x, critical %v: want the signing of certificates alone", value, critical)
	}
	var names struct {
		Permitted []struct{ Base asn1.RawValue } `asn1:"optional,tag:0"`
		Excluded  []struct{ Base asn1.RawValue } `asn1:"optional,tag:1"`
	}
	value, critical = extension(t, authority.DER(), asn1.ObjectIdentifier{2, 5, 29, 30})
	if rest, err := asn1.Unmarshal(value, &names); err != nil || len(rest) > 0 || !critical {
		t.Fatalf("name constraints %x, critical %v: %v", value, critical, err)
	}
	var dns []string
	addresses := 0
	for _, each := range names.Permitted {
		switch each.Base.Tag {
		case 2:
			dns = append(dns, string(each.Base.Bytes))
		case 7:
			addresses++
		}
	}
	if len(dns) != 1 || dns[0] != host || addresses != len(privateRanges) || len(names.Excluded) != 0 {
		t.Errorf("it may vouch for %q and %d ranges", dns, addresses)
	}
	if life := authority.cert.NotAfter.Sub(authority.cert.NotBefore); authority.cert.NotBefore.After(noon.Add(-backdated)) || life > 11*365*24*time.Hour {
		t.Errorf("it is good from %s for %s", authority.cert.NotBefore, life)
	}
}

func TestWhatAThiefOfTheAuthoritysKeyCannotDo(t *testing.T) {
	authority, _ := authorityOf(t, kept{}, host, noon)
	try := func(what, name string, template *x509.Certificate, good bool) {
		t.Helper()
		leaf, _ := sign(t, template, authority.cert, authority.key)
		if err := verify(authority, leaf, name, noon); (err == nil) != good {
			t.Errorf("%s: %v, want it good: %v", what, err, good)
		}
	}
	try("its own name", host, forServers([]string{host}), true)
	try("its own name and a private address", "192.168.1.20", forServers([]string{host}, "192.168.1.20", "10.0.0.1", "fd00::1"), true)
	try("another name", "bank.example", forServers([]string{"bank.example"}), false)
	try("another name beside its own", "bank.example", forServers([]string{host, "bank.example"}), false)
	try("another name beside its own, asked by its own", host, forServers([]string{host, "bank.example"}), false)
	try("another machine in the network", "van.local", forServers([]string{"van.local"}), false)
	try("a name that only ends alike", "notcar.local", forServers([]string{"notcar.local"}), false)
	try("every name", "bank.example", forServers([]string{"*"}), false)
	try("every name of a domain", "van.local", forServers([]string{"*.local"}), false)
	try("a public address", "192.0.2.1", forServers(nil, "192.0.2.1"), false)
	try("a public address of IPv6", "2001:db8::1", forServers(nil, "2001:db8::1"), false)

	middle, key := sign(t, &x509.Certificate{IsCA: true, BasicConstraintsValid: true, KeyUsage: x509.KeyUsageCertSign, DNSNames: []string{host}}, authority.cert, authority.key)
	below, _ := sign(t, forServers([]string{host}), middle, key)
	if err := verify(authority, below, host, noon, middle); err == nil {
		t.Error("an authority below it is taken")
	}
}

func TestAnAuthorityIsMadeOnceForAName(t *testing.T) {
	secrets := kept{}
	first, _ := authorityOf(t, secrets, host, noon)
	for name, now := range map[string]time.Time{"later": noon.AddDate(9, 0, 0), "clock far back": time.Unix(0, 0), "clock before": noon.AddDate(-3, 0, 0)} {
		if again, fresh := authorityOf(t, secrets, host, now); fresh || !bytes.Equal(again.DER(), first.DER()) {
			t.Errorf("%s: it was made anew (%v)", name, fresh)
		}
	}
	other, fresh := authorityOf(t, secrets, "van.local", noon)
	if !fresh || other.Fingerprint() == first.Fingerprint() || other.cert.PermittedDNSDomains[0] != "van.local" {
		t.Error("another name has no authority of its own")
	}
	if back, fresh := authorityOf(t, secrets, host, noon); fresh || back.Fingerprint() != first.Fingerprint() {
		t.Error("whoever goes back to a name has to have phones trust anew")
	}
	if after, fresh := authorityOf(t, secrets, host, first.cert.NotAfter); !fresh || after.Fingerprint() == first.Fingerprint() {
		t.Error("an authority that has ended is still used")
	}
}

func TestABrokenAuthorityIsSaidAndNotReplaced(t *testing.T) {
	secrets := kept{}
	authorityOf(t, secrets, host, noon)
	whole := secrets[secretName+host]
	for name, broken := range map[string][]byte{
		"empty": nil, "text": []byte("x"), "no key": whole[:bytes.Index(whole, []byte("-----BEGIN PRIVATE"))], "bent": bytes.Replace(whole, []byte("MII"), []byte("MIX"), 1),
	} {
		secrets[secretName+host] = broken
		if _, _, err := OpenAuthority(t.Context(), secrets, host, noon); err == nil || !strings.Contains(err.Error(), "rimside restore FILE") {
			t.Errorf("%s: %v", name, err)
		}
		if !bytes.Equal(secrets[secretName+host], broken) {
			t.Errorf("%s: it was replaced", name)
		}
	}
}

func TestANameThatNoCertificateTakesKeepsNothing(t *testing.T) {
	secrets := kept{}
	for _, name := range []string{"car..local", "", "cär.local", "."} {
		if _, _, err := OpenAuthority(t.Context(), secrets, name, noon); err == nil || len(secrets) > 0 || !strings.Contains(err.Error(), "-name") {
			t.Errorf("%q: %v, kept %d", name, err, len(secrets))
		}
	}
	long := strings.Repeat("a", 60) + "." + strings.Repeat("b", 60) + ".local"
	authority, _ := authorityOf(t, secrets, long, noon)
	if err := verify(authority, machineOf(authority, long).shows(t), long, noon); err != nil {
		t.Errorf("a long name: %v", err)
	}
}
