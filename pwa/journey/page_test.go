package journey

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// Page is one tab, used as a person would.
type Page struct {
	t       testing.TB
	browser *Browser
	ctx     context.Context
	close   context.CancelFunc
	touch   bool
	taps    int // of this page so far; a line chosen from a list counts two

	mutex   sync.Mutex
	said    []string // errors and warnings of the console
	allowed []string
}

// Size is a screen.
type Size struct {
	Name          string
	Width, Height int64
	Scale         float64
	Touch         bool
}

// The screens that everything is looked at on.
var (
	SmallPhone = Size{"360x640", 360, 640, 2, true}
	Phone      = Size{"390x844", 390, 844, 2, true}
	Desk       = Size{"1280x800", 1280, 800, 1, false}
	Sizes      = []Size{SmallPhone, Phone, Desk}
)

const (
	patience = 20 * time.Second
	interval = 40 * time.Millisecond
)

func (p *Page) do(steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, 3*patience)
	defer cancel()
	if chromedp.FromContext(p.ctx).Target == nil {
		ctx = p.ctx // the first run binds the tab's life to its context
	}
	if err := chromedp.Do(ctx, steps...); err != nil {
		p.t.Fatal(err)
	}
}

// evalPatience is more than anything asked of a page takes, also the playing of histories: a promise that is never kept must
// end one test, not all.
const evalPatience = 12 * time.Minute

// Eval gives the value of a script, awaited. For looking only: acting is for Tap and Type.
func Eval[T any](p *Page, script string) T {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, evalPatience)
	defer cancel()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		p.t.Fatalf("%s: %v", script, err)
	}
	return value
}

// Resize makes the screen another one.
func (p *Page) Resize(size Size) {
	p.t.Helper()
	p.touch = size.Touch
	options := []chromedp.EmulateViewportOption{chromedp.EmulateScale(size.Scale)}
	if size.Touch {
		options = append(options, chromedp.EmulateMobile, chromedp.EmulateTouch, chromedp.EmulatePortrait)
	}
	p.do(chromedp.EmulateViewport(size.Width, size.Height, options...))
}

// Media sets what the phone says of itself, as "prefers-color-scheme", "dark".
func (p *Page) Media(features ...string) {
	p.t.Helper()
	var params emulation.SetEmulatedMediaParams
	for pair := range slices.Chunk(features, 2) {
		params.Features = append(params.Features, &emulation.MediaFeature{Name: pair[0], Value: pair[1]})
	}
	if _, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, params); err != nil {
		p.t.Fatal(err)
	}
}

// Go follows the address to a screen, as a bookmark would.
func (p *Page) Go(screen string) {
	p.t.Helper()
	Eval[string](p, fmt.Sprintf("location.hash = '#/%s'", screen))
}

// Reload loads the page anew.
func (p *Page) Reload() {
	p.t.Helper()
	p.do(chromedp.Reload())
}

// Close closes the tab.
func (p *Page) Close() { p.close() }

// Eventually waits until the condition holds, and fails with the words when it never does.
func (p *Page) Eventually(what string, condition func() bool) {
	p.t.Helper()
	deadline := time.Now().Add(patience)
	for !condition() {
		if time.Now().After(deadline) {
			p.t.Fatalf("waited in vain: %s\nthe page says: %s\nconsole: %q", what, p.Text(), p.heard())
		}
		time.Sleep(interval)
	}
}

// Text is what can be read on the page now.
func (p *Page) Text() string {
	text, err := chromedp.Run(p.ctx, chromedp.Evaluate[string]("document.body?.innerText ?? ''"))
	if err != nil {
		return "" // between two pages there is nothing to read
	}
	return strings.Join(strings.Fields(text), " ")
}

// See waits until the text can be read.
func (p *Page) See(text string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("to see %q", text), func() bool { return strings.Contains(p.Text(), text) })
}

// NotSee waits until the text can no longer be read.
func (p *Page) NotSee(text string) {
	p.t.Helper()
	p.Eventually(fmt.Sprintf("to see %q gone", text), func() bool { return !strings.Contains(p.Text(), text) })
}

// Allow names a part of console messages that this test expects.
func (p *Page) Allow(parts ...string) { p.allowed = append(p.allowed, parts...) }

// hear collects what the page complains about: errors, warnings, uncaught faults, breaches of the content policy.
func (p *Page) hear(event any) {
	var text string
	switch e := event.(type) {
	case *runtime.EventConsoleAPICalled:
		switch e.Type {
		case runtime.ConsoleAPICalledTypeError, runtime.ConsoleAPICalledTypeWarning, runtime.ConsoleAPICalledTypeAssert:
		default:
			return
		}
		for _, arg := range e.Args {
			text += string(arg.Value) + arg.Description + " "
		}
	case *runtime.EventExceptionThrown:
		text = e.ExceptionDetails.Text
		if e.ExceptionDetails.Exception != nil {
			text += " " + e.ExceptionDetails.Exception.Description
		}
	case *log.EventEntryAdded:
		if e.Entry.Level != log.EntryLevelError && e.Entry.Level != log.EntryLevelWarning {
			return
		}
		text = fmt.Sprintf("%s: %s %s", e.Entry.Source, e.Entry.Text, e.Entry.URL)
	default:
		return
	}
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.said = append(p.said, text)
}

func (p *Page) heard() []string {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	return slices.Clone(p.said)
}

// assertQuiet fails the test when the page complained about anything that was not allowed.
func (p *Page) assertQuiet() {
	for _, text := range p.heard() {
		expected := slices.ContainsFunc(p.allowed, func(part string) bool { return strings.Contains(text, part) })
		if !expected {
			p.t.Errorf("the console says: %s", text)
		}
	}
}
