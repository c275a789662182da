package access

import (
	"net/netip"
	"testing"
	"time"
)

func TestAFloodOfAddressesTakesLittleMemory(t *testing.T) {
	now := time.Unix(0, 0)
	limits := NewLimits(func() time.Time { return now })
	allowed := 0
	for n := range 100_000 {
		from := netip.AddrFrom4([4]byte{byte(n >> 24), byte(n >> 16), byte(n >> 8), byte(n)})
		if n%2 == 1 {
			from = netip.AddrFrom16([16]byte{0x20, 1, 0xd, 0xb8, byte(n >> 16), byte(n >> 8), byte(n)})
		}
		if limits.Allow(from) {
			allowed++
		}
	}
	if len(limits.known) != mostAddresses || limits.order.Len() != mostAddresses {
		t.Errorf("%d addresses are known and %d listed, want %d", len(limits.known), limits.order.Len(), mostAddresses)
	}
	if allowed != allAtOnce {
		t.Errorf("%d tries at one moment, want %d", allowed, allAtOnce)
	}
	now = now.Add(10 * allEvery)
	allowed = 0
	for n := range 1000 {
		if limits.Allow(netip.AddrFrom4([4]byte{10, 0, byte(n >> 8), byte(n)})) {
			allowed++
		}
	}
	if allowed != 10 {
		t.Errorf("%d tries in %s, want 10", allowed, 10*allEvery)
	}
}

func TestWhoeverCameLatelyIsRemembered(t *testing.T) {
	limits := NewLimits(func() time.Time { return time.Unix(0, 0) })
	steady := netip.MustParseAddr("192.0.2.1")
	limits.of(network(steady)).AllowN(time.Unix(0, 0), triesAtOnce)
	for n := range mostAddresses * 3 {
		limits.of(network(netip.AddrFrom4([4]byte{10, byte(n >> 16), byte(n >> 8), byte(n)})))
		if n%1000 == 0 {
			limits.of(network(steady))
		}
	}
	if limits.Allow(steady) {
		t.Error("whoever kept trying was forgotten, and may try anew")
	}
}

func TestWhomAnAddressCountsFor(t *testing.T) {
	for _, pair := range [][2]string{{"2001:db8::1", "2001:db8::ffff:1"}, {"192.0.2.1", "192.0.2.1"}, {"fe80::1%eth0", "fe80::1%eth1"}} {
		if network(netip.MustParseAddr(pair[0])) != network(netip.MustParseAddr(pair[1])) {
			t.Errorf("%v are two", pair)
		}
	}
	for _, pair := range [][2]string{{"2001:db8::1", "2001:db8:0:1::1"}, {"192.0.2.1", "192.0.2.2"}} {
		if network(netip.MustParseAddr(pair[0])) == network(netip.MustParseAddr(pair[1])) {
			t.Errorf("%v are one", pair)
		}
	}
	if network(netip.Addr{}) != (netip.Prefix{}) {
		t.Error("no address at all must be counted too")
	}
}
