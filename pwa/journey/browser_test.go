package journey

import (
	"context"
	"os"
	"os/exec"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// Browser is one Chromium with a profile that outlives restarts, as a phone's does.
type Browser struct {
	t       testing.TB
	profile string
	options []chromedp.ExecAllocatorOption
	ctx     context.Context
	cancel  context.CancelFunc
}

// OpenBrowser starts Chromium with a fresh profile.
func OpenBrowser(t testing.TB, options ...chromedp.ExecAllocatorOption) *Browser {
	t.Helper()
	b := &Browser{t: t, profile: t.TempDir(), options: append(browserOptions(t), options...)}
	b.start()
	t.Cleanup(b.Close)
	return b
}

func browserOptions(t testing.TB) []chromedp.ExecAllocatorOption {
	t.Helper()
	path := os.Getenv("RIMSIDE_CHROMIUM")
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome"} {
		if path == "" {
			path, _ = exec.LookPath(name)
		}
	}
	if path == "" {
		missing(t, "no Chromium found: install one, or name it in RIMSIDE_CHROMIUM")
	}
	options := []chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path), chromedp.DisableGPU, chromedp.Flag("disable-quic", true), chromedp.NoFirstRun,
		chromedp.Flag("disable-component-update", true), chromedp.Flag("lang", "en-US"),
	}
	if language := languageOf(t); language != "en" {
		options = append(options, chromedp.Flag("accept-lang", language))
	}
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	return options
}

func (b *Browser) start() {
	b.t.Helper()
	options := append([]chromedp.ExecAllocatorOption{chromedp.UserDataDir(b.profile)}, b.options...)
	b.ctx, b.cancel = chromedp.NewContext(context.Background(), chromedp.WithAllocatorOptions(options...))
	if err := chromedp.Do(b.ctx); err != nil {
		b.t.Fatalf("starting Chromium: %v", err)
	}
}

// Close ends the browser as a person does, and waits until it is gone.
func (b *Browser) Close() {
	if b.cancel == nil {
		return
	}
	ctx, done := context.WithTimeout(b.ctx, 10*time.Second)
	_ = chromedp.Cancel(ctx) // an end with an error is an end all the same
	done()
	b.cancel()
	b.cancel = nil
}

// Kill ends the browser as a phone does that needs the memory: at once, without a word to the page.
func (b *Browser) Kill() {
	b.t.Helper()
	process := chromedp.FromContext(b.ctx).Browser.Process()
	if err := process.Kill(); err != nil {
		b.t.Fatal(err)
	}
	b.Close()
}

// Restart opens the browser again with the same profile. Its pages are gone; open new ones.
func (b *Browser) Restart() {
	b.t.Helper()
	b.Close()
	b.start()
}

// Open opens a page on a phone's screen. Script runs before the page's own, to play a browser that refuses things.
func (b *Browser) Open(url string, script ...string) *Page {
	b.t.Helper()
	return b.open(url, script)
}

// OpenApart opens a page with a storage of its own, as another person's phone would.
func (b *Browser) OpenApart(url string, script ...string) *Page {
	b.t.Helper()
	return b.open(url, script, chromedp.WithNewBrowserContext())
}

func (b *Browser) open(url string, script []string, options ...chromedp.ContextOption) *Page {
	b.t.Helper()
	p := &Page{t: b.t, browser: b}
	var cancel context.CancelFunc
	p.ctx, cancel = chromedp.NewContext(b.ctx, append(options, chromedp.WithListener(p.hear))...)
	p.close = cancel
	p.do(chromedp.Steps())
	for _, source := range script {
		params := page.AddScriptToEvaluateOnNewDocumentParams{Source: source}
		if _, err := chromedp.Call(p.ctx, page.AddScriptToEvaluateOnNewDocument, params); err != nil {
			b.t.Fatal(err)
		}
	}
	p.Resize(Phone)
	p.do(chromedp.Navigate(url))
	b.t.Cleanup(p.assertQuiet)
	return p
}

// Visit starts a server and a browser and opens the app: the beginning of most tests.
func Visit(t testing.TB) (*Page, *Server) {
	t.Helper()
	server := StartServer(t)
	return OpenBrowser(t).Open(server.URL()), server
}
