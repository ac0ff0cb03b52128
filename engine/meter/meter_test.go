package meter_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

type position struct {
	label      string
	full, step float64
	unit       string
	percent    float64
	digits     float64
}

// Ranges of a dial follow from the counts; counts and accuracies are common
// practice, no source.
func TestBundledMetersHaveTheRangesOfTheirKind(t *testing.T) {
	for id, functions := range map[string]map[meter.Function][]position{
		"cheap": {
			meter.Ohms: {{"200 Ω", 199.9, 0.1, "Ω", 0.8, 5}, {"2 kΩ", 1999, 1, "Ω", 0.8, 5}, {"20 kΩ", 19990, 10, "kΩ", 0.8, 5},
				{"200 kΩ", 199900, 100, "kΩ", 0.8, 5}, {"2 MΩ", 1999000, 1000, "MΩ", 1, 5}},
			meter.VoltsDC: {{"200 mV", 0.1999, 0.0001, "mV", 0.5, 2}, {"2 V", 1.999, 0.001, "V", 0.5, 2}, {"20 V", 19.99, 0.01, "V", 0.5, 2}, {"200 V", 199.9, 0.1, "V", 0.5, 2}, {"600 V", 600, 1, "V", 1, 2}},
			meter.VoltsAC: {{"200 V", 199.9, 0.1, "V", 1.2, 10}, {"600 V", 600, 1, "V", 1.2, 10}},
			meter.AmpsDC:  {{"10 A", 10, 0.01, "A", 3, 5}},
			meter.Diode:   {{"diode", 1.999, 0.001, "mV", 3, 5}},
		},
		"auto4000": {
			meter.Ohms: {{"400 Ω", 399.9, 0.1, "Ω", 0.8, 3}, {"4 kΩ", 3999, 1, "kΩ", 0.8, 3}, {"40 kΩ", 39990, 10, "kΩ", 0.8, 3},
				{"400 kΩ", 399900, 100, "kΩ", 0.8, 3}, {"4 MΩ", 3999000, 1000, "MΩ", 0.8, 3}, {"40 MΩ", 39990000, 10000, "MΩ", 0.8, 3}},
			meter.VoltsDC: {{"400 mV", 0.3999, 0.0001, "mV", 1, 3}, {"4 V", 3.999, 0.001, "V", 1, 3}, {"40 V", 39.99, 0.01, "V", 1, 3}, {"400 V", 399.9, 0.1, "V", 1, 3}},
			meter.VoltsAC: {{"4 V", 3.999, 0.001, "V", 1, 5}, {"40 V", 39.99, 0.01, "V", 1, 5}, {"400 V", 399.9, 0.1, "V", 1, 5}},
			meter.AmpsDC:  {{"10 A", 10, 0.01, "A", 2, 5}},
			meter.Diode:   {{"diode", 2, 0.001, "V", 1.5, 5}},
		},
		"auto6000": {
			meter.Ohms: {{"600 Ω", 599.9, 0.1, "Ω", 0.5, 3}, {"6 kΩ", 5999, 1, "kΩ", 0.5, 3}, {"60 kΩ", 59990, 10, "kΩ", 0.5, 3},
				{"600 kΩ", 599900, 100, "kΩ", 0.5, 3}, {"6 MΩ", 5999000, 1000, "MΩ", 0.5, 3}, {"60 MΩ", 59990000, 10000, "MΩ", 0.5, 3}},
			meter.VoltsDC: {{"600 mV", 0.5999, 0.0001, "mV", 0.5, 2}, {"6 V", 5.999, 0.001, "V", 0.5, 2}, {"60 V", 59.99, 0.01, "V", 0.5, 2}, {"600 V", 599.9, 0.1, "V", 0.5, 2}},
		},
	} {
		m, ok := meter.ByID(id)
		require.True(t, ok)
		for f, want := range functions {
			require.Len(t, m.Ranges[f], len(want), "%s %s", id, f.Kind())
			for i, r := range m.Ranges[f] {
				w := want[i]
				assert.Equal(t, w.label, r.Label)
				assert.Equal(t, w.unit, r.Unit.Name, "%s %s", id, w.label)
				assert.InEpsilon(t, w.full, r.Full, 1e-12, "%s %s", id, w.label)
				assert.InEpsilon(t, w.step, r.Step, 1e-12, "%s %s", id, w.label)
				assert.Equal(t, meter.Accuracy{Percent: w.percent, Digits: w.digits}, r.Accuracy, "%s %s", id, w.label)
			}
		}
	}
}

