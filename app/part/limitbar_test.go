package part

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/app/drawing"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

func verdict(low, high, value, std float64) spec.Verdict {
	l := spec.Between(spec.PickupResistance, quantity.Resistance, low, high)
	p := spec.Conformance(value, std, low, high)
	return spec.Verdict{Outcome: spec.Decide(p), Probability: p, Value: value, Std: std, HasValue: true, Limit: l, HasLimit: true}
}

// place is where the value stands, and the band of the limit.
func place(t *testing.T, p drawing.Picture) (x, from, to float64) {
	t.Helper()
	for _, s := range p.Shapes {
		switch s := s.(type) {
		case drawing.Circle:
			x = s.Center.X
		case drawing.Rect:
			from, to = s.X, s.X+s.W
		}
	}
	return x, from, to
}

func TestTheBarShowsWhatTheVerdictSays(t *testing.T) {
	inf := math.Inf(1)
	for name, c := range map[string]struct {
		v      spec.Verdict
		inside bool
	}{
		"inside":            {verdict(100, 200, 150, 2), true},
		"under":             {verdict(100, 200, 60, 2), false},
		"over":              {verdict(100, 200, 260, 2), false},
		"far over":          {verdict(100, 200, 1e7, 2), false},
		"at least, over":    {verdict(30, inf, 80, 2), true},
		"at least, under":   {verdict(30, inf, 3, 0.2), false},
		"at most, inside":   {verdict(-inf, 1, 0.1, 0.05), true},
		"at most, over":     {verdict(-inf, 1, 40, 0.4), false},
		"a hair below zero": {verdict(-inf, 1, -0.1, 0.1), true},
	} {
		t.Run(name, func(t *testing.T) {
			x, from, to := place(t, LimitBar(c.v))
			require.Equal(t, c.inside, x >= from && x <= to, "value at %.1f, limit from %.1f to %.1f", x, from, to)
			require.GreaterOrEqual(t, x, barLeft)
			require.LessOrEqual(t, x, barRight)
			require.Greater(t, to-from, 2.0)
		})
	}
}

func TestTheBarGrowsWithTheReading(t *testing.T) {
	last := -1.0
	for v := 90.0; v < 210; v += 5 {
		x, _, _ := place(t, LimitBar(verdict(100, 200, v, 1)))
		require.Greater(t, x, last)
		last = x
	}
}

func TestARatioStandsAroundZero(t *testing.T) {
	v := spec.Verdict{Outcome: spec.InSpec, Value: 0, Std: 0.02, HasValue: true, HasLimit: true,
		Limit: spec.Limit{Ratio: true, Low: math.Inf(-1), High: 0.1, Unit: quantity.Unit{Name: "%", Factor: 0.01}}}
	x, from, to := place(t, LimitBar(v))
	require.InDelta(t, (from+to)/2, x, 0.01)
}
