package quantity_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/quantity"
)

// What follows from the text is arithmetic; that displays and people write so is
// common practice, no source, where a standard is not named.
func TestNumbersAreReadAsTyped(t *testing.T) {
	for _, c := range []struct {
		text     string
		kind     quantity.Kind
		in       quantity.Unit
		si, step float64
		back     string
	}{
		{"144.7", quantity.Resistance, quantity.Ohms, 144.7, 0.1, "144.7 Ω"},
		{"0,5", quantity.Resistance, quantity.Ohms, 0.5, 0.1, "0.5 Ω"},
		{".5", quantity.Resistance, quantity.Ohms, 0.5, 0.1, "0.5 Ω"},
		{",5", quantity.Resistance, quantity.Ohms, 0.5, 0.1, "0.5 Ω"},
		{"0.5Ω", quantity.Resistance, quantity.Ohms, 0.5, 0.1, "0.5 Ω"},
		{"0.5\u2126", quantity.Resistance, quantity.Ohms, 0.5, 0.1, "0.5 Ω"}, // the ohm sign, not the Greek letter
		{"500 mΩ", quantity.Resistance, quantity.Ohms, 0.5, 0.001, "500 mΩ"},
		{"500 m", quantity.Resistance, quantity.Ohms, 0.5, 0.001, "500 mΩ"},
		{"1.2k", quantity.Resistance, quantity.Ohms, 1200, 100, "1.2 kΩ"},
		{"1.2 Kohm", quantity.Resistance, quantity.Ohms, 1200, 100, "1.2 kΩ"},
		{"1.20", quantity.Resistance, quantity.KiloOhms, 1200, 10, "1.20 kΩ"},
		{"2 MΩ", quantity.Resistance, quantity.Ohms, 2e6, 1e6, "2 MΩ"},
		{"2meg", quantity.Resistance, quantity.Ohms, 2e6, 1e6, "2 MΩ"},
		{"1.", quantity.Resistance, quantity.Ohms, 1, 1, "1 Ω"}, // on the way to 1.2
		{"1", quantity.Resistance, quantity.Ohms, 1, 1, "1 Ω"},
		{"1 ", quantity.Resistance, quantity.Ohms, 1, 1, "1 Ω"}, // the blank that keyboards add
		{"1. ", quantity.Resistance, quantity.Ohms, 1, 1, "1 Ω"},
		{"0.60", quantity.Resistance, quantity.Ohms, 0.6, 0.01, "0.60 Ω"},
		{"+0.6", quantity.Resistance, quantity.Ohms, 0.6, 0.1, "0.6 Ω"},
		{"-0.1", quantity.Resistance, quantity.Ohms, -0.1, 0.1, "-0.1 Ω"}, // a lead zero can read so
		{"-0.0", quantity.Resistance, quantity.Ohms, 0, 0.1, "0.0 Ω"},
		// IEC 60062, letter in the place of the point (from memory).
		{"1k2", quantity.Resistance, quantity.Ohms, 1200, 100, "1.2 kΩ"},
		{"4R7", quantity.Resistance, quantity.Ohms, 4.7, 0.1, "4.7 Ω"},
		{"2M2", quantity.Resistance, quantity.Ohms, 2.2e6, 1e5, "2.2 MΩ"},
		{"R47", quantity.Resistance, quantity.Ohms, 0.47, 0.01, "0.47 Ω"},
		// Commas and points.
		{"0,234", quantity.Resistance, quantity.Ohms, 0.234, 0.001, "0.234 Ω"},
		{"1,2345", quantity.Resistance, quantity.Ohms, 1.2345, 0.0001, "1.2345 Ω"},
		{"1234,567", quantity.Resistance, quantity.Ohms, 1234.567, 0.001, "1234.567 Ω"},
		{"1,234,567", quantity.Resistance, quantity.Ohms, 1234567, 1, "1234567 Ω"},
		{"1.234,5", quantity.Resistance, quantity.Ohms, 1234.5, 0.1, "1234.5 Ω"},
		{"1,234.5", quantity.Resistance, quantity.Ohms, 1234.5, 0.1, "1234.5 Ω"},
		{"-1,234.5", quantity.Resistance, quantity.Ohms, -1234.5, 0.1, "-1234.5 Ω"},
		{"1,234,567.8", quantity.Resistance, quantity.Ohms, 1234567.8, 0.1, "1234567.8 Ω"},
		{"1.234.567,8", quantity.Resistance, quantity.Ohms, 1234567.8, 0.1, "1234567.8 Ω"},
		// Other quantities.
		{"75 VAC", quantity.VoltageAC, quantity.Volts, 75, 1, "75 V"},
		{"75.3 V~", quantity.VoltageAC, quantity.Volts, 75.3, 0.1, "75.3 V"},
		{"180.0 mV", quantity.VoltageDC, quantity.Volts, 0.18, 1e-4, "180.0 mV"},
		{"-12.65", quantity.VoltageDC, quantity.Volts, -12.65, 0.01, "-12.65 V"},
		{"20 mA", quantity.Current, quantity.Amperes, 0.02, 1e-3, "20 mA"},
		{"1.2 kHz", quantity.Frequency, quantity.Hertzes, 1200, 100, "1.2 kHz"},
		{"3000 r/min", quantity.Speed, quantity.PerMin, 3000, 1, "3000 rpm"},
		{"0.35 mm", quantity.Length, quantity.Millis, 0.35e-3, 1e-5, "0.35 mm"},
		{"14", quantity.Length, quantity.Thous, 14 * 25.4e-6, 25.4e-6, "14 thou"},
		{"0.014 in", quantity.Length, quantity.Millis, 14 * 25.4e-6, 25.4e-6, "0.014 in"},
		{`0.014"`, quantity.Length, quantity.Millis, 14 * 25.4e-6, 25.4e-6, "0.014 in"},
		{"350 µm", quantity.Length, quantity.Millis, 350e-6, 1e-6, "350 µm"},
		{"21.5", quantity.Temperature, quantity.DegreesC, 21.5, 0.1, "21.5 °C"},
		{"-5 °C", quantity.Temperature, quantity.DegreesC, -5, 1, "-5 °C"},
		{"68 °F", quantity.Temperature, quantity.DegreesC, 20, 5.0 / 9, "68 °F"}, // the two scales' definitions
		{"-40F", quantity.Temperature, quantity.DegreesC, -40, 5.0 / 9, "-40 °F"},
	} {
		got, err := quantity.Parse(c.kind, c.text, c.in)
		require.NoError(t, err, "%q", c.text)
		assert.Equal(t, quantity.Number, got.State, "%q", c.text)
		assert.Equal(t, c.kind, got.Kind, "%q", c.text)
		assert.InDelta(t, c.si, got.Value, 1e-12+1e-14*math.Abs(c.si), "%q", c.text)
		assert.InEpsilon(t, c.step, got.Step, 1e-12, "%q", c.text)
		assert.Equal(t, c.back, got.String(), "%q", c.text)
	}
}