func TestBundledMetersAreWhole(t *testing.T) {
	ids := map[string]bool{}
	for _, m := range meter.Bundled() {
		assert.False(t, ids[m.ID], "%s stands twice", m.ID)
		ids[m.ID] = true
		assert.Positive(t, m.InputAC)
		assert.GreaterOrEqual(t, m.InputDC, m.InputAC)
		assert.Less(t, m.Leads.Low, m.Leads.High)
		assert.Positive(t, m.Leads.Contact)
		assert.Less(t, m.Band.Low, m.Band.High)
		for _, f := range meter.Functions() {
			require.NotEmpty(t, m.Ranges[f], "%s %s", m.ID, f.Kind())
			below := 0.0
			for _, r := range m.Ranges[f] {
				assert.Greater(t, r.Full, below, "ranges rise")
				assert.LessOrEqual(t, r.Full, r.Nominal)
				assert.LessOrEqual(t, math.Round(r.Full/r.Step), float64(m.Counts), "%s %s", m.ID, r.Label)
				below = r.Full
			}
		}
	}
	assert.Equal(t, "cheap", meter.Bundled()[0].ID, "the default comes first")
	_, ok := meter.ByID("golden")
	assert.False(t, ok)
}

func TestRangesAreChosenByWhatTheyShow(t *testing.T) {
	m := meter.Cheap()
	for expected, label := range map[float64]string{0: "200 Ω", 199.9: "200 Ω", 200: "2 kΩ", 1e3: "2 kΩ", 1.9e6: "2 MΩ", 5e6: "2 MΩ"} {
		r, ok := m.RangeFor(meter.Ohms, expected)
		assert.True(t, ok)
		assert.Equal(t, label, r.Label, "%v", expected)
	}
	top, ok := m.Highest(meter.VoltsAC)
	assert.True(t, ok)
	assert.Equal(t, "600 V", top.Label)
	r, ok := m.RangeLabelled(meter.Ohms, "20 kΩ")
	assert.True(t, ok)
	assert.InDelta(t, 10, r.Step, 1e-12)
	_, ok = m.RangeLabelled(meter.Ohms, "20 V")
	assert.False(t, ok)
	_, ok = meter.Meter{}.RangeFor(meter.Ohms, 1)
	assert.False(t, ok, "a meter without the function")
}

// The digits tell which range they stood on, whatever the dial was advised to.
func TestRangeOfAReading(t *testing.T) {
	for _, c := range []struct {
		meter, dial, text, want string
	}{
		{"cheap", "200 Ω", "1.1", "200 Ω"},
		{"cheap", "200 Ω", "1", "200 Ω"},       // typed coarser than shown: the dial counts
		{"cheap", "200 Ω", "1.10", "200 Ω"},    // finer than any range
		{"cheap", "200 Ω", "199.9", "200 Ω"},   // the last digit it can show
		{"cheap", "200 Ω", "0.250 kΩ", "2 kΩ"}, // beyond the dial's range
		{"cheap", "200 Ω", "250.3", "2 kΩ"},    // beyond it, and finer than those above
		{"cheap", "2 kΩ", "144.7", "200 Ω"},    // finer than the dial's last place
		{"cheap", "2 kΩ", "145", "2 kΩ"},       //
		{"cheap", "200 Ω", "5 MΩ", "2 MΩ"},     // beyond all
		{"cheap", "200 Ω", "OL", "200 Ω"},      // over-range on the dial's range
		{"cheap", "2 MΩ", "won't settle", "2 MΩ"},
		{"auto4000", "4 kΩ", "144.7", "400 Ω"},
		{"auto4000", "40 kΩ", "1.23 kΩ", "4 kΩ"}, // picks the lowest range that fits
		{"auto4000", "400 Ω", "1.234 kΩ", "4 kΩ"},
		{"auto4000", "400 Ω", "0.55", "400 Ω"},
		{"auto4000", "400 Ω", "OL", "40 MΩ"}, // over-range means beyond its highest
		{"auto4000", "400 Ω", "won't settle", "400 Ω"},
		{"auto6000", "600 Ω", "500.1", "600 Ω"},
	} {
		m, _ := meter.ByID(c.meter)
		dial, ok := m.RangeLabelled(meter.Ohms, c.dial)
		require.True(t, ok)
		assert.Equal(t, c.want, m.RangeOf(meter.Ohms, dial, typed(t, quantity.Resistance, c.text)).Label, "%+v", c)
	}
}

