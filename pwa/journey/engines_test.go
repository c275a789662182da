package journey

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"rimside/pwa/journey/engine"
)

// engines are the makes of browsers that the tour goes through, beside the one that all other journeys use.
var engines = []struct {
	name  string
	start func(engine.Options) (engine.Browser, error)
}{{"WebKit", engine.StartWebKit}, {"Gecko", engine.StartGecko}}

// rider is a person on a tour, with the browser they hold.
type rider struct {
	engine.Person
	t       *testing.T
	browser engine.Browser
	in      map[string]string
	started time.Time
}

// newRider starts a browser of an engine; dark is a phone that asks for dark colours.
func newRider(t *testing.T, start func(engine.Options) (engine.Browser, error), dark bool) *rider {
	t.Helper()
	browser, err := start(engine.Options{Dark: dark, Profile: t.TempDir()})
	if errors.Is(err, engine.ErrMissing) {
		missing(t, "%v", err)
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := browser.Close(); err != nil {
			t.Error(err)
		}
	})
	return &rider{t: t, browser: browser, in: words(t), started: time.Now()}
}

// gone are the complaints of a browser whose server is gone; the app goes on without a word.
var gone = []string{"NetworkError"}

// open opens a page, which the rider uses from then on.
func (r *rider) open(url string) {
	r.t.Helper()
	tab, err := r.browser.Open(url)
	if err != nil {
		r.t.Fatal(err)
	}
	r.Person = engine.Person{T: r.t, Tab: tab}
	r.t.Cleanup(func() {
		for _, said := range tab.Heard() {
			if !slices.ContainsFunc(gone, func(part string) bool { return strings.Contains(said, part) }) {
				r.t.Errorf("the console says: %s", said)
			}
		}
	})
}

// coldReopen ends the browser, as far as the engine lets it keep what it stored, and opens the page anew.
func (r *rider) coldReopen(url string) {
	r.t.Helper()
	if err := r.browser.Restart(); err != nil {
		r.t.Fatal(err)
	}
	r.open(url)
}

// past notes how far the tour has come, and keeps a picture where RIMSIDE_SHOTS says.
func (r *rider) past(step string) {
	r.t.Helper()
	r.t.Logf("%5.1f s: %s", time.Since(r.started).Seconds(), step)
	folder := os.Getenv("RIMSIDE_SHOTS")
	if folder == "" {
		return
	}
	picture, err := r.Tab.Shot()
	if err == nil {
		err = os.WriteFile(filepath.Join(folder, filepath.Base(r.t.Name())+"-"+step+".png"), picture, 0o644)
	}
	if err != nil {
		r.t.Fatal(err)
	}
}
