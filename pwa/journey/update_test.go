package journey

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// changed builds a copy of the project in which one text of the word catalogue is another, and gives its binary.
func changed(t *testing.T, before, after string) string {
	t.Helper()
	binary(t) // says what is missing
	root, copied := moduleRoot(t), t.TempDir()
	for _, part := range []string{"go.mod", "go.sum", "calc", "store", "server", "pwa"} {
		from := filepath.Join(root, part)
		if _, err := os.Stat(from); err == nil {
			copyTree(t, from, filepath.Join(copied, part))
		}
	}
	catalogue := filepath.Join(copied, "pwa", "src", "words", "en", "first.ts")
	text, err := os.ReadFile(catalogue)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), before) {
		t.Fatalf("the catalogue has no %q to change", before)
	}
	if err := os.WriteFile(catalogue, []byte(strings.ReplaceAll(string(text), before, after)), 0o644); err != nil {
		t.Fatal(err)
	}
	build := exec.Command("go", "run", "./pwa/build")
	build.Dir = copied
	if output, err := build.CombinedOutput(); err != nil {
		t.Fatalf("building the changed copy: %v\n%s", err, output)
	}
	path, err := buildServer(copied, "rimside-changed")
	if err != nil {
		t.Fatal(err)
	}
	return path
}

const news = "All is well on this phone"

var nextOnce sync.Once
var nextPath string

// nextVersion is the binary of a version in which the status line says the news when all is saved.
func nextVersion(t *testing.T) string {
	t.Helper()
	nextOnce.Do(func() { nextPath = changed(t, words(t)["status.saved"], news) })
	if nextPath == "" {
		t.Fatal("the next version could not be built")
	}
	return nextPath
}

func copyTree(t *testing.T, from, to string) {
	t.Helper()
	err := filepath.WalkDir(from, func(path string, entry os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		inside, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		target := filepath.Join(to, inside)
		switch {
		case entry.IsDir() && (entry.Name() == "node_modules" || entry.Name() == "a" && filepath.Base(filepath.Dir(path)) == "dist"):
			return filepath.SkipDir
		case entry.IsDir():
			return os.MkdirAll(target, 0o755)
		}
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(target, content, 0o644)
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestANewVersionIsOfferedAndKeepsWhatIsTyped(t *testing.T) {
	in := words(t)
	next := nextVersion(t)
	server := StartServer(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL())
	p.Allow(offline)
	p.installed()
	other := browser.Open(server.URL() + "#/settings")
	other.Allow(offline)
	other.See(in["version.title"])
	old := Eval[string](p, "document.documentElement.dataset.version")

	server.Replace(next)
	p.Type(in["field.rider"], "about 75") // not a number, and kept all the same
	// The app looks by itself when it is opened, when it comes back to the front and every hour; here it is told to.
	Eval[bool](p, "navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => true)")
	p.See(in["offer.text"])
	p.Axe()
	p.Shot("offer")
	if now := Eval[string](p, "document.documentElement.dataset.version"); now != old {
		t.Fatalf("the page changed to version %s without being asked", now)
	}
	p.See(in["status.saved"])
	p.Tap("button", in["offer.reload"])

	p.See(news)
	p.Eventually("what was typed", func() bool { return p.Value(in["field.rider"]) == "about 75" })
	p.NotSee(in["offer.text"])
	if hash := Eval[string](p, "location.hash"); hash != "#/pressure" {
		t.Errorf("the reload led to %s", hash)
	}
	other.See(news) // every tab changes over, each at its own place
	other.See(in["version.title"])
	if caches := Eval[int](p, "caches.keys().then((names) => names.length)"); caches != 1 {
		t.Errorf("%d versions are kept, not one", caches)
	}
	server.Stop()
	p.Reload()
	p.See(news)
}

func TestTheFirstVisitDoesNotReload(t *testing.T) {
	p, _ := Visit(t)
	Eval[bool](p, "globalThis.still = true")
	p.installed()
	p.at("pressure")
	if !Eval[bool](p, "globalThis.still === true") {
		t.Error("the page reloaded when the worker was first installed")
	}
}
