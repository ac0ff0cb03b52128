//go:build !js

package main

import (
	"context"
	"encoding/json"
	"fmt"
	"sync"

	"github.com/coder/websocket"
)

// bidi is a connection after the W3C's WebDriver BiDi: commands and their
// answers by number, and events in between.
type bidi struct {
	socket *websocket.Conn
	hear   func(method string, params json.RawMessage)

	mu      sync.Mutex
	last    int
	waiting map[int]chan bidiAnswer
	broken  error // why there will be no more answers
}

type bidiAnswer struct {
	ID      int             `json:"id"`
	Method  string          `json:"method"` // of an event
	Params  json.RawMessage `json:"params"`
	Result  json.RawMessage `json:"result"`
	Error   string          `json:"error"`
	Message string          `json:"message"`
}

func dialBiDi(ctx context.Context, url string, hear func(string, json.RawMessage)) (*bidi, error) {
	socket, _, err := websocket.Dial(ctx, url, nil)
	if err != nil {
		return nil, err
	}
	socket.SetReadLimit(-1) // a screenshot is one message
	c := &bidi{socket: socket, hear: hear, waiting: map[int]chan bidiAnswer{}}
	go c.listen()
	return c, nil
}

func (c *bidi) listen() {
	for {
		_, text, err := c.socket.Read(context.Background())
		var a bidiAnswer
		if err == nil {
			err = json.Unmarshal(text, &a)
		}
		if err != nil {
			c.give(err)
			return
		}
		if a.Method != "" {
			c.hear(a.Method, a.Params)
			continue
		}
		c.mu.Lock()
		answer := c.waiting[a.ID]
		delete(c.waiting, a.ID)
		c.mu.Unlock()
		if answer != nil {
			answer <- a
		}
	}
}

// give tells everybody who waits that nothing will come.
func (c *bidi) give(err error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.broken = err
	for _, answer := range c.waiting {
		answer <- bidiAnswer{Error: "connection lost", Message: err.Error()}
	}
	clear(c.waiting)
}

// call sends a command and reads its result into out, where there is one.
func (c *bidi) call(ctx context.Context, method string, params map[string]any, out any) error {
	id, answer, err := c.ticket()
	if err != nil {
		return err
	}
	text, err := json.Marshal(map[string]any{"id": id, "method": method, "params": params})
	if err != nil {
		return err
	}
	if err := c.socket.Write(context.WithoutCancel(ctx), websocket.MessageText, text); err != nil {
		return err
	}
	select {
	case a := <-answer:
		switch {
		case a.Error != "":
			return fmt.Errorf("%s: %s: %s", method, a.Error, a.Message)
		case out != nil:
			return json.Unmarshal(a.Result, out)
		}
		return nil
	case <-ctx.Done():
		return fmt.Errorf("%s: %w", method, ctx.Err())
	}
}

func (c *bidi) ticket() (id int, answer chan bidiAnswer, err error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.broken != nil {
		return 0, nil, c.broken
	}
	c.last++
	answer = make(chan bidiAnswer, 1)
	c.waiting[c.last] = answer
	return c.last, answer, nil
}
