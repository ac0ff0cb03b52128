package spec_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

const trials = 150

// anyLimits draws limits from narrower than the meter's doubt to very wide, one
// side open at times.
func anyLimits(random *rand.Rand) spec.Limit {
	low := 150 * random.Float64()
	high := low + math.Pow(10, -1+3*random.Float64())
	switch random.IntN(4) {
	case 0:
		return ohms(low, inf)
	case 1:
		return ohms(-inf, high)
	}
	return ohms(low, high)
}

// Law: as the reading rises by steps of the display, conformance rises to one
// top and falls from there, and the outcome passes through "cannot tell".
func TestVerdictFollowsTheReading(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	m := meter.Cheap()
	r := m.Ranges[meter.Ohms][0]
	for range trials {
		l, zeroed := anyLimits(random), random.IntN(2) == 0
		var p []float64
		var outcomes []spec.Outcome
		for digits := range 2000 {
			v := spec.Judge(l, reading(m, r, float64(digits)*r.Step, zeroed), spec.AirUnknown())
			p, outcomes = append(p, v.Probability), append(outcomes, v.Outcome)
		}
		require.NoError(t, oneTop(p), "%v to %v", l.Low, l.High)
		require.NoError(t, oneStretchEach(outcomes), "%v to %v", l.Low, l.High)
	}
}

func reading(m meter.Meter, r meter.Range, value float64, zeroed bool) meter.Measurement {
	c := meter.Conditions{}
	if zeroed {
		c.LeadZero = &meter.Measurement{Value: 0, Own: 0.03, Range: r}
	}
	return m.Measure(meter.Ohms, r, quantity.Typed{Value: value, Step: r.Step, Unit: r.Unit}, c)
}

func oneTop(p []float64) error {
	falling := false
	for i := 1; i < len(p); i++ {
		switch {
		case p[i] < p[i-1]-1e-9:
			falling = true
		case falling && p[i] > p[i-1]+1e-9:
			return fmt.Errorf("conformance falls and rises again at digit %d", i)
		}
	}
	return nil
}

// oneStretchEach: out, cannot tell, in, cannot tell, out, in this order, with
// stretches left out but never "in" beside "out".
func oneStretchEach(outcomes []spec.Outcome) error {
	var stretches []spec.Outcome
	for i, o := range outcomes {
		if i == 0 || o != outcomes[i-1] {
			stretches = append(stretches, o)
		}
	}
	count := map[spec.Outcome]int{}
	for i, o := range stretches {
		count[o]++
		if i > 0 && o != spec.CannotTell && stretches[i-1] != spec.CannotTell {
			return fmt.Errorf("the outcome jumps: %v", stretches)
		}
	}
	if count[spec.InSpec] > 1 || count[spec.OutOfSpec] > 2 {
		return fmt.Errorf("the outcome comes back: %v", stretches)
	}
	return nil
}

// Law: kilo or not, the reading is the same, as long as its last place is.
func TestVerdictDoesNotDependOnTheUnit(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	m := meter.Cheap()
	for range trials {
		l, digits := anyLimits(random), random.IntN(2000)
		inOhms := parsed(t, quantity.Resistance, fmt.Sprintf("%.1f Ω", float64(digits)/10))
		inKilo := parsed(t, quantity.Resistance, fmt.Sprintf("%.4f kΩ", float64(digits)/10000))
		a, b := judged(m, l, inOhms), judged(m, l, inKilo)
		require.Equal(t, a.Outcome, b.Outcome, "%v", inOhms)
		require.Equal(t, a.Reason, b.Reason)
		require.InDelta(t, a.Probability, b.Probability, 1e-9)
	}
}

func judged(m meter.Meter, l spec.Limit, t quantity.Typed) spec.Verdict {
	r := m.RangeOf(meter.Ohms, m.Ranges[meter.Ohms][0], t)
	return spec.Judge(l, m.Measure(meter.Ohms, r, t, meter.Conditions{}), spec.AirUnknown())
}

