package engine

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"time"
)

// classic is a session of the W3C's WebDriver over HTTP: https://www.w3.org/TR/webdriver2/.
type classic struct {
	base   string // with the session, once there is one
	client http.Client
}

// say sends one command and gives the answer's value.
func (c *classic) say(method, path string, parameters, into any) error {
	var body bytes.Buffer
	if method == http.MethodPost {
		if parameters == nil {
			parameters = struct{}{}
		}
		if err := json.NewEncoder(&body).Encode(parameters); err != nil {
			return err
		}
	}
	request, err := http.NewRequest(method, c.base+path, &body)
	if err != nil {
		return err
	}
	request.Header.Set("Content-Type", "application/json")
	answer, err := c.client.Do(request)
	if err != nil {
		return err
	}
	defer answer.Body.Close()
	var said struct{ Value json.RawMessage }
	if err := json.NewDecoder(answer.Body).Decode(&said); err != nil {
		return fmt.Errorf("%s %s: %w", method, path, err)
	}
	if answer.StatusCode != http.StatusOK {
		return fmt.Errorf("%s %s: %s", method, path, said.Value)
	}
	if into == nil {
		return nil
	}
	return json.Unmarshal(said.Value, into)
}

func newClassic(address string) *classic {
	return &classic{base: "http://" + address, client: http.Client{Timeout: 2 * patience}}
}

// ready waits until the driver answers.
func (c *classic) ready() error {
	deadline := time.Now().Add(patience)
	for {
		err := c.say(http.MethodGet, "/status", nil, nil)
		if err == nil || time.Now().After(deadline) {
			return err
		}
		time.Sleep(50 * time.Millisecond)
	}
}
