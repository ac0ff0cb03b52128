package quantity_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/engine/quantity"
)

var (
	usual  = quantity.Chosen{}
	inches = quantity.Chosen{Thousandths: true, Fahrenheit: true}
)

// Exact by definition: 1 in = 25.4 mm (international inch, 1959), and
// F = C·9/5 + 32 (fixed points of the scale). The figures are worked out by hand.
func TestUnitsByDefinition(t *testing.T) {
	for _, c := range []struct {
		text    string
		kind    quantity.Kind
		in      quantity.Unit
		si      float64
		inUsual string
		inOther string
	}{
		{"1.00 in", quantity.Length, quantity.Millis, 25.4e-3, "25.4 mm", "1000 thou"},
		{"12 thou", quantity.Length, quantity.Millis, 0.3048e-3, "0.30 mm", "12 thou"},
		{"12 thou", quantity.Length, quantity.Thous, 0.3048e-3, "0.30 mm", "12 thou"},
		{"0.012 in", quantity.Length, quantity.Millis, 0.3048e-3, "0.30 mm", "12 thou"},
		{`0.012"`, quantity.Length, quantity.Millis, 0.3048e-3, "0.30 mm", "12 thou"},
		{"0.0125 in", quantity.Length, quantity.Millis, 0.3175e-3, "0.318 mm", "12.5 thou"},
		{"0.30 mm", quantity.Length, quantity.Thous, 0.3e-3, "0.30 mm", "11.8 thou"},
		{"300 µm", quantity.Length, quantity.Thous, 0.3e-3, "0.300 mm", "11.81 thou"},
		{"12", quantity.Length, quantity.Thous, 0.3048e-3, "0.30 mm", "12 thou"},
		{"0,3", quantity.Length, quantity.Millis, 0.3e-3, "0.3 mm", "12 thou"},
		{"0 °C", quantity.Temperature, quantity.DegreesF, 0, "0 °C", "32 °F"},
		{"212 F", quantity.Temperature, quantity.DegreesC, 100, "100.0 °C", "212 °F"},
		{"80 F", quantity.Temperature, quantity.DegreesC, 240.0 / 9, "26.7 °C", "80 °F"},
		{"80", quantity.Temperature, quantity.DegreesF, 240.0 / 9, "26.7 °C", "80 °F"},
		{"-40 deg F", quantity.Temperature, quantity.DegreesC, -40, "-40.0 °C", "-40 °F"},
		{"98.6℉", quantity.Temperature, quantity.DegreesC, 37, "37.00 °C", "98.6 °F"},
		{"20 ºC", quantity.Temperature, quantity.DegreesF, 20, "20 °C", "68 °F"},
	} {
		t.Run(fmt.Sprint(c.text, " in ", c.in.Name), func(t *testing.T) {
			got, err := quantity.Parse(c.kind, c.text, c.in)
			require.NoError(t, err)
			require.InDelta(t, c.si, got.Value, 1e-12)
			require.Equal(t, c.inUsual, usual.Show(got).String())
			require.Equal(t, c.inOther, inches.Show(got).String())
		})
	}
}

// What is printed in one unit and read again, whatever unit is the default then,
// is the same value to half of the last digit.
func TestReadingsSurviveBothUnits(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for range 4000 {
		for _, k := range []quantity.Kind{quantity.Length, quantity.Temperature} {
			si := r.Float64() * 3e-3
			if k == quantity.Temperature {
				si = r.Float64()*340 - 40
			}
			for _, from := range quantity.Units(k) {
				decimals := r.IntN(4)
				text := quantity.Decimal(from.In(si), decimals) + " " + from.Name
				first, err := quantity.Parse(k, text, from)
				require.NoError(t, err, text)
				require.InDelta(t, si, first.Value, first.Step/2*(1+1e-9), text)
				for _, c := range []quantity.Chosen{usual, inches} {
					shown := c.Show(first)
					require.Equal(t, first.Value, shown.Value)
					for _, whatever := range quantity.Units(k) {
						again, err := quantity.Parse(k, shown.String(), whatever)
						require.NoError(t, err, shown.String())
						half := math.Pow(10, -float64(shown.Decimals())) * shown.Unit.Factor / 2
						require.InDelta(t, first.Value, again.Value, half*(1+1e-6), "%s as %s", text, shown)
						require.LessOrEqual(t, half*2, math.Max(first.Step, shown.Unit.Factor)*(1+1e-6), "%s as %s is coarser than it was typed", text, shown)
					}
				}
			}
		}
	}
}

func TestShowLeavesWhatHasNoChoice(t *testing.T) {
	ohms, err := quantity.Parse(quantity.Resistance, "1.2k", quantity.Ohms)
	require.NoError(t, err)
	require.Equal(t, ohms, inches.Show(ohms))
	open := quantity.Typed{Kind: quantity.Length, State: quantity.OverRange, Unit: quantity.Millis}
	require.Equal(t, open, inches.Show(open))
	require.Equal(t, quantity.Units(quantity.Resistance), inches.Units(quantity.Resistance))
	require.Equal(t, quantity.KiloOhms, inches.UnitFor(quantity.Resistance, 2000))
}

func TestTheChosenUnitIsOfferedFirst(t *testing.T) {
	for k, want := range map[quantity.Kind][2]string{quantity.Length: {"mm", "thou"}, quantity.Temperature: {"°C", "°F"}} {
		for i, c := range []quantity.Chosen{usual, inches} {
			offered := c.Units(k)
			require.Equal(t, want[i], offered[0].Name)
			require.ElementsMatch(t, quantity.Units(k), offered)
			require.Equal(t, want[i], c.UnitFor(k, 0.1).Name)
		}
	}
}

// A difference has no zero point: 5 K are 9 °F, and not 41.
func TestDifferences(t *testing.T) {
	require.InDelta(t, 9, quantity.DegreesF.Difference().In(5), 1e-12)
	require.InDelta(t, 5, quantity.DegreesC.Difference().In(5), 1e-12)
	require.InDelta(t, 41, quantity.DegreesF.In(5), 1e-9)
}

func TestFigureOfALimit(t *testing.T) {
	for _, c := range []struct {
		si    float64
		in    quantity.Unit
		given quantity.Unit
		want  float64
	}{
		{0.3e-3, quantity.Millis, quantity.Millis, 0.3},
		{0.3e-3, quantity.Thous, quantity.Millis, 11.8},
		{1.0e-3, quantity.Thous, quantity.Millis, 39.4},
		{0.3048e-3, quantity.Thous, quantity.Thous, 12},
		{180, quantity.DegreesF, quantity.DegreesC, 356},
		{0, quantity.DegreesF, quantity.DegreesC, 32},
		{-160.0 / 9, quantity.DegreesF, quantity.DegreesC, 0},
		{1234.5, quantity.Ohms, quantity.Ohms, 1234.5},
	} {
		require.InDelta(t, c.want, c.in.Figure(c.si, c.given), 1e-9, "%v in %s", c.si, c.in.Name)
	}
	require.True(t, math.IsInf(quantity.Thous.Figure(math.Inf(1), quantity.Millis), 1))
}
