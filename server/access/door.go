package access

import (
	"context"
	"net/http"
	"net/netip"
)

// Policy says how a server is reached, which decides who needs to be paired.
type Policy struct {
	Login       bool // everybody must be paired, whatever they come by
	BehindProxy bool // a proxy stands between, and is believed
}

// Keeper knows the devices.
type Keeper interface {
	Revoked(ctx context.Context, device string) (bool, error)
	SeeDevice(ctx context.Context, device string) error
}

// Door decides who may read and write the book.
type Door struct {
	Sessions *Sessions
	Devices  Keeper
	Hosts    *Hosts
	Policy   Policy
}

// Entry is what the door makes of a request.
type Entry struct {
	Device  string // whose session it is, "" for none
	In      bool   // may read and write
	Revoked bool   // was paired once, and its session was withdrawn
	Was     string // the device whose session was withdrawn
}

// Enter judges a request.
func (d *Door) Enter(w http.ResponseWriter, r *http.Request) (Entry, error) {
	device, old := d.Sessions.Device(r)
	if device == "" {
		return Entry{In: d.isOpen(r)}, nil
	}
	out, err := d.Devices.Revoked(r.Context(), device)
	if err != nil {
		return Entry{}, err
	}
	if out {
		d.Sessions.End(w)
		return Entry{Was: device, Revoked: true, In: d.isOpen(r)}, nil
	}
	if old {
		_ = d.Sessions.Begin(w, r, device) // the one it has is good for a while yet
	}
	return Entry{Device: device, In: true}, nil
}

// isOpen: nobody needs to be paired who sits at this machine, and only there: the listener, the peer and the name in the
// request are all loopback, and nothing tells of a proxy.
func (d *Door) isOpen(r *http.Request) bool {
	if d.Policy.Login || d.Policy.BehindProxy || !d.Hosts.loopback || isForwarded(r) {
		return false
	}
	name, fine := hostname(r.Host)
	return fine && isLoopback(name) && peer(r, false).IsLoopback()
}

// Peer is the address that a request is counted for.
func (d *Door) Peer(r *http.Request) netip.Addr { return peer(r, d.Policy.BehindProxy) }
