package meter_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// Half widths and doubts of accuracies as data sheets give them. JCGM 100:2008,
// 4.3.7, rectangular (clause from memory); figures recomputed.
func TestAccuracyIsARectangularBound(t *testing.T) {
	for _, c := range []struct {
		f                     meter.Function
		text                  string
		percent, digits, step float64
		half, u               float64
	}{
		{meter.VoltsDC, "12.65", 0.5, 2, 0.01, 0.08325, 0.04806},
		{meter.Ohms, "0.6", 0.8, 3, 0.1, 0.3048, 0.1760},
		{meter.Ohms, "0.6", 0.8, 5, 0.1, 0.5048, 0.2914},
		{meter.Ohms, "120", 0.8, 2, 1, 2.96, 1.709},
		{meter.VoltsAC, "35.0", 1.2, 10, 0.1, 1.42, 0.820},
		{meter.VoltsDC, "180.0 mV", 0.5, 2, 0.1e-3, 1.10e-3, 0.635e-3},
		{meter.AmpsDC, "0.30", 2, 5, 0.01, 0.056, 0.0323},
	} {
		accuracy := meter.Accuracy{Percent: c.percent, Digits: c.digits}
		r := meter.Range{Full: 1e3, Step: c.step, Accuracy: accuracy}
		got := typed(t, c.f.Kind(), c.text)
		assert.InEpsilon(t, c.half, accuracy.HalfWidth(got.Value, c.step), 1e-6, c.text)
		bare := meter.Meter{InputAC: quantity.Ohm(math.Inf(1)), InputDC: quantity.Ohm(math.Inf(1))}
		m := bare.Measure(c.f, r, got, meter.Conditions{RawLeads: true})
		assert.InEpsilon(t, c.u, m.Std, 1e-3, c.text)
	}
}

func cheapOhms(t *testing.T, text string, zero *meter.Measurement, raw bool) meter.Measurement {
	t.Helper()
	m := meter.Cheap()
	got := typed(t, quantity.Resistance, text)
	dial, _ := m.RangeLabelled(meter.Ohms, "200 Ω")
	return m.Measure(meter.Ohms, m.RangeOf(meter.Ohms, dial, got), got, meter.Conditions{LeadZero: zero, RawLeads: raw})
}

func TestLeadZeroTakesTheOffsetAway(t *testing.T) {
	zero := cheapOhms(t, "0.3", nil, true)
	assert.InDelta(t, 0.3, zero.Value, 1e-12, "the leads stay in their own reading")
	with := cheapOhms(t, "1.1", &zero, false)
	without := cheapOhms(t, "1.1", nil, false)

	assert.True(t, with.Zeroed)
	assert.False(t, without.Zeroed)
	assert.InDelta(t, 0.8, with.Value, 1e-12)
	assert.InDelta(t, 1.1-0.25, without.Value, 1e-12, "the middle of the described leads")
	// Left: gain 0.8 %·0.8/√3, two contacts 0.05/√3, and the bounds of two
	// roundings added, 2·0.1/√12.
	want := math.Sqrt(sq(0.0064/math.Sqrt(3)) + 2*0.0025/3 + sq(2*0.1/math.Sqrt(12)))
	assert.InEpsilon(t, want, with.Std, 1e-9, "recomputed")
	// Left: (0.8 %·1.1 + 0.5)/√3, leads ±0.15/√3, contact 0.05/√3.
	want = math.Sqrt((sq(0.0088+0.5) + sq(0.15) + sq(0.05)) / 3)
	assert.InEpsilon(t, want, without.Std, 1e-9, "recomputed")
	assert.Greater(t, without.Std, 4*with.Std)
	assert.Greater(t, without.Shared, 4*with.Shared)
	assert.InDelta(t, with.Own, without.Own, 1e-12, "what is a reading's own, a lead zero cannot take")
	assert.InDelta(t, with.Gain, without.Gain, 1e-12, "nor the gain")
}

func sq(v float64) float64 { return v * v }

func TestTheGainStaysOnALargeReading(t *testing.T) {
	zero := cheapOhms(t, "0.3", nil, true)
	with := cheapOhms(t, "144.7", &zero, false)
	assert.Greater(t, with.Std, 0.008*144.4/math.Sqrt(3))
	assert.Less(t, with.Std, 0.008*144.4/math.Sqrt(3)*1.01)
}

func TestALeadZeroOfAnotherRangeKeepsBothOffsets(t *testing.T) {
	zero := cheapOhms(t, "0.3", nil, true)
	got := cheapOhms(t, "1.000 kΩ", &zero, false)
	raw := cheapOhms(t, "1.000 kΩ", nil, true)
	assert.Equal(t, "2 kΩ", got.Range.Label)
	assert.False(t, got.Zeroed)
	assert.InDelta(t, 999.7, got.Value, 1e-9)
	assert.InEpsilon(t, math.Hypot(raw.Std, zero.Std), got.Std, 1e-3)
}

func TestALeadZeroWithoutANumberIsNone(t *testing.T) {
	open := cheapOhms(t, "OL", nil, true)
	assert.Equal(t, cheapOhms(t, "1.1", nil, false), cheapOhms(t, "1.1", &open, false))
}