func typed(t *testing.T, k quantity.Kind, text string) quantity.Typed {
	t.Helper()
	got, err := quantity.Parse(k, text, quantity.Units(k)[0])
	require.NoError(t, err)
	return got
}

// Millivolts are typed as they stand on the display, or in volts.
func TestRangeOfAFewMillivolts(t *testing.T) {
	for _, c := range []struct {
		meter, dial, text, unit, want string
	}{
		{"cheap", "200 mV", "180.0", "mV", "200 mV"},
		{"cheap", "200 mV", "199.9", "mV", "200 mV"}, // the last it can show
		{"cheap", "200 mV", "-0.3", "mV", "200 mV"},
		{"cheap", "200 mV", "0.18", "V", "200 mV"},    // typed coarser than shown: the dial counts
		{"cheap", "200 mV", "0.1800", "V", "200 mV"},  //
		{"cheap", "200 mV", "0.250", "V", "2 V"},      // beyond the dial's range
		{"cheap", "200 mV", "12.65", "V", "20 V"},     //
		{"cheap", "2 V", "0.180", "V", "2 V"},         //
		{"cheap", "2 V", "180", "mV", "2 V"},          //
		{"cheap", "2 V", "180.0", "mV", "200 mV"},     // finer than the dial's last place
		{"cheap", "20 V", "0.18", "V", "20 V"},        //
		{"cheap", "200 mV", "OL", "mV", "200 mV"},     //
		{"auto4000", "4 V", "0.180", "V", "400 mV"},   // picks the lowest range that fits
		{"auto4000", "4 V", "399.9", "mV", "400 mV"},  //
		{"auto4000", "400 mV", "0.4", "V", "4 V"},     //
		{"auto6000", "60 V", "599.9", "mV", "600 mV"}, //
		{"auto6000", "600 mV", "OL", "mV", "600 V"},   // over-range means beyond its highest
	} {
		m, _ := meter.ByID(c.meter)
		dial, ok := m.RangeLabelled(meter.VoltsDC, c.dial)
		require.True(t, ok, c.dial)
		unit, ok := quantity.UnitNamed(quantity.VoltageDC, c.unit)
		require.True(t, ok)
		got, err := quantity.Parse(quantity.VoltageDC, c.text, unit)
		require.NoError(t, err)
		assert.Equal(t, c.want, m.RangeOf(meter.VoltsDC, dial, got).Label, "%+v", c)
		if got.State == quantity.Number {
			_, shown := m.RangeShowing(meter.VoltsDC, got)
			assert.True(t, shown, "%+v", c)
		}
	}
	m := meter.Cheap()
	for expected, label := range map[float64]string{0: "200 mV", 0.15: "200 mV", 0.1999: "200 mV", 0.2: "2 V", 12: "20 V"} {
		r, _ := m.RangeFor(meter.VoltsDC, expected)
		assert.Equal(t, label, r.Label, "%v", expected)
	}
}

func TestEachVoltageFunctionHasItsInput(t *testing.T) {
	m := meter.Cheap()
	gain := func(f meter.Function) float64 {
		r, _ := m.RangeLabelled(f, "200 V")
		loaded := m.Measure(f, r, typed(t, f.Kind(), "75.0"), meter.Conditions{Source: 45e3})
		return loaded.Gain*math.Sqrt(3) - r.Accuracy.Percent/100
	}
	assert.InEpsilon(t, 45.0/450, gain(meter.VoltsAC), 1e-9)
	assert.InEpsilon(t, 45.0/1000, gain(meter.VoltsDC), 1e-9)
}

func TestWhichDetectorsAreKnown(t *testing.T) {
	assert.Nil(t, meter.Cheap().Detectors)
	assert.Nil(t, meter.Auto4000().Detectors)
	assert.Equal(t, []meter.Detector{meter.TrueRMS}, meter.Auto6000().Detectors)
}

func TestFunctionsAreFoundByTheirNames(t *testing.T) {
	for name, f := range map[string]meter.Function{"ohms": meter.Ohms, "volts-dc": meter.VoltsDC, "volts-ac": meter.VoltsAC, "amps-dc": meter.AmpsDC, "diode": meter.Diode} {
		got, ok := meter.FunctionNamed(name)
		assert.True(t, ok, name)
		assert.Equal(t, f, got)
		assert.Equal(t, name, f.String())
	}
	for _, name := range []string{"", "Ohms", "unknown function"} {
		_, ok := meter.FunctionNamed(name)
		assert.False(t, ok, name)
	}
	assert.Equal(t, "unknown function", meter.Function(9).String())
}
