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

// volts is a reading without doubt.
func volts(v float64) meter.Measurement { return meter.Measurement{Value: v} }

// bounds are fair for a home-made adapter on a coil known by its ohms.
func bounds() meter.PeakHold {
	return meter.PeakHold{Capacitance: 2e-8, Meter: 1e5, Source: 100, Width: 2e-5, Period: 1e-3, Drop: meter.DropBound}
}

func TestThePeakComesBack(t *testing.T) {
	for _, p := range adapters(3, 3000) {
		for _, peak := range []quantity.Volt{3, 200, 400} {
			got, ok := p.Peak(volts(float64(p.Holds(peak).Mean)), meter.PeakHold{})
			require.True(t, ok)
			require.InEpsilon(t, float64(peak), float64(got.Value), 1e-9, "%+v", p)
			require.InDelta(t, float64(got.Value), float64(got.Low), 1e-9, "nothing unknown, no bounds")
			require.InDelta(t, float64(got.Value), float64(got.High), 1e-9)
		}
	}
}

func TestPeakScales(t *testing.T) {
	p := ordinary()
	p.Drop = 0
	within := bounds()
	within.Drop = 0
	small, _ := p.Peak(meter.Measurement{Value: 30, Std: 0.3}, within)
	large, _ := p.Peak(meter.Measurement{Value: 300, Std: 3}, within)
	assert.InEpsilon(t, 10*float64(small.Value), float64(large.Value), 1e-9)
	assert.InEpsilon(t, 10*float64(small.Std), float64(large.Std), 1e-6)
	assert.InEpsilon(t, 10*float64(small.High), float64(large.High), 1e-9)
}

// The parts of the doubt, each alone against a difference taken by hand.
func TestEachDoubtOfThePeak(t *testing.T) {
	p := ordinary()
	reading := float64(p.Holds(200).Mean)
	bare, _ := p.Peak(volts(reading), meter.PeakHold{})
	for what, c := range map[string]struct {
		within meter.PeakHold
		moved  meter.PeakHold
	}{
		"capacitor": {meter.PeakHold{Capacitance: 1e-8}, changed(p, func(p *meter.PeakHold) { p.Capacitance -= 1e-10 })},
		"meter":     {meter.PeakHold{Meter: 1e5}, changed(p, func(p *meter.PeakHold) { p.Meter -= 1e3 })},
		"source":    {meter.PeakHold{Source: 100}, changed(p, func(p *meter.PeakHold) { p.Source++ })},
		"width":     {meter.PeakHold{Width: 1e-5}, changed(p, func(p *meter.PeakHold) { p.Width -= 1e-7 })},
		"period":    {meter.PeakHold{Period: 1e-3}, changed(p, func(p *meter.PeakHold) { p.Period += 1e-5 })},
		"drop":      {meter.PeakHold{Drop: 0.2}, changed(p, func(p *meter.PeakHold) { p.Drop += 0.002 })},
	} {
		got, ok := p.Peak(volts(reading), c.within)
		require.True(t, ok)
		moved, _ := c.moved.Peak(volts(reading), meter.PeakHold{})
		want := 100 * float64(moved.Value-bare.Value) / math.Sqrt(3)
		own := math.Sqrt(sq(float64(got.Std)) - sq(float64(bare.Std)))
		assert.InEpsilon(t, want, own, 0.03, what)
		assert.Greater(t, got.High, got.Value, what)
		assert.Less(t, got.Low, got.Value, what)
	}
	// A reading's own doubt grows as the reading does; what is left out of the
	// model is 0.5 % and the display's wander 3.9 V · 20 ms / (8 · 100 ms).
	wander := 3.9166 * 0.02 / 0.8
	want := math.Sqrt((sq(0.005*reading)+sq(wander))/3) / p.Share()
	assert.InEpsilon(t, want, float64(bare.Std), 1e-3)
	doubted, _ := p.Peak(meter.Measurement{Value: reading, Std: 2}, meter.PeakHold{})
	assert.InEpsilon(t, math.Hypot(want, 2/p.Share()), float64(doubted.Std), 1e-3)
}

