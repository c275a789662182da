package history_test

import (
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"rimside/store/oplog/history"
)

// chance lets rapid draw, so that a history that fails is made as short as it can be.
type chance struct{ t *rapid.T }

func (c chance) IntN(n int) int { return rapid.IntRange(0, n-1).Draw(c.t, "chance") }

func servers(count int) []history.Server {
	made := make([]history.Server, count)
	for i := range made {
		made[i] = history.NewMemory()
	}
	return made
}

func TestNothingIsEverLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := history.Draw(chance{t}, history.Limits{Steps: 40, Mishaps: true})
		if err := history.Live(h, servers(h.Servers), history.Broken{}); err != nil {
			t.Fatalf("%v\n%s", err, h)
		}
	})
}

// The test above must notice each of these mistakes. The safety net is off, since it is there to mend such mistakes;
// without a mishap it is not needed, which the first line shows.
func TestTheHistoriesNoticeWhatIsBroken(t *testing.T) {
	for _, test := range []struct {
		name    string
		broken  history.Broken
		skips   bool
		noticed bool
	}{
		{"nothing is broken", history.Broken{}, false, false},
		{"the log's id is ignored", history.Broken{OneCursor: true}, false, true},
		{"no time above what is known", history.Broken{NoBump: true}, false, true},
		{"the cursor moves before the answer", history.Broken{CursorFirst: true}, false, true},
		{"the last to arrive wins", history.Broken{ByArrival: true}, false, true},
		{"a pull skips one", history.Broken{}, true, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			test.broken.NoSafetyNet = true
			caught := 0
			for seed := range uint64(150) {
				h := history.Draw(rand.New(rand.NewPCG(seed, 7)), history.Limits{Steps: 40})
				made := servers(h.Servers)
				made[0].(*history.Memory).Skips = test.skips
				if history.Live(h, made, test.broken) != nil {
					caught++
				}
			}
			t.Logf("noticed in %d of 150 histories", caught)
			if (caught > 0) != test.noticed {
				t.Errorf("noticed %d times", caught)
			}
		})
	}
}

// With the net, a server that skips an op or forgets some is mended.
func TestTheSafetyNetMendsAWipeAndAnOldCopy(t *testing.T) {
	mishaps := 0
	for seed := range uint64(150) {
		h := history.Draw(rand.New(rand.NewPCG(seed, 9)), history.Limits{Steps: 60, Mishaps: true})
		if h.Calm() {
			continue
		}
		mishaps++
		if err := history.Live(h, servers(h.Servers), history.Broken{}); err != nil {
			t.Fatalf("%v\n%s", err, h)
		}
	}
	if mishaps < 50 {
		t.Errorf("only %d histories had a mishap", mishaps)
	}
}
