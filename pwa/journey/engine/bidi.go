package engine

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"sync"

	"github.com/coder/websocket"
)

// bidi is one connection of WebDriver BiDi. Answers find who asked by the number of the question.
type bidi struct {
	socket *websocket.Conn
	mutex  sync.Mutex
	last   int
	waits  map[int]chan reply
	gone   error // why nothing more can be asked
}

type reply struct {
	ID      int
	Type    string
	Method  string
	Params  json.RawMessage
	Result  json.RawMessage
	Error   string
	Message string
}

// largest is the longest answer taken, in bytes: a picture of a page as text.
const largest = 64 << 20

func dial(address string, hear func(method string, parameters json.RawMessage)) (*bidi, error) {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	socket, _, err := websocket.Dial(ctx, address, nil)
	if err != nil {
		return nil, err
	}
	socket.SetReadLimit(largest)
	b := &bidi{socket: socket, waits: map[int]chan reply{}}
	go b.listen(hear)
	return b, nil
}

func (b *bidi) listen(hear func(method string, parameters json.RawMessage)) {
	for {
		_, text, err := b.socket.Read(context.Background())
		var said reply
		if err == nil {
			err = json.Unmarshal(text, &said)
		}
		if err != nil {
			b.end(err)
			return
		}
		if said.Type == "event" {
			hear(said.Method, said.Params)
			continue
		}
		b.mutex.Lock()
		wait := b.waits[said.ID]
		delete(b.waits, said.ID)
		b.mutex.Unlock()
		if wait != nil {
			wait <- said
		}
	}
}

// end tells everyone who still waits that no answer will come.
func (b *bidi) end(err error) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.gone = fmt.Errorf("the browser is gone: %w", err)
	for id, wait := range b.waits {
		close(wait)
		delete(b.waits, id)
	}
}

// say sends one command and waits for its answer.
func (b *bidi) say(method string, parameters, into any) error {
	ctx, cancel := context.WithTimeout(context.Background(), 2*patience)
	defer cancel()
	wait := make(chan reply, 1)
	b.mutex.Lock()
	if b.gone != nil {
		defer b.mutex.Unlock()
		return b.gone
	}
	b.last++
	id := b.last
	b.waits[id] = wait
	b.mutex.Unlock()
	text, err := json.Marshal(anything{"id": id, "method": method, "params": parameters})
	if err != nil {
		return err
	}
	if err := b.socket.Write(ctx, websocket.MessageText, text); err != nil {
		return err
	}
	select {
	case said, open := <-wait:
		switch {
		case !open:
			return errors.New(method + ": the browser is gone")
		case said.Type == "error":
			return fmt.Errorf("%s: %s: %s", method, said.Error, said.Message)
		case into == nil:
			return nil
		}
		return json.Unmarshal(said.Result, into)
	case <-ctx.Done():
		return fmt.Errorf("%s: no answer", method)
	}
}

func (b *bidi) close() { _ = b.socket.CloseNow() }
