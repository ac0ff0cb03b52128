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

func repeated(t *testing.T, readings ...meter.Measurement) meter.Repeats {
	t.Helper()
	got, ok := meter.Repeat(readings)
	require.True(t, ok)
	assert.Equal(t, len(readings), got.Count)
	return got
}

func ohms(t *testing.T, texts ...string) []meter.Measurement {
	t.Helper()
	zero := cheapOhms(t, "0.3", nil, true)
	readings := make([]meter.Measurement, len(texts))
	for i, text := range texts {
		readings[i] = cheapOhms(t, text, &zero, false)
	}
	return readings
}

// Five readings, worked by hand: mean 0.82 above the lead zero, scatter
// √(0.028/4) = 0.0837; t(4) = 2.776 over 1.960 is 1.4165. One reading's own
// doubt, √(0.01/12 + 0.0025/3) = 0.0408, is half of the scatter and so all seen in it.
func TestFiveReadings(t *testing.T) {
	got := repeated(t, ohms(t, "1.1", "1.2", "1.0", "1.1", "1.2")...)
	assert.InDelta(t, 0.82, got.Value, 1e-12)
	assert.InEpsilon(t, 0.08367, got.Scatter, 1e-4)
	assert.InEpsilon(t, 1.4165*0.08367/math.Sqrt(5), got.TypeA, 1e-4)
	assert.InDelta(t, 0.2, got.Spread, 1e-12)
	assert.InEpsilon(t, got.TypeA, got.Own, 1e-9)
	// Shared: 0.8 % of at most 0.9, the zero's contact 0.05/√3, its rounding
	// 0.1/√12 and, as roundings are added, twice their product.
	shared := math.Sqrt(sq(0.0072)/3 + 0.0025/3 + 3*0.01/12)
	assert.InEpsilon(t, math.Hypot(shared, got.TypeA), got.Std, 1e-6)
	assert.Equal(t, -1, got.Retake)
	assert.False(t, got.Few)
	assert.False(t, got.Wanders)
	assert.True(t, got.Zeroed)
	assert.Equal(t, "200 Ω", got.Range.Label)
}

func TestOneReadingIsItself(t *testing.T) {
	one := ohms(t, "1.1")
	got := repeated(t, one...)
	assert.Equal(t, one[0], got.Measurement)
	assert.True(t, got.Few)
	assert.Equal(t, -1, got.Retake)
	assert.False(t, got.Wanders)
	_, ok := meter.Repeat(nil)
	assert.False(t, ok)
}

// A display at rest rounds the same way each time: nothing is averaged away.
func TestADisplayAtRestGainsNothing(t *testing.T) {
	one := ohms(t, "1.1")[0]
	for n := 2; n < 12; n++ {
		readings := make([]meter.Measurement, n)
		for i := range readings {
			readings[i] = one
		}
		got := repeated(t, readings...)
		assert.InEpsilon(t, one.Own, got.Own, 1e-12)
		assert.InEpsilon(t, one.Std, got.Std, 1e-9)
		assert.InDelta(t, 0, got.TypeA, 1e-12)
	}
}

func TestSmallSample(t *testing.T) {
	for n, want := range map[int]float64{2: 6.483, 3: 2.195, 4: 1.624, 5: 1.417, 10: 1.154, 20: 1.068} {
		assert.InEpsilon(t, want, meter.SmallSample(n), 1e-3, "%d readings; recomputed from Student's t", n)
	}
	assert.True(t, math.IsInf(meter.SmallSample(1), 1))
}

// noisy are readings of a meter with the accuracy given, in steps of 1.
func noisy(random *rand.Rand, n int, truth, sigma float64, a meter.Accuracy) []meter.Measurement {
	m := meter.Meter{InputDC: quantity.Ohm(math.Inf(1))}
	r := meter.Range{Label: "2 V", Full: 1999, Step: 1, Accuracy: a}
	readings := make([]meter.Measurement, n)
	for i := range readings {
		shown := quantity.Typed{Value: math.Round(truth + sigma*random.NormFloat64()), Step: 1, Unit: quantity.Volts}
		readings[i] = m.Measure(meter.VoltsDC, r, shown, meter.Conditions{})
	}
	return readings
}

// Whatever is repeated, and how often: gain and offset stay.
func TestRepeatsNeverBeatTheSharedDoubt(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for _, a := range []meter.Accuracy{{Percent: 0.5, Digits: 2}, {Percent: 3, Digits: 5}, {Percent: 0.1, Digits: 0}, {}} {
		for _, sigma := range []float64{0, 0.3, 1, 5, 60} {
			for _, n := range []int{2, 3, 5, 20, 400} {
				readings := noisy(random, n, 1000.3, sigma, a)
				got := repeated(t, readings...)
				one := readings[0]
				for _, m := range readings {
					require.GreaterOrEqual(t, got.Std, math.Hypot(m.Gain*m.Value, m.Shared), "%+v, σ %v, n %d", a, sigma, n)
					require.GreaterOrEqual(t, got.Gain, m.Gain)
					require.GreaterOrEqual(t, got.Shared, m.Shared)
				}
				seen := got.TypeA
				if !got.Wanders {
					seen = min(seen, got.Spread/2+one.Own)
				}
				require.GreaterOrEqual(t, got.Std, seen-1e-12)
				require.GreaterOrEqual(t, got.Own, seen-1e-12)
				if one.Std > one.Own { // an accuracy that holds its own resolution
					require.GreaterOrEqual(t, sq(got.Std), sq(one.Std)-sq(one.Own)-1e-9)
				}
			}
		}
	}
}