// Laws: the order of the leads does not matter, and the one named stays the one;
// all readings and doubts times a factor leave fractions as they are.
func TestBalanceLaws(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	m := meter.Cheap()
	r := m.Ranges[meter.Ohms][0]
	for range trials {
		var readings []meter.Measurement
		for range 2 + random.IntN(2) {
			readings = append(readings, reading(m, r, math.Round(5+20*random.Float64())*0.1, random.IntN(2) == 0))
		}
		for i := range readings { // one lead zero for all, or none
			readings[i].Shared, readings[i].Zeroed = readings[0].Shared, readings[0].Zeroed
		}
		want := spec.JudgeBalance(alikeWithin10, readings)
		order := random.Perm(len(readings))
		moved, larger := make([]meter.Measurement, len(readings)), make([]meter.Measurement, len(readings))
		for to, from := range order {
			moved[to] = readings[from]
		}
		for i, x := range readings {
			x.Value, x.Own, x.Shared = 7*x.Value, 7*x.Own, 7*x.Shared
			larger[i] = x
		}
		got := spec.JudgeBalance(alikeWithin10, moved)
		sameVerdict(t, want, got)
		require.InDelta(t, math.Abs(readings[want.Worst].Value-average(readings)), math.Abs(moved[got.Worst].Value-average(moved)), 1e-6)
		sameVerdict(t, want, spec.JudgeBalance(alikeWithin10, larger))
	}
}

func average(readings []meter.Measurement) (mean float64) {
	for _, m := range readings {
		mean += m.Value / float64(len(readings))
	}
	return mean
}

func sameVerdict(t *testing.T, a, b spec.Verdict) {
	t.Helper()
	require.Equal(t, a.Outcome, b.Outcome)
	require.Equal(t, a.Reason, b.Reason)
	require.InDelta(t, a.Probability, b.Probability, 1e-3) // of the integral: the order of readings moves its points
	require.InDelta(t, math.Abs(a.Value), math.Abs(b.Value), 1e-6)
}

// Law: the further one reading is off the others, the less alike they are.
func TestBalanceFollowsTheDifference(t *testing.T) {
	for _, zero := range []string{"", "0.2"} {
		var p []float64
		var outcomes []spec.Outcome
		for tenths := 1; tenths < 60; tenths++ {
			v := spec.JudgeBalance(alikeWithin10, pairs(t, zero, "3.0", "3.0", fmt.Sprintf("%.1f", float64(tenths)/10)))
			p, outcomes = append(p, v.Probability), append(outcomes, v.Outcome)
		}
		require.NoError(t, oneTop(p))
		require.NoError(t, oneStretchEach(outcomes))
		assert.Equal(t, spec.InSpec, outcomes[29], "at 3.0")
	}
}

// The probability that readings are alike, held against drawing the true values
// 50 000 times from the same doubts. Recomputed, fixed seed.
func TestAlikeProbabilityAgreesWithDrawing(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for _, texts := range [][]string{{"1.1", "1.1", "1.1"}, {"1.1", "1.2", "1.1"}, {"0.8", "0.8", "0.8"}, {"1.1", "1.2"}, {"2.4", "2.0", "2.2"}} {
		for _, zero := range []string{"", "0.2"} {
			readings := pairs(t, zero, texts...)
			got := spec.JudgeBalance(alikeWithin10, readings).Probability
			assert.InDelta(t, drawnAlike(random, readings), got, 0.01, "%v, lead zero %q", texts, zero)
		}
	}
}

func drawnAlike(random *rand.Rand, readings []meter.Measurement) float64 {
	alike, possible := 0, 0
	for range 50000 {
		x := make([]meter.Measurement, len(readings))
		shared := random.NormFloat64() * readings[0].Shared
		for i, m := range readings {
			x[i].Value = m.Value + shared + random.NormFloat64()*m.Own
		}
		mean := average(x)
		if mean <= 0 {
			continue
		}
		possible++
		far := 0.0
		for _, m := range x {
			far = max(far, math.Abs(m.Value/mean-1))
		}
		if far <= 0.10 {
			alike++
		}
	}
	return float64(alike) / float64(possible)
}
