//go:build !js

package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
)

// webDriver is a session after the W3C's WebDriver, over HTTP.
type webDriver struct {
	address string // of the session
}

// call sends a command of the session and reads its value into out, where there
// is one.
func (d *webDriver) call(ctx context.Context, method, path string, params, out any) error {
	text, err := json.Marshal(params)
	if err != nil {
		return err
	}
	request, err := http.NewRequestWithContext(ctx, method, d.address+path, bytes.NewReader(text))
	if err != nil {
		return err
	}
	response, err := http.DefaultClient.Do(request)
	if err != nil {
		return err
	}
	defer response.Body.Close()
	var answer struct{ Value json.RawMessage }
	if err := json.NewDecoder(response.Body).Decode(&answer); err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	if response.StatusCode != http.StatusOK {
		return fmt.Errorf("%s: %s", path, answer.Value)
	}
	if out == nil {
		return nil
	}
	return json.Unmarshal(answer.Value, out)
}

// tapActions and keyActions are input in the form that both of the W3C's
// protocols take.
func tapActions(x, y int) []any {
	return []any{map[string]any{
		"type": "pointer", "id": "finger", "parameters": map[string]any{"pointerType": "mouse"},
		"actions": []any{
			map[string]any{"type": "pointerMove", "x": x, "y": y, "duration": 0},
			map[string]any{"type": "pointerDown", "button": 0},
			map[string]any{"type": "pointerUp", "button": 0},
		},
	}}
}

func keyActions(text string) []any {
	var strokes []any
	for _, r := range strings.ReplaceAll(text, "\r", "\ue007") { // the protocols' sign for the return key
		strokes = append(strokes, map[string]any{"type": "keyDown", "value": string(r)}, map[string]any{"type": "keyUp", "value": string(r)})
	}
	return []any{map[string]any{"type": "key", "id": "keyboard", "actions": strokes}}
}
