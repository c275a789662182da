package engine

import (
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
)

type geckoTab struct {
	browser *gecko
	context string
	heard   []string
}

func (t *geckoTab) say(method string, parameters anything, into any) error {
	parameters["context"] = t.context
	return t.browser.wire.say(method, parameters, into)
}

func (t *geckoTab) Reload() error {
	return t.say("browsingContext.reload", anything{"wait": "complete"}, nil)
}

func (t *geckoTab) Run(expression string) (json.RawMessage, error) {
	var given struct {
		Type             string
		Result           struct{ Value string }
		ExceptionDetails struct{ Text string }
	}
	parameters := anything{"expression": asJSON(expression), "awaitPromise": true, "target": anything{"context": t.context}, "userActivation": false}
	if err := t.browser.wire.say("script.evaluate", parameters, &given); err != nil {
		return nil, err
	}
	if given.Type != "success" {
		return nil, errors.New(given.ExceptionDetails.Text)
	}
	return json.RawMessage(given.Result.Value), nil
}

func (t *geckoTab) Press(x, y float64) error {
	place := anything{"type": "pointerMove", "x": math.Round(x), "y": math.Round(y)}
	return t.act(anything{"type": "pointer", "id": "finger", "parameters": anything{"pointerType": "touch"},
		"actions": []any{place, anything{"type": "pointerDown", "button": 0}, anything{"type": "pointerUp", "button": 0}}})
}

func (t *geckoTab) Keys(text string) error { return t.act(keys(text)) }

func (t *geckoTab) act(source anything) error {
	return t.say("input.performActions", anything{"actions": []any{source}}, nil)
}

func (t *geckoTab) Bring(selector, path string) error {
	var found struct {
		Nodes []struct{ SharedID string }
	}
	if err := t.say("browsingContext.locateNodes", anything{"locator": anything{"type": "css", "value": selector}}, &found); err != nil {
		return err
	}
	if len(found.Nodes) != 1 {
		return fmt.Errorf("%s finds %d", selector, len(found.Nodes))
	}
	return t.say("input.setFiles", anything{"element": anything{"sharedId": found.Nodes[0].SharedID}, "files": []string{path}}, nil)
}

func (t *geckoTab) Shot() ([]byte, error) {
	var picture struct{ Data string }
	if err := t.say("browsingContext.captureScreenshot", anything{}, &picture); err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(picture.Data)
}

func (t *geckoTab) Close() error { return t.say("browsingContext.close", anything{}, nil) }

func (t *geckoTab) Heard() []string {
	t.browser.mutex.Lock()
	defer t.browser.mutex.Unlock()
	return slices.Clone(t.heard)
}