func TestSignsWithoutANumber(t *testing.T) {
	for state, texts := range map[quantity.State][]string{
		quantity.OverRange: {"OL", "ol", "0L", "0.L", "O.L", ".OL", "OL.", "0.OL", "-OL", "+OL", "OL MΩ", "OL M\u2126", "OL kΩ", "0.L MΩ",
			"O.L ohms", "1 .", "1   ", "  1   ", "-1  ", "1 . ", "1.  ", "1 _ _ _", "1---", "I   ", "I .", "---", "----",
			"∞", "inf", "Infinity", "open", "Open line", " OPEN ", "over", "over-range", "overload"},
		quantity.Unsettled: {"won't settle", "Won’t settle", "wont settle", "unstable", "jumps", "drifts", "wanders"},
	} {
		for _, text := range texts {
			got, err := quantity.Parse(quantity.Resistance, text, quantity.KiloOhms)
			require.NoError(t, err, "%q", text)
			assert.Equal(t, quantity.Typed{Kind: quantity.Resistance, State: state, Unit: quantity.KiloOhms}, got, "%q", text)
			again, err := quantity.Parse(quantity.Resistance, got.String(), quantity.KiloOhms)
			require.NoError(t, err)
			assert.Equal(t, got, again, "printed %q", got)
		}
	}
}

