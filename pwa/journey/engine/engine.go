// Package engine drives browsers of other makes than the one that most journeys use: WebKit by the W3C's WebDriver, Gecko by
// WebDriver BiDi. It holds only what a tour through the app asks for; who presses what is said by the tour.
package engine

import (
	"encoding/json"
	"errors"
)

// ErrMissing is what Start says when the engine is not installed here.
var ErrMissing = errors.New("not installed")

// Options is what a phone is like from the start.
type Options struct {
	Dark    bool   // the phone asks for dark colours
	Profile string // an empty folder for what the browser keeps
}

// Browser is one browser with what it keeps.
type Browser interface {
	// Name is the engine with its version, as the browser tells it.
	Name() string
	// Open opens a page in a window of its own.
	Open(url string) (Tab, error)
	// Restart ends all pages, and the browser too where it keeps its storage on the disk. Open new pages after it.
	Restart() error
	// Close ends the browser and everything that was started for it.
	Close() error
}

// Tab is one page. What its methods return as an error is about the browser, not about the app.
type Tab interface {
	// Reload loads the page anew; a server that is gone is no error.
	Reload() error
	// Run gives the value of an expression, awaited, as JSON.
	Run(expression string) (json.RawMessage, error)
	// Press presses once, at a place in CSS pixels of what is shown.
	Press(x, y float64) error
	// Keys types into what has the focus.
	Keys(text string) error
	// Bring gives a file to the chooser that a CSS selector finds.
	Bring(selector, path string) error
	// Shot is a picture of what is shown, as PNG.
	Shot() ([]byte, error)
	// Close closes the page.
	Close() error
	// Heard are the errors that the page gave to the console, where the engine tells them.
	Heard() []string
}

// asJSON wraps an expression so that its value, awaited, comes back as one string of JSON.
func asJSON(expression string) string {
	return "(async () => JSON.stringify((await (" + expression + ")) ?? null))()"
}
