package engine_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The runner itself must go red. Every row of the files is doctored in turn.
func TestRunnerRejectsDoctoredRows(t *testing.T) {
	for _, r := range outsideRows(t) {
		for what, doctored := range map[string]row{
			"no name":             with(r, func(r *row) { r.Name = "" }),
			"no source":           with(r, func(r *row) { r.Source = "" }),
			"unknown source kind": with(r, func(r *row) { r.SourceKind = "hearsay" }),
			"unknown quantity":    with(r, func(r *row) { r.Quantity += " squared" }),
			"unused input":        with(r, func(r *row) { r.Inputs["spare"] = json.RawMessage("1") }),
			"uncomputed answer":   with(r, func(r *row) { r.Expected = map[string]any{"spare": 1.0} }),
			"nothing expected":    with(r, func(r *row) { r.Expected = map[string]any{} }),
			"no tolerance":        with(r, func(r *row) { r.Tolerance = nil }),
			"stray tolerance":     with(r, func(r *row) { r.Tolerance = map[string]any{"spare": 1.0} }),
			"altered answer":      with(r, func(r *row) { r.Expected = altered(r.Expected, r.Tolerance) }),
		} {
			require.Error(t, checkRow(doctored), "%s: %s", r.Name, what)
		}
	}
}

// Each value of an answer counts, not only one of them.
func TestRunnerReadsEachExpectedValue(t *testing.T) {
	for _, r := range outsideRows(t) {
		values, _ := r.Expected.(map[string]any)
		for key := range values {
			doctored := with(r, func(r *row) {
				r.Expected.(map[string]any)[key] = altered(values[key], toleranceOf(r.Tolerance, key))
			})
			require.Error(t, checkRow(doctored), "%s: %s", r.Name, key)
		}
	}
}

// with is a deep copy of a row, changed.
func with(r row, change func(*row)) row {
	text, _ := json.Marshal(r)
	var copied row
	_ = json.Unmarshal(text, &copied)
	if copied.Inputs == nil {
		copied.Inputs = map[string]json.RawMessage{}
	}
	change(&copied)
	return copied
}

// altered moves an expected value just out of its tolerance.
func altered(expected, tolerance any) any {
	switch v := expected.(type) {
	case float64:
		allowed, _ := allowance(tolerance, v)
		return v + 2.5*allowed + 1e-9*(1+math.Abs(v))
	case string:
		return v + "?"
	case bool:
		return !v
	case []any:
		return append([]any{altered(v[0], tolerance)}, v[1:]...)
	}
	out := map[string]any{}
	for key, value := range expected.(map[string]any) {
		out[key] = altered(value, toleranceOf(tolerance, key))
	}
	return out
}

func TestRunnerRejectsUnusableInputs(t *testing.T) {
	good := row{Name: "n", Quantity: "uncertainty of a reading", Source: "s", SourceKind: "memory",
		Inputs: map[string]json.RawMessage{"reading": []byte("100"), "pct": []byte("1"), "digits": []byte("0"), "lsd": []byte("1")},
		// A percent of 100 is 1, exactly.
		Expected: map[string]any{"half_width": 1.0}, Tolerance: 0.0}
	require.NoError(t, checkRow(good))
	for key := range good.Inputs {
		assert.ErrorContains(t, checkRow(with(good, func(r *row) { delete(r.Inputs, key) })), fmt.Sprintf("no input %q", key))
		for _, wrong := range []string{`"1"`, `null`, `[1]`} {
			assert.ErrorContains(t, checkRow(with(good, func(r *row) { r.Inputs[key] = json.RawMessage(wrong) })), key)
		}
	}
}

func TestRunnerRejectsAssumptionsItDoesNotShare(t *testing.T) {
	for name, change := range map[string]func(*row){
		"three_way_0.53":           func(r *row) { r.Inputs["accept_if_pc_ge"] = json.RawMessage("0.9") },
		"three_way_0.545":          func(r *row) { r.Inputs["reject_if_pc_le"] = json.RawMessage("0.1") },
		"ref_to_20C":               func(r *row) { r.Inputs["k"] = json.RawMessage("235") },
		"awg14_ohm_per_1000ft_20C": func(r *row) { r.Inputs["rho"] = json.RawMessage(`"silver"`) },
	} {
		assert.ErrorContains(t, checkRow(with(rowNamed(t, name), change)), "does not hold", name)
	}
}

func rowNamed(t *testing.T, name string) row {
	t.Helper()
	for _, r := range outsideRows(t) {
		if r.Name == name {
			return r
		}
	}
	require.Fail(t, "no row named "+name)
	return row{}
}

func TestRunnerComparesEveryKindOfValue(t *testing.T) {
	numbers := func(v ...float64) answers { return only(v) }
	list := []any{1.0, 2.0}
	require.NoError(t, compare(list, 0.1, numbers(1.05, 1.95)))
	require.NoError(t, compare(1000.0, map[string]any{"rel": 0.01}, only(1009.0)))
	require.NoError(t, compare("in spec", 0.0, only("in spec")))
	require.NoError(t, compare(true, 0.0, only(true)))
	require.NoError(t, compare(map[string]any{"a": 1.0}, map[string]any{"a": 0.0}, answers{"a": 1.0, "more": 7.0}))

	for what, err := range map[string]error{
		"a list too short":      compare(list, 0.1, numbers(1)),
		"a list off":            compare(list, 0.1, numbers(1, 2.2)),
		"no list":               compare(list, 0.1, only(1.0)),
		"too far, relative":     compare(1000.0, map[string]any{"rel": 0.01}, only(1011.0)),
		"not a number":          compare(1.0, 0.1, only(math.NaN())),
		"a text for a number":   compare(1.0, 0.1, only("1")),
		"a number for a text":   compare("1", 0.1, only(1.0)),
		"the other truth":       compare(true, 0.0, only(false)),
		"null":                  compare(nil, 0.0, only(nil)),
		"tolerance below zero":  compare(1.0, -0.1, only(1.0)),
		"tolerance for nothing": compare(1.0, 1.0, only(1.0)),
		"a tolerance too many":  compare(map[string]any{"a": 1.0}, map[string]any{"a": 0.1, "b": 0.1}, answers{"a": 1.0}),
		"one key's tolerance":   compare(map[string]any{"a": 1.0, "b": 1.0}, map[string]any{"a": 0.1}, answers{"a": 1.0, "b": 1.0}),
	} {
		assert.Error(t, err, what)
	}
}

func TestRunnerReadsFilesStrictly(t *testing.T) {
	const checks = `{"note": "", "checks": [{"name": "a"}]}`
	rows, err := readRows([]byte(checks))
	require.NoError(t, err)
	assert.Equal(t, "a", rows[0].Name)

	for what, text := range map[string]string{
		"unknown key in a row":  `{"checks": [{"name": "a", "comment": ""}]}`,
		"unknown key in a file": `{"rows": [], "checks": [{"name": "a"}]}`,
		"no checks":             `{"note": "", "checks": []}`,
		"more behind":           checks + checks,
		"not closed":            checks[:10],
	} {
		_, err := readRows([]byte(text))
		assert.Error(t, err, what)
	}
	assert.Error(t, namesDiffer([]row{{Name: "a"}, {Name: "b"}, {Name: "a"}}))
	assert.Panics(t, func() { register(map[string]computation{"means": nil}) })
}
