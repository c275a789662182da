package journey

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A weak link loses nothing that it has carried. Six hundred ops over a link that breaks four times cost little more than
// their own bytes, and a photo over one that breaks three times hardly more than its own: what came before each break counts.
func TestOverALinkThatBreaks(t *testing.T) {
	server := startInMemory(t)
	p, stage := liveStage(t, server)
	ops := weakOps(p)
	stage.carried.Store(0)
	for n := range 4 {
		stage.breaks.Store(int64((n + 1) * ops / 6))
		p.Allow("Failed to load resource", "net::ERR")
		Eval[string](p, meeting)
	}
	if wrong := Eval[string](p, meeting); wrong != "" {
		t.Fatal(wrong)
	}
	if held, carried := len(server.ops(t)), stage.carried.Load(); held != 601 || carried > int64(2*ops) {
		t.Errorf("the server holds %d ops of 601, after %d bytes for %d", held, carried, ops)
	} else {
		t.Logf("%d bytes of ops over 4 breaks: %d bytes carried", ops, carried)
	}

	const size = 700_000
	name := Eval[string](p, fmt.Sprintf("live.photo(0, %d)", size))
	stage.carried.Store(0)
	for n := range 3 {
		stage.breaks.Store(int64((n + 1) * size / 4))
		Eval[string](p, meeting)
	}
	if wrong := Eval[string](p, meeting); wrong != "" {
		t.Fatal(wrong)
	}
	if carried := stage.carried.Load(); carried > size*13/10 {
		t.Errorf("%d bytes were carried for a photo of %d", carried, size)
	} else {
		t.Logf("a photo of %d over 3 breaks: %d bytes carried", size, carried)
	}
	found := false
	_ = filepath.WalkDir(server.data, func(path string, entry os.DirEntry, _ error) error {
		found = found || strings.Contains(path, name)
		return nil
	})
	if !found {
		t.Errorf("the server has no photo %s", name)
	}
}

const meeting = `live.steps([{do: "meet", now: 1790000600000, phone: 0, server: 0, rec: ""}])`

// weakOps has the phone save six hundred ops, each of which as large as most, and tells their size.
func weakOps(p *Page) int {
	p.t.Helper()
	Eval[string](p, fmt.Sprintf(`(live.begin(%q, [0], "memory"), "")`, hexOf("weak")))
	var steps []map[string]any
	for n := range 600 {
		steps = append(steps, map[string]any{"do": "edit", "now": 1790000000000 + n*1000, "phone": 0, "server": 0, "rec": hexOf(fmt.Sprint("tyre ", n)),
			"set": map[string]string{"name": fmt.Sprint("Ochre ", n), "label_mm": "40"}})
	}
	if wrong := Eval[string](p, "live.steps("+written(steps)+")"); wrong != "" {
		p.t.Fatal(wrong)
	}
	return Eval[int](p, `live.end(0, []).then(({texts}) => texts[0].join(",").length)`)
}

// BenchmarkWeakLink is how long six hundred ops take at 5 kB/s, and a photo at 10 kB/s that is broken off three times, each
// beside the time that its bytes alone need.
func BenchmarkWeakLink(b *testing.B) {
	for b.Loop() {
		server := startInMemory(b)
		p, stage := liveStage(b, server)
		p.Allow("Failed to load resource", "net::ERR")
		ops := weakOps(p)
		stage.rate.Store(5000)
		from := time.Now()
		for Eval[string](p, meeting) != "" {
		}
		b.ReportMetric(time.Since(from).Seconds()/(float64(ops)/5000), "ops-times-own")
		b.ReportMetric(time.Since(from).Seconds(), "s-ops")
		const size = 700_000
		Eval[string](p, fmt.Sprintf("live.photo(0, %d)", size))
		stage.rate.Store(10_000)
		stage.carried.Store(0)
		from = time.Now()
		for n := range 3 {
			stage.breaks.Store(int64((n + 1) * size / 4))
			Eval[string](p, meeting)
		}
		for Eval[string](p, meeting) != "" {
		}
		b.ReportMetric(time.Since(from).Seconds()/(size/10_000.0), "photo-times-own")
		b.ReportMetric(time.Since(from).Seconds(), "s-photo")
	}
}