// The doubt of the mean covers the truth, for a meter that is exact but for
// noise and rounding. Fixed seed.
func TestDoubtCoversRepeatedReadings(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 22))
	for _, sigma := range []float64{0, 0.2, 0.5, 1, 3, 20} {
		for _, n := range []int{2, 3, 5, 10, 20} {
			inside, sets := 0, 4000
			for range sets {
				truth := 1000 + random.Float64()
				got := repeated(t, noisy(random, n, truth, sigma, meter.Accuracy{})...)
				if math.Abs(got.Value-truth) <= 2*got.Own {
					inside++
				}
			}
			share := float64(inside) / float64(sets)
			least := 0.945
			if n == 2 {
				least = 0.8 // two that agree by chance are taken at their word
			}
			assert.Greater(t, share, least, "σ %v, %d readings", sigma, n)
			t.Logf("σ %4.1f steps, %2d readings: %.1f %% within twice the doubt", sigma, n, 100*share)
		}
	}
}

func TestMoreReadingsOfTheSameScatterAreSurer(t *testing.T) {
	texts := []string{"1.1", "1.2"}
	last := math.Inf(1)
	for range 5 {
		got := repeated(t, ohms(t, texts...)...)
		assert.Less(t, got.Own, last)
		last = got.Own
		texts = append(texts, "1.1", "1.2")
	}
}

func TestAWanderingReadingGetsItsSpread(t *testing.T) {
	texts := []string{"20.0", "21.4", "20.7", "19.9", "21.1", "20.4", "19.5", "21.5", "20.2", "20.8", "20.1", "21.3"}
	got := repeated(t, ohms(t, texts...)...)
	assert.True(t, got.Wanders)
	assert.InDelta(t, 2.0, got.Spread, 1e-9)
	assert.InEpsilon(t, 1/math.Sqrt(3), got.Own, 1e-9, "half the spread, rectangular: the cause is not known to average out")
	assert.Greater(t, got.Own, 2*got.TypeA)
	calm := repeated(t, ohms(t, "20.0", "20.1", "20.2", "20.1")...)
	assert.False(t, calm.Wanders)

	random := rand.New(rand.NewPCG(1, 2))
	wandering, sets := 0, 2000
	for range sets { // scatter as large as the meter's own doubt is no wandering
		if repeated(t, noisy(random, 20, 1000+random.Float64(), 1/math.Sqrt(12), meter.Accuracy{})...).Wanders {
			wandering++
		}
	}
	assert.Less(t, float64(wandering)/float64(sets), 0.01)
	t.Logf("%.1f %% of calm sets wander", 100*float64(wandering)/float64(sets))
}

func TestAnOutlierIsAskedForAgainAndKept(t *testing.T) {
	got := repeated(t, ohms(t, "1.1", "1.1", "1.9", "1.2", "1.1")...)
	assert.Equal(t, 2, got.Retake)
	assert.True(t, got.Wanders)
	assert.InDelta(t, 1.28-0.3, got.Value, 1e-9, "it stays in the mean until it is taken again")
	assert.Greater(t, got.Own, 0.2)
	assert.Equal(t, -1, repeated(t, ohms(t, "1.1", "1.1", "1.1", "1.2", "1.1")...).Retake)
}

func TestRepeatsScale(t *testing.T) {
	readings := ohms(t, "1.1", "1.4", "1.0", "1.1", "1.2")
	one := repeated(t, readings...)
	for i := range readings {
		m := &readings[i]
		m.Value, m.Std, m.Shared, m.Own = m.Value*-1e3, m.Std*1e3, m.Shared*1e3, m.Own*1e3
	}
	got := repeated(t, readings...)
	assert.InEpsilon(t, -1e3*one.Value, got.Value, 1e-9)
	for _, pair := range [][2]float64{{one.Std, got.Std}, {one.Own, got.Own}, {one.TypeA, got.TypeA}, {one.Spread, got.Spread}, {one.Scatter, got.Scatter}} {
		assert.InEpsilon(t, 1e3*pair[0], pair[1], 1e-9)
	}
	assert.Equal(t, []any{one.Wanders, one.Retake, one.Few}, []any{got.Wanders, got.Retake, got.Few})
	readings[0], readings[4] = readings[4], readings[0]
	assert.InEpsilon(t, got.Std, repeated(t, readings...).Std, 1e-12, "the order does not matter")
}

func TestRepeatsWithoutNumbers(t *testing.T) {
	open := cheapOhms(t, "OL", nil, false)
	got := repeated(t, open, open)
	assert.Equal(t, quantity.OverRange, got.State)
	assert.Zero(t, got.Std)
	got = repeated(t, ohms(t, "1.1", "OL", "1.1")...)
	assert.Equal(t, quantity.Unsettled, got.State, "now open, now closed: a broken strand")
	assert.Zero(t, got.Value)
	assert.Equal(t, -1, got.Retake)
}

func TestRepeatsAcrossRanges(t *testing.T) {
	readings := append(ohms(t, "199.8"), ohms(t, "201")...)
	got := repeated(t, readings...)
	assert.Equal(t, "2 kΩ", got.Range.Label)
	assert.InDelta(t, readings[1].Gain, got.Gain, 1e-12)
	assert.InDelta(t, readings[1].Shared, got.Shared, 1e-12, "the coarser range's offset")
	assert.False(t, got.Zeroed, "the lead zero suits only one of them")
	assert.GreaterOrEqual(t, got.Std, readings[1].Shared)

	calm := ohms(t, "1.1", "1.1")
	calm[1].OffAC = true
	assert.True(t, repeated(t, calm...).OffAC)
}
