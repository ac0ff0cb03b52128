package quantity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/quantity"
)

// The rule is the package's own (one digit beyond the first of the doubt); the
// texts are worked out by hand.
func TestPrintKeepsWhatTheDoubtSupports(t *testing.T) {
	for _, c := range []struct {
		kind      quantity.Kind
		si, doubt float64
		want      string
	}{
		{quantity.Resistance, 144.7, 0.97, "144.70 Ω"},
		{quantity.Resistance, 144.7, 1.7, "144.7 Ω"},
		{quantity.Resistance, 144.7, 12, "145 Ω"},
		{quantity.Resistance, 0.6, 0.1, "0.60 Ω"},
		{quantity.Resistance, 1234, 20, "1.234 kΩ"},
		{quantity.Resistance, 999.9, 20, "1000 Ω"}, // the unit suits the value, not its rounding
		{quantity.Resistance, 1000, 20, "1.000 kΩ"},
		{quantity.Resistance, 1.9e6, 2e4, "1.900 MΩ"},
		{quantity.Resistance, 789, 2892, "800 Ω"}, // nor before the point
		{quantity.Resistance, 5.785e6, 1e9, "0 MΩ"},
		{quantity.Resistance, 144.7, math.Inf(1), "145 Ω"},
		{quantity.Resistance, -1500, 20, "-1.500 kΩ"},
		{quantity.Resistance, -0.001, 0.2, "0.00 Ω"}, // no minus on a zero
		{quantity.Resistance, 0, 0, "0 Ω"},
		{quantity.Resistance, 123.4, 0, "123 Ω"}, // without a doubt: three digits
		{quantity.Resistance, 2.345, 0, "2.35 Ω"},
		{quantity.Resistance, 12.34, -1, "12.3 Ω"},
		{quantity.Resistance, 0.012345, 0, "0.0123 Ω"},
		{quantity.VoltageAC, 75.34, 0.8, "75.34 V"},
		{quantity.VoltageAC, 1500, 20, "1500 V"},
		{quantity.Length, 0.35e-3, 17e-6, "0.350 mm"},
		{quantity.Temperature, 21.53, 5, "21.5 °C"},
	} {
		assert.Equal(t, c.want, quantity.Print(c.kind, c.si, c.doubt), "%v ± %v", c.si, c.doubt)
	}
}

func TestPrintInAGivenUnit(t *testing.T) {
	assert.Equal(t, "14.0 thou", quantity.PrintIn(quantity.Thous, 14*25.4e-6, 25.4e-6))
	assert.Equal(t, "0.0140 in", quantity.PrintIn(quantity.Inches, 14*25.4e-6, 25.4e-6))
	assert.Equal(t, "68.0 °F", quantity.PrintIn(quantity.DegreesF, 20, 1))
	assert.Equal(t, "0.60 Ω", quantity.PrintIn(quantity.Ohms, 0.6, 0.2))
}

func TestDecimalsForOddDoubts(t *testing.T) {
	for _, c := range []struct {
		doubt, value float64
		want         int
	}{
		{0.1, 1, 2}, {0.0999, 1, 3}, {1, 1, 1}, {9.9, 1, 1}, {10, 1, 0}, {1e9, 1, 0}, {1e-9, 1, 6}, {5e-324, 1, 6},
		{math.NaN(), 0, 0}, {math.Inf(1), 0, 0}, {0, math.NaN(), 0}, {0, math.Inf(1), 0}, {0, 1, 2}, {math.NaN(), 100, 0},
	} {
		assert.Equal(t, c.want, quantity.DecimalsFor(c.doubt, c.value), "%v of %v", c.doubt, c.value)
	}
}

func TestDecimalHasNoMinusOnZero(t *testing.T) {
	for _, v := range []float64{-0.001, math.Copysign(0, -1), 0, 0.001} {
		assert.Equal(t, "0.00", quantity.Decimal(v, 2))
	}
	assert.Equal(t, "-0.01", quantity.Decimal(-0.006, 2))
	assert.Equal(t, "-1", quantity.Decimal(-1, 0))
}

// The inch is 25.4 mm exactly (1959); °F by the definition of the scales.
func TestUnitsConvert(t *testing.T) {
	assert.InDelta(t, 25.4e-6, float64(quantity.FromThousandths(1)), 1e-18)
	assert.InDelta(t, 14, quantity.FromThousandths(14).Thousandths(), 1e-12)
	assert.InDelta(t, 100, quantity.DegreesF.SI(212), 1e-12)
	assert.InDelta(t, 0, quantity.DegreesF.SI(32), 1e-12)
	for k := quantity.Resistance; k <= quantity.Temperature; k++ {
		assert.NotEmpty(t, k.String())
		for _, u := range quantity.Units(k) {
			again, ok := quantity.UnitNamed(k, u.Name)
			assert.True(t, ok)
			assert.Equal(t, u, again)
			assert.InDelta(t, 7, u.In(u.SI(7)), 1e-12, u.Name)
		}
		_, ok := quantity.UnitNamed(k, "furlong")
		assert.False(t, ok)
	}
	assert.Equal(t, "unknown quantity", quantity.Kind(99).String())
	assert.Nil(t, quantity.Units(99))
}
