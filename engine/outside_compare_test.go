package engine_test

import (
	"errors"
	"fmt"
	"math"
)

// compare holds the answers against what a row expects: a bare value, or values
// by key. Answers that the row does not ask for are let be.
func compare(expected, tolerance any, got answers) error {
	byKey, isObject := expected.(map[string]any)
	if !isObject {
		byKey = map[string]any{"": expected}
	}
	if len(byKey) == 0 {
		return errors.New("expects nothing")
	}
	if err := strayTolerance(tolerance, byKey); err != nil {
		return err
	}
	for key, want := range byKey {
		answer, there := got[key]
		if !there {
			return fmt.Errorf("expects %q, which is not computed", key)
		}
		if err := agree(want, answer, toleranceOf(tolerance, key)); err != nil {
			return fmt.Errorf("%s: %w", key, err)
		}
	}
	return nil
}

func agree(want, got, tolerance any) error {
	switch want := want.(type) {
	case float64:
		return near(want, got, tolerance)
	case []any:
		return alike(want, got, tolerance)
	case string, bool:
		if want != got {
			return fmt.Errorf("got %v, want %v", got, want)
		}
		return nil
	}
	return fmt.Errorf("expects %v, which is no kind of value known here", want)
}

func near(want float64, got, tolerance any) error {
	number, ok := got.(float64)
	if !ok {
		return fmt.Errorf("got %v, want the number %v", got, want)
	}
	allowed, err := allowance(tolerance, want)
	if err != nil {
		return err
	}
	if !(math.Abs(number-want) <= allowed) {
		return fmt.Errorf("got %v, want %v within %v", number, want, allowed)
	}
	return nil
}

func alike(want []any, got, tolerance any) error {
	list, ok := got.([]float64)
	if !ok || len(list) != len(want) {
		return fmt.Errorf("got %v, want the numbers %v", got, want)
	}
	for i := range want {
		if err := agree(want[i], list[i], tolerance); err != nil {
			return fmt.Errorf("at %d: %w", i, err)
		}
	}
	return nil
}

// allowance is how far from want an answer may lie. One as large as the value
// itself would check nothing.
func allowance(tolerance any, want float64) (float64, error) {
	allowed, ok := tolerance.(float64)
	if share, relative := relativeTolerance(tolerance); relative {
		allowed, ok = share*math.Abs(want), true
	}
	if !ok || (want != 0 && allowed >= math.Abs(want)) {
		return 0, fmt.Errorf("tolerance %v is none for %v", tolerance, want)
	}
	return allowed, nil
}

func relativeTolerance(tolerance any) (share float64, ok bool) {
	if t, isObject := tolerance.(map[string]any); isObject && len(t) == 1 {
		share, ok = t["rel"].(float64)
	}
	return share, ok
}

// toleranceOf finds the tolerance of one key where keys have their own.
func toleranceOf(tolerance any, key string) any {
	byKey, isObject := tolerance.(map[string]any)
	if _, relative := relativeTolerance(tolerance); relative || !isObject {
		return tolerance
	}
	return byKey[key]
}

func strayTolerance(tolerance any, expected map[string]any) error {
	byKey, isObject := tolerance.(map[string]any)
	if _, relative := relativeTolerance(tolerance); relative || !isObject {
		return nil
	}
	for key := range byKey {
		if _, there := expected[key]; !there {
			return fmt.Errorf("tolerance for %q, which is not expected", key)
		}
	}
	return nil
}
