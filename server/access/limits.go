package access

import (
	"container/list"
	"net/netip"
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// The bounds of guessing (our choice): a code is one of a million and dies after fifty wrong guesses from everywhere; these keep the guessing
// slow and the memory small, however many addresses take part.
const (
	triesAtOnce   = 5
	tryEvery      = 30 * time.Second // per address, once the first are used up
	allAtOnce     = 30
	allEvery      = 2 * time.Second // from everywhere
	mostAddresses = 4096
)

// Limits slows down whoever tries codes. It remembers so many addresses, and forgets those that it heard of least lately.
type Limits struct {
	mu    sync.Mutex
	all   *rate.Limiter
	known map[netip.Prefix]*list.Element
	order *list.List // of *limited, the latest first
	now   func() time.Time
}

type limited struct {
	from  netip.Prefix
	tries *rate.Limiter
}

// NewLimits starts with nobody known.
func NewLimits(now func() time.Time) *Limits {
	return &Limits{all: rate.NewLimiter(rate.Every(allEvery), allAtOnce), known: map[netip.Prefix]*list.Element{}, order: list.New(), now: now}
}

// Allow tells whether an address may try now.
func (l *Limits) Allow(from netip.Addr) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	now := l.now()
	return l.of(network(from)).AllowN(now, 1) && l.all.AllowN(now, 1)
}

func (l *Limits) of(from netip.Prefix) *rate.Limiter {
	if found, known := l.known[from]; known {
		l.order.MoveToFront(found)
		return found.Value.(*limited).tries
	}
	if l.order.Len() >= mostAddresses {
		last := l.order.Back()
		delete(l.known, last.Value.(*limited).from)
		l.order.Remove(last)
	}
	fresh := &limited{from, rate.NewLimiter(rate.Every(tryEvery), triesAtOnce)}
	l.known[from] = l.order.PushFront(fresh)
	return fresh.tries
}

// network is whom an address counts for: with IPv6 one machine has a whole /64 to itself.
func network(from netip.Addr) netip.Prefix {
	bits := from.BitLen()
	if from.Is6() && !from.Is4In6() {
		bits = 64
	}
	prefix, err := from.Prefix(bits)
	if err != nil {
		return netip.Prefix{} // no address: all such count as one
	}
	return prefix
}
