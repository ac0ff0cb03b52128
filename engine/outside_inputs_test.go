package engine_test

import (
	"encoding/json"
	"fmt"
	"sort"
)

// inputs hands out the inputs of a row and remembers which were asked for.
type inputs struct {
	values map[string]json.RawMessage
	read   map[string]bool
}

func (in *inputs) has(key string) bool {
	_, there := in.values[key]
	return there
}

func (in *inputs) number(key string) float64    { return input[float64](in, key) }
func (in *inputs) numbers(key string) []float64 { return input[[]float64](in, key) }
func (in *inputs) text(key string) string       { return input[string](in, key) }

// numberOr is for an input whose absence has a meaning.
func (in *inputs) numberOr(key string, absent float64) float64 {
	if !in.has(key) {
		return absent
	}
	return in.number(key)
}

// must stops a computation whose assumption a row does not share.
func (in *inputs) must(holds bool, what string) {
	if !holds {
		panic("does not hold: " + what)
	}
}

func input[T any](in *inputs, key string) T {
	raw, there := in.values[key]
	if !there {
		panic(fmt.Sprintf("no input %q", key))
	}
	in.read[key] = true
	var value *T
	if err := json.Unmarshal(raw, &value); err != nil || value == nil {
		panic(fmt.Sprintf("input %q is %s, which is no %T", key, raw, *new(T)))
	}
	return *value
}

func (in *inputs) allRead() error {
	var unread []string
	for key := range in.values {
		if !in.read[key] {
			unread = append(unread, key)
		}
	}
	if len(unread) > 0 {
		sort.Strings(unread)
		return fmt.Errorf("inputs that nothing reads: %q", unread)
	}
	return nil
}
