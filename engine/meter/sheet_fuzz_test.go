package meter_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// FuzzSheet: a stored sheet is refused with a reason and a way out, or it is a
// meter whose ranges rise and all measure.
func FuzzSheet(f *testing.F) {
	for _, m := range meter.Bundled() {
		stored, _ := json.Marshal(meter.SheetOf(m))
		f.Add(stored)
	}
	for _, counts := range meter.SheetCounts() {
		stored, _ := json.Marshal(fullSheet(counts))
		f.Add(stored)
	}
	f.Add([]byte(`{"class":"cheap","counts":1999,"lines":[{"function":"ohms","nominal":1e999}]}`))
	f.Add([]byte(`{"lines":[{},{"percent":-0,"digits":1e-300}]}`))
	f.Fuzz(func(t *testing.T, stored []byte) {
		var s meter.Sheet
		if json.Unmarshal(stored, &s) != nil {
			return
		}
		m, err := s.Meter()
		if err != nil {
			var field *meter.FieldError
			if !errors.As(err, &field) || field.Field == "" || field.Reason == "" || field.WayOut == "" {
				t.Fatalf("refused without a reason or a way out: %v", err)
			}
			return
		}
		for _, fn := range meter.Functions() {
			mustRise(t, m, fn)
			for _, r := range m.Ranges[fn] {
				mustMeasure(t, m, fn, r)
			}
		}
	})
}

func mustMeasure(t *testing.T, m meter.Meter, f meter.Function, r meter.Range) {
	t.Helper()
	c := meter.Conditions{Low: 5, High: 1e4, Source: 1e3}
	for _, v := range []float64{0, r.Step, r.Full} {
		got := m.Measure(f, m.RangeOf(f, r, quantity.Typed{Value: v, Step: r.Step}), quantity.Typed{Value: v, Step: r.Step}, c)
		for _, part := range []float64{got.Value, got.Std, got.Gain, got.Shared, got.Own} {
			if math.IsNaN(part) || math.IsInf(part, 0) {
				t.Fatalf("%v, %s: %v measures as %+v", f, r.Label, v, got)
			}
		}
		if !(got.Std > 0) {
			t.Fatalf("%v, %s: %v is without doubt", f, r.Label, v)
		}
	}
}
