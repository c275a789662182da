package web

import (
	"sync"
	"time"
)

const (
	visitEvery = 10 * time.Minute // how exactly it is known when a device was here
	mostVisits = 1000             // devices that are remembered
)

// visits remembers when it was last noted that a device was here.
type visits struct {
	mu   sync.Mutex
	last map[string]time.Time
}

// due tells whether it is time to note it again, and takes it as noted.
func (v *visits) due(device string, now time.Time) bool {
	v.mu.Lock()
	defer v.mu.Unlock()
	if last, known := v.last[device]; known && now.Sub(last) < visitEvery {
		return false
	}
	if v.last == nil || len(v.last) >= mostVisits {
		v.last = map[string]time.Time{}
	}
	v.last[device] = now
	return true
}