func TestACOutsideItsBandIsWider(t *testing.T) {
	m := meter.Cheap()
	got := typed(t, quantity.VoltageAC, "75.0")
	r, _ := m.RangeFor(meter.VoltsAC, 150)
	for _, c := range []struct {
		name      string
		low, high quantity.Hertz
		off       bool
	}{
		{"not known", 0, 0, false}, {"inside", 50, 60, false}, {"cranking", 5, 60, true},
		{"12 magnet poles above 4000/min", 300, 500, true}, {"at its edges", 40, 400, false},
	} {
		x := m.Measure(meter.VoltsAC, r, got, meter.Conditions{Low: c.low, High: c.high})
		assert.Equal(t, c.off, x.OffAC, c.name)
		half := 0.012*75 + 1.0
		if c.off {
			half += 0.05 * 75 // the package's own assumption
		}
		assert.InEpsilon(t, half/math.Sqrt(3), x.Std, 1e-9, c.name)
		assert.InDelta(t, 75, x.Value, 1e-12, "the sign of the error is not known: nothing is corrected")
	}
}

func TestTheInputLoadsTheSource(t *testing.T) {
	m := meter.Cheap()
	got := typed(t, quantity.VoltageAC, "75.0")
	r, _ := m.RangeFor(meter.VoltsAC, 150)
	loaded := m.Measure(meter.VoltsAC, r, got, meter.Conditions{Source: 45e3})
	assert.InEpsilon(t, (0.112*75+1)/math.Sqrt(3), loaded.Std, 1e-9, "45 kΩ into 450 kΩ: a tenth")
}

func TestSignsWithoutANumberMeasureNothing(t *testing.T) {
	for _, text := range []string{"OL", "won't settle"} {
		got := cheapOhms(t, text, nil, false)
		assert.Zero(t, got.Value)
		assert.Zero(t, got.Std)
		assert.NotEqual(t, quantity.Number, got.State)
		assert.Equal(t, "200 Ω", got.Range.Label)
	}
}

// A reading typed with fewer digits than shown may be off by half its own step.
func TestTypedCoarserIsLessSure(t *testing.T) {
	fine, coarse := cheapOhms(t, "1.0", nil, true), cheapOhms(t, "1", nil, true)
	assert.InDelta(t, 0.45/math.Sqrt(3), coarse.Std-fine.Std, 1e-12)
	assert.Greater(t, coarse.Own, fine.Own)
}

func TestGaps(t *testing.T) {
	gap := meter.MeasureGap(typed(t, quantity.Length, "0.014 in"))
	assert.InDelta(t, 355.6e-6, gap.Value, 1e-12)
	assert.InEpsilon(t, 30e-6/math.Sqrt(3), gap.Std, 1e-9, "20 µm of feel and half a step of at most 20 µm")
	leaf := meter.MeasureGap(typed(t, quantity.Length, "0.35 mm"))
	assert.InEpsilon(t, 25e-6/math.Sqrt(3), leaf.Std, 1e-9)
	assert.Zero(t, meter.MeasureGap(quantity.Typed{Kind: quantity.Length, State: quantity.Unsettled}).Std)
}

// A simulated meter whose errors are drawn from its data sheet: gain and offset
// anywhere in their bounds, rounding to its step. The model's doubt must cover
// the scatter. Recomputed, fixed seed.
func TestDoubtCoversSimulatedMeters(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	for _, truth := range []float64{0.4, 1.1, 20, 144.7} {
		for _, zeroed := range []bool{true, false} {
			inside, n := 0, 4000
			for range n {
				x := truth + 0.1*random.Float64() // anywhere between two steps of the display
				got, std := simulate(random, x, zeroed)
				if math.Abs(got-x) <= 1.96*std {
					inside++
				}
			}
			share := float64(inside) / float64(n)
			require.Greater(t, share, 0.945, "%v Ω, lead zero %v", truth, zeroed)
			t.Logf("%6.1f Ω, lead zero %v: %.1f %% within 1.96 standard uncertainties", truth, zeroed, 100*share)
		}
	}
}

func simulate(random *rand.Rand, truth float64, zeroed bool) (value, std float64) {
	m := meter.Cheap()
	r, _ := m.RangeLabelled(meter.Ohms, "200 Ω")
	either := func(half float64) float64 { return half * (2*random.Float64() - 1) }
	gain, offset := either(0.008), either(4.5*0.1)
	leads := 0.25 + either(0.15)
	show := func(x float64) quantity.Typed {
		shown := math.Round((x*(1+gain)+offset)/0.1) * 0.1
		return quantity.Typed{Value: shown, Step: 0.1, Unit: quantity.Ohms}
	}
	c := meter.Conditions{}
	if zeroed {
		zero := m.Measure(meter.Ohms, r, show(leads), meter.Conditions{RawLeads: true})
		c.LeadZero = &zero
	}
	got := m.Measure(meter.Ohms, r, show(truth+leads+either(0.05)), c)
	return got.Value, got.Std
}
