package engine

import (
	"errors"
	"fmt"
	"net"
	"net/http"
	"os/exec"
	"path/filepath"
	"regexp"
)

// webKit is WebKitGTK's small browser, driven by its own WebDriver on a screen that nobody sees. What it stores it keeps in
// memory, as long as it runs: a restart is all windows closed and a new one opened.
type webKit struct {
	screen, driver *process
	wire           *classic
	name           string
	current        string // the window that commands go to
	spare          string // the window that the browser opened by itself, for the next page
}

// StartWebKit starts a browser with an empty storage.
func StartWebKit(options Options) (Browser, error) {
	driver, err := exec.LookPath("WebKitWebDriver")
	browsers, _ := filepath.Glob("/usr/lib/*/webkit2gtk-4.1/MiniBrowser")
	if err != nil || len(browsers) == 0 {
		return nil, fmt.Errorf("WebKit is %w: webkit2gtk-driver", ErrMissing)
	}
	if _, err := exec.LookPath("Xvfb"); err != nil {
		return nil, fmt.Errorf("a screen for WebKit is %w: xvfb", ErrMissing)
	}
	b := &webKit{}
	if err := b.start(driver, browsers[0], options); err != nil {
		return nil, errors.Join(err, b.Close())
	}
	return b, nil
}

var digits = regexp.MustCompile(`^\d+$`)

func (b *webKit) start(driver, browser string, options Options) (err error) {
	var display string
	b.screen, display, err = startAndHear(digits.FindString, nil, "Xvfb", "-displayfd", "1", "-screen", "0", "1400x1200x24", "-nolisten", "tcp")
	if err != nil {
		return err
	}
	address, err := freePort()
	if err != nil {
		return err
	}
	_, port, _ := net.SplitHostPort(address)
	env := []string{"DISPLAY=:" + display, "WEBKIT_DISABLE_COMPOSITING_MODE=1", "LC_ALL=C.UTF-8", "LANGUAGE=en_US", "GDK_BACKEND=x11", "NO_AT_BRIDGE=1"}
	if options.Dark {
		env = append(env, "GTK_THEME=Adwaita:dark")
	}
	if b.driver, err = start(nil, env, driver, "--port="+port); err != nil {
		return err
	}
	b.wire = newClassic(address)
	if err := b.wire.ready(); err != nil {
		return err
	}
	return b.session(browser)
}

func freePort() (address string, err error) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return "", err
	}
	return listener.Addr().String(), listener.Close()
}

// anything is a JSON object.
type anything = map[string]any

func (b *webKit) session(browser string) error {
	wanted := anything{"capabilities": anything{"alwaysMatch": anything{
		"browserName": "MiniBrowser", "pageLoadStrategy": "normal",
		"webkitgtk:browserOptions": anything{"binary": browser, "args": []string{"--automation"}},
	}}}
	var given struct {
		SessionID    string
		Capabilities struct{ BrowserVersion string }
	}
	if err := b.wire.say(http.MethodPost, "/session", wanted, &given); err != nil {
		return err
	}
	b.wire.base += "/session/" + given.SessionID
	b.name = "WebKit"
	if err := b.wire.say(http.MethodPost, "/timeouts", anything{"script": patience.Milliseconds(), "pageLoad": patience.Milliseconds()}, nil); err != nil {
		return err
	}
	if err := b.wire.say(http.MethodGet, "/window", nil, &b.spare); err != nil {
		return err
	}
	b.current = b.spare
	if version := webKitVersion(); version != "" {
		b.name += "GTK " + version
	}
	return nil
}

// webKitVersion asks the package, since the browser calls itself by another's version.
func webKitVersion() string {
	said, err := exec.Command("dpkg-query", "-W", "-f", "${Version}", "webkit2gtk-driver").Output()
	if err != nil {
		return ""
	}
	return regexp.MustCompile(`^[\d.]+`).FindString(string(said))
}

func (b *webKit) Name() string { return b.name }

func (b *webKit) Open(url string) (Tab, error) {
	tab := &webKitTab{browser: b, handle: b.spare}
	if b.spare == "" {
		var opened struct{ Handle string }
		if err := b.wire.say(http.MethodPost, "/window/new", anything{"type": "window"}, &opened); err != nil {
			return nil, err
		}
		tab.handle = opened.Handle
	}
	b.spare = ""
	if err := tab.say(http.MethodPost, "/window/rect", anything{"width": 390, "height": 930}, nil); err != nil {
		return nil, err
	}
	return tab, tab.say(http.MethodPost, "/url", anything{"url": url}, nil)
}

// Restart opens a window and closes the others; the last window takes the browser with it.
func (b *webKit) Restart() error {
	var old []string
	if err := b.wire.say(http.MethodGet, "/window/handles", nil, &old); err != nil {
		return err
	}
	var opened struct{ Handle string }
	if err := b.wire.say(http.MethodPost, "/window/new", anything{"type": "window"}, &opened); err != nil {
		return err
	}
	for _, handle := range old {
		tab := &webKitTab{browser: b, handle: handle}
		if err := tab.Close(); err != nil {
			return err
		}
	}
	b.spare = opened.Handle
	return nil
}

func (b *webKit) Close() error {
	if b.wire != nil {
		_ = b.wire.say(http.MethodDelete, "", nil, nil) // its processes are ended in any case
	}
	b.driver.wait(0)
	b.screen.wait(0)
	return nil
}

type webKitTab struct {
	browser *webKit
	handle  string
}

// say sends a command to this window.
func (t *webKitTab) say(method, path string, parameters, into any) error {
	if t.browser.current != t.handle {
		if err := t.browser.wire.say(http.MethodPost, "/window", anything{"handle": t.handle}, nil); err != nil {
			return err
		}
		t.browser.current = t.handle
	}
	return t.browser.wire.say(method, path, parameters, into)
}

func (t *webKitTab) Close() error {
	err := t.say(http.MethodDelete, "/window", nil, nil)
	t.browser.current = ""
	return err
}