// A comma before three digits groups thousands in one half of the world and is
// the decimal point in the other. Both are offered; neither is taken.
func TestTwoMeaningsAreAskedBack(t *testing.T) {
	for _, c := range []struct {
		text, unit, first, second string
	}{
		{"1,234", "Ω", "1.234 Ω", "1234 Ω"},
		{"12,345", "Ω", "12.345 Ω", "12345 Ω"},
		{"-1,234", "Ω", "-1.234 Ω", "-1234 Ω"},
		{"1,234 kΩ", "Ω", "1.234 kΩ", "1234 kΩ"},
		{"1,234", "kΩ", "1.234 kΩ", "1234 kΩ"},
	} {
		in, ok := quantity.UnitNamed(quantity.Resistance, c.unit)
		require.True(t, ok)
		_, err := quantity.Parse(quantity.Resistance, c.text, in)
		var ask *quantity.AmbiguousError
		require.ErrorAs(t, err, &ask, c.text)
		require.Len(t, ask.Choices, 2)
		assert.Equal(t, c.first, ask.Choices[0].String())
		assert.Equal(t, c.second, ask.Choices[1].String())
		assert.ErrorContains(t, err, c.first+" or "+c.second)
		for _, choice := range ask.Choices {
			settled, err := quantity.Parse(quantity.Resistance, choice.String(), in)
			require.NoError(t, err)
			assert.Equal(t, choice, settled, "a choice settles it")
		}
	}
}

func TestWhatIsNoReadingIsRefused(t *testing.T) {
	long := strings.Repeat("9", 5000)
	for _, c := range []struct {
		kind         quantity.Kind
		text, reason string
	}{
		{quantity.Resistance, "", "is empty"},
		{quantity.Resistance, "  \t", "is empty"},
		{quantity.Resistance, ".", "is not a number"},
		{quantity.Resistance, "-", "is not a number"},
		{quantity.Resistance, "abc", "is not a number"},
		{quantity.Resistance, "kΩ", "is not a number"},
		{quantity.Resistance, "NaN", "is not a number"},
		{quantity.Resistance, "+Inf", "is not a number"},
		{quantity.Resistance, "-infinity", "is not a number"},
		{quantity.Resistance, "1.2.3", "is not a number"},
		{quantity.Resistance, "1,23,456", "is not a number"},
		{quantity.Resistance, "1234,567.8", "is not a number"},
		{quantity.Resistance, ",234.5", "is not a number"},
		{quantity.Resistance, "0,234.5", "is not a number"},
		{quantity.Resistance, "1,2.5", "is not a number"},
		{quantity.Resistance, "1.2,3.4,5", "is not a number"},
		{quantity.Resistance, "--5", "is not a number"},
		{quantity.Resistance, "1e3", "has a unit"},
		{quantity.Resistance, "0x10", "has a unit"},
		{quantity.Resistance, "1_000", "has a unit"},
		{quantity.Resistance, "1 2", "has a unit"},
		{quantity.Resistance, "5 V", "has a unit"},
		{quantity.Resistance, "5-", "has a unit"},
		{quantity.VoltageDC, "5 V~", "has a unit"},
		{quantity.VoltageDC, "5 k", "has a unit"},
		{quantity.VoltageAC, "5 Ω", "has a unit"},
		{quantity.Length, "5 cm", "has a unit"},
		{quantity.Length, "5 kΩ", "has a unit"},
		{quantity.Temperature, "20 K", "has a unit"},
		{quantity.VoltageAC, "-5", "is below zero, which no AC voltage can be"},
		{quantity.Length, "-0.3", "is below zero"},
		{quantity.Frequency, "-50", "is below zero"},
		{quantity.Speed, "-100", "is below zero"},
		{quantity.Resistance, long, "is too large"},
		{quantity.Resistance, "2000000000000", "is too large"},
		{quantity.Resistance, "9999999 MΩ", "is too large"},
		{quantity.Resistance, "0000000000012", "has more digits"},
		{quantity.Resistance, "1.0000000000", "has more decimals"},
		{quantity.Length, "OL", "is no length"},
		{quantity.Length, "won't settle", "is no length"},
		{quantity.Temperature, "open", "is no temperature"},
	} {
		_, err := quantity.Parse(c.kind, c.text, quantity.Units(c.kind)[0])
		var no *quantity.UnreadableError
		require.ErrorAs(t, err, &no, "%q", c.text)
		assert.Contains(t, no.Reason, c.reason, "%.50q", c.text)
		assert.NotEmpty(t, no.WayOut, "%.50q", c.text)
		assert.Less(t, len(err.Error()), 250, "the sentence stays short")
	}
}
