package engine

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
)

// gecko is Firefox without a window, driven by WebDriver BiDi: https://www.w3.org/TR/webdriver-bidi/.
type gecko struct {
	options Options
	program string
	process *process
	wire    *bidi
	name    string

	mutex sync.Mutex
	tabs  map[string]*geckoTab
}

// StartGecko starts a browser with what the profile holds.
func StartGecko(options Options) (Browser, error) {
	for _, name := range []string{"firefox-esr", "firefox"} {
		program, err := exec.LookPath(name)
		if err != nil {
			continue
		}
		b := &gecko{options: options, program: program}
		if err := b.start(); err != nil {
			return nil, errors.Join(err, b.Close())
		}
		return b, nil
	}
	return nil, fmt.Errorf("firefox-esr is %w", ErrMissing)
}

// preferences keep the browser from the network and from questions of its own.
const preferences = `user_pref("app.update.enabled", false);
user_pref("app.normandy.enabled", false);
user_pref("browser.newtabpage.enabled", false);
user_pref("browser.startup.homepage", "about:blank");
user_pref("browser.startup.page", 0);
user_pref("messaging-system.rsexperimentloader.enabled", false);
user_pref("toolkit.shutdown.fastShutdownStage", 3);
user_pref("toolkit.startup.max_resumed_crashes", -1);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("browser.startup.homepage_override.mstone", "ignore");
user_pref("browser.region.network.url", "");
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("datareporting.policy.dataSubmissionPolicyBypassNotification", true);
user_pref("dom.disable_open_during_load", false);
user_pref("extensions.update.enabled", false);
user_pref("intl.accept_languages", "en-US, en");
user_pref("network.captive-portal-service.enabled", false);
user_pref("network.connectivity-service.enabled", false);
user_pref("services.settings.server", "");
user_pref("ui.useOverlayScrollbars", 1);
user_pref("toolkit.telemetry.enabled", false);
`

var listening = regexp.MustCompile(`WebDriver BiDi listening on (ws://\S+)`)

func (b *gecko) start() error {
	scheme := 1 // light
	if b.options.Dark {
		scheme = 0
	}
	text := preferences + fmt.Sprintf("user_pref(\"layout.css.prefers-color-scheme.content-override\", %d);\n", scheme)
	if err := os.WriteFile(filepath.Join(b.options.Profile, "user.js"), []byte(text), 0o600); err != nil {
		return err
	}
	var address string
	var err error
	b.process, address, err = startAndHear(func(line string) string {
		if match := listening.FindStringSubmatch(line); match != nil {
			return match[1]
		}
		return ""
	}, []string{"MOZ_CRASHREPORTER_DISABLE=1"}, b.program, "-headless", "-no-remote", "-profile", b.options.Profile, "--remote-debugging-port", "0")
	if err != nil {
		return err
	}
	b.tabs = map[string]*geckoTab{}
	if b.wire, err = dial(address+"/session", b.hear); err != nil {
		return err
	}
	var given struct {
		Capabilities struct{ BrowserVersion string }
	}
	if err := b.wire.say("session.new", anything{"capabilities": anything{}}, &given); err != nil {
		return err
	}
	b.name = "Gecko (Firefox " + given.Capabilities.BrowserVersion + ")"
	return b.wire.say("session.subscribe", anything{"events": []string{"log.entryAdded"}}, nil)
}

// hear keeps what a page complains about.
func (b *gecko) hear(method string, parameters json.RawMessage) {
	var entry struct {
		Level, Text string
		Source      struct{ Context string }
	}
	if method != "log.entryAdded" || json.Unmarshal(parameters, &entry) != nil || entry.Level != "error" {
		return
	}
	b.mutex.Lock()
	defer b.mutex.Unlock()
	if tab := b.tabs[entry.Source.Context]; tab != nil {
		tab.heard = append(tab.heard, strings.TrimSpace(entry.Text))
	}
}

func (b *gecko) Name() string { return b.name }

func (b *gecko) Open(url string) (Tab, error) {
	var made struct{ Context string }
	if err := b.wire.say("browsingContext.create", anything{"type": "tab"}, &made); err != nil {
		return nil, err
	}
	tab := &geckoTab{browser: b, context: made.Context}
	b.mutex.Lock()
	b.tabs[made.Context] = tab
	b.mutex.Unlock()
	size := anything{"viewport": anything{"width": 390, "height": 844}, "devicePixelRatio": 2}
	if err := tab.say("browsingContext.setViewport", size, nil); err != nil {
		return nil, err
	}
	return tab, tab.say("browsingContext.navigate", anything{"url": url, "wait": "complete"}, nil)
}

// Restart ends the browser and starts it again on the same profile.
func (b *gecko) Restart() error {
	if err := b.Close(); err != nil {
		return err
	}
	return b.start()
}

func (b *gecko) Close() error {
	if b.wire != nil {
		_ = b.wire.say("browser.close", anything{}, nil) // it may be gone before it answers
		b.wire.close()
	}
	b.process.wait(patience / 6)
	b.wire, b.process = nil, nil
	return nil
}