func TestWhenThePeakIsNotToBeTrusted(t *testing.T) {
	weak := changed(ordinary(), func(p *meter.PeakHold) { p.Meter, p.Period = 1e6, 0.1 })
	unknown := bounds()
	unknown.Width = 2e-4 // may be no pulse at all
	for _, c := range []struct {
		name         string
		p, within    meter.PeakHold
		reading      float64
		droops, open bool
		diode, slow  bool
	}{
		{"ordinary", ordinary(), bounds(), 190, false, false, false, false},
		{"1 MΩ at 10 a second shows 58 %", weak, meter.PeakHold{Capacitance: 1e-8}, 115, true, false, false, false},
		{"1 MΩ at 10 a second, source and width guessed", weak, meter.PeakHold{Source: 250, Width: 5e-5}, 115, true, true, false, false},
		{"nothing known of the width", ordinary(), unknown, 190, false, true, false, false},
		{"a pickup's 3 V", ordinary(), bounds(), 2.4, false, false, true, false},
		{"one pulse in 0.2 s", changed(ordinary(), func(p *meter.PeakHold) { p.Period, p.Capacitance = 0.2, 1e-6 }), bounds(), 190, false, false, false, true},
	} {
		got, ok := c.p.Peak(volts(c.reading), c.within)
		require.True(t, ok, c.name)
		assert.Equal(t, [4]bool{c.droops, c.open, c.diode, c.slow}, [4]bool{got.Droops, got.Vague, got.Diode, got.Slow}, "%s: %+v", c.name, got)
		assert.Equal(t, c.name == "ordinary", got.Trusted(), c.name)
	}
	open, _ := ordinary().Peak(volts(190), unknown)
	assert.True(t, math.IsInf(float64(open.High), 1), "with no width there may be any peak")
}

func TestNoReadingNoPeak(t *testing.T) {
	for what, reading := range map[string]meter.Measurement{
		"over-range": {State: quantity.OverRange}, "restless": {State: quantity.Unsettled, Value: 190},
		"zero": {}, "leads swapped": {Value: -12}, "NaN": {Value: math.NaN()},
	} {
		got, ok := ordinary().Peak(reading, bounds())
		assert.False(t, ok, what)
		assert.Zero(t, got, what)
	}
}

// Simulated adapters that differ from what is stated, anywhere in their bounds:
// twice the stated doubt must cover 95 % of them, and Low to High all.
func TestDoubtCoversSimulatedAdapters(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	either := func(half float64) float64 { return half * (2*random.Float64() - 1) }
	for _, p := range []meter.PeakHold{
		ordinary(),
		changed(ordinary(), func(p *meter.PeakHold) { p.Meter = 1e6 }),
		changed(ordinary(), func(p *meter.PeakHold) { p.Meter, p.Capacitance = 1e6, 1e-6 }),
	} {
		inside, n, w := 0, 2000, bounds()
		w.Meter = p.Meter / 100
		w.Capacitance = p.Capacitance / 5
		for range n {
			actual := p
			actual.Capacitance += meter.Farad(either(float64(w.Capacitance)))
			actual.Meter += quantity.Ohm(either(float64(w.Meter)))
			actual.Source += quantity.Ohm(either(float64(w.Source)))
			actual.Width += meter.Second(either(float64(w.Width)))
			actual.Period += meter.Second(either(float64(w.Period)))
			actual.Drop += quantity.Volt(either(float64(w.Drop)))
			exact := float64(actual.Holds(200).Mean)
			off := 0.5 * random.NormFloat64()
			exactly, ok := p.Peak(volts(exact), w)
			require.True(t, ok)
			require.LessOrEqual(t, float64(exactly.Low), 200.0+1e-9)
			require.GreaterOrEqual(t, float64(exactly.High), 200.0-1e-9)
			got, _ := p.Peak(meter.Measurement{Value: exact + off, Std: 0.5}, w)
			if math.Abs(float64(got.Value)-200) <= 2*float64(got.Std) {
				inside++
			}
		}
		share := float64(inside) / float64(n)
		require.Greater(t, share, 0.95, "%+v", p)
		t.Logf("%.1f %% within twice the doubt", 100*share)
	}
}
