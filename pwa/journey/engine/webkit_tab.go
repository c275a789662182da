package engine

import (
	"encoding/base64"
	"encoding/json"
	"errors"
	"math"
	"net/http"
)

// element is the key under which WebDriver hands over an element: https://www.w3.org/TR/webdriver2/#elements.
const element = "element-6066-11e4-a52e-4f735466cecf"

func (t *webKitTab) Reload() error { return t.say(http.MethodPost, "/refresh", nil, nil) }

func (t *webKitTab) Run(expression string) (json.RawMessage, error) {
	script := "const done = arguments[arguments.length - 1]; " + asJSON(expression) + ".then((value) => done({value}), (fault) => done({fault: String(fault)}));"
	var given struct {
		Value json.RawMessage
		Fault string
	}
	var text string
	if err := t.say(http.MethodPost, "/execute/async", anything{"script": script, "args": []any{}}, &given); err != nil {
		return nil, err
	}
	if given.Fault != "" {
		return nil, errors.New(given.Fault)
	}
	err := json.Unmarshal(given.Value, &text)
	return json.RawMessage(text), err
}

func (t *webKitTab) Press(x, y float64) error {
	place := anything{"type": "pointerMove", "duration": 0, "origin": "viewport", "x": math.Round(x), "y": math.Round(y)}
	return t.act(anything{"type": "pointer", "id": "mouse", "parameters": anything{"pointerType": "mouse"},
		"actions": []any{place, anything{"type": "pointerDown", "button": 0}, anything{"type": "pointerUp", "button": 0}}})
}

func (t *webKitTab) Keys(text string) error { return t.act(keys(text)) }

// keys are the strokes that write a text.
func keys(text string) anything {
	var strokes []any
	for _, letter := range text {
		strokes = append(strokes, anything{"type": "keyDown", "value": string(letter)}, anything{"type": "keyUp", "value": string(letter)})
	}
	return anything{"type": "key", "id": "keys", "actions": strokes}
}

func (t *webKitTab) act(source anything) error {
	return t.say(http.MethodPost, "/actions", anything{"actions": []any{source}}, nil)
}

func (t *webKitTab) Bring(selector, path string) error {
	var found map[string]string
	if err := t.say(http.MethodPost, "/element", anything{"using": "css selector", "value": selector}, &found); err != nil {
		return err
	}
	return t.say(http.MethodPost, "/element/"+found[element]+"/value", anything{"text": path}, nil)
}

func (t *webKitTab) Shot() ([]byte, error) {
	var picture string
	if err := t.say(http.MethodGet, "/screenshot", nil, &picture); err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(picture)
}

// Heard is empty: WebDriver does not tell what stands in the console.
func (t *webKitTab) Heard() []string { return nil }
