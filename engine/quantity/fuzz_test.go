package quantity_test

import (
	"errors"
	"math"
	"testing"

	"coilbook/engine/quantity"
)

// FuzzParse: no text panics; a number is finite, has a step, and comes back the
// same when it is printed and read again; a refusal says why and what to do.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"144.7", "0,5", "1,234", "OL", "1k2", "500 mΩ", "1 .", "won't settle", "-40 °F", "NaN"} {
		f.Add(text, uint8(quantity.Resistance), uint8(0))
	}
	f.Fuzz(func(t *testing.T, text string, kind, unit uint8) {
		k := quantity.Kind(kind) % (quantity.Temperature + 1)
		units := quantity.Units(k)
		got, err := quantity.Parse(k, text, units[int(unit)%len(units)])
		var ask *quantity.AmbiguousError
		var no *quantity.UnreadableError
		switch {
		case errors.As(err, &ask):
			for _, choice := range ask.Choices {
				mustComeBack(t, choice)
			}
		case errors.As(err, &no):
			if no.Reason == "" || no.WayOut == "" {
				t.Fatalf("%q is refused without a reason or a way out: %v", text, err)
			}
		case err != nil:
			t.Fatalf("%q: an error of no known type: %v", text, err)
		default:
			mustComeBack(t, got)
		}
	})
}

func mustComeBack(t *testing.T, got quantity.Typed) {
	t.Helper()
	again, err := quantity.Parse(got.Kind, got.String(), got.Unit)
	if err != nil {
		t.Fatalf("%+v prints as %q, which is refused: %v", got, got, err)
	}
	if again != got {
		t.Fatalf("%+v prints as %q, which reads as %+v", got, got, again)
	}
	if got.State != quantity.Number {
		return
	}
	if math.IsNaN(got.Value) || math.IsInf(got.Value, 0) || !(got.Step > 0) || math.IsInf(got.Step, 0) {
		t.Fatalf("%+v is no finite number with a step", got)
	}
}
