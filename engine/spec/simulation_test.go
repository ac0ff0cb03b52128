package spec_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// bench is a cheap meter of one session, its errors drawn from its data sheet:
// gain and offset of the range anywhere in their bounds, rounding to a step.
// Nothing of it is shared with engine/meter but the description.
type bench struct {
	random             *rand.Rand
	m                  meter.Meter
	r                  meter.Range
	gain, offset, lead float64
	zero               *meter.Measurement
}

func newBench(random *rand.Rand, zeroed bool) bench {
	m := meter.Cheap()
	b := bench{random: random, m: m, r: m.Ranges[meter.Ohms][0]}
	a := b.r.Accuracy
	b.gain, b.offset = b.either(a.Percent/100), b.either((a.Digits-0.5)*b.r.Step)
	b.lead = float64(m.Leads.Low) + random.Float64()*float64(m.Leads.High-m.Leads.Low)
	if zeroed {
		z := m.Measure(meter.Ohms, b.r, b.shown(b.lead+b.either(float64(m.Leads.Contact))), meter.Conditions{RawLeads: true})
		b.zero = &z
	}
	return b
}

func (b bench) either(half float64) float64 { return half * (2*b.random.Float64() - 1) }

func (b bench) shown(x float64) quantity.Typed {
	return quantity.Typed{Value: math.Round((x*(1+b.gain)+b.offset)/b.r.Step) * b.r.Step, Step: b.r.Step, Unit: b.r.Unit}
}

func (b bench) read(truth float64) meter.Measurement {
	typed := b.shown(truth + b.lead + b.either(float64(b.m.Leads.Contact)))
	return b.m.Measure(meter.Ohms, b.r, typed, meter.Conditions{LeadZero: b.zero})
}

// tally counts verdicts and those of them that the truth contradicts.
type tally struct{ in, inWrong, out, outWrong, open int }

func (c *tally) count(o spec.Outcome, conforms bool) {
	switch {
	case o == spec.InSpec:
		c.in++
	case o == spec.OutOfSpec:
		c.out++
	default:
		c.open++
	}
	if o == spec.InSpec && !conforms {
		c.inWrong++
	}
	if o == spec.OutOfSpec && conforms {
		c.outWrong++
	}
}

func (c tally) mustBeHonest(t *testing.T, what string) {
	t.Helper()
	t.Logf("%-44s in spec %5d, wrong %.2f %%; out of spec %5d, wrong %.2f %%; cannot tell %5d", what,
		c.in, share(c.inWrong, c.in), c.out, share(c.outWrong, c.out), c.open)
	assert.LessOrEqual(t, share(c.inWrong, c.in), 5.0, "%s: in spec, yet it is not", what)
	assert.LessOrEqual(t, share(c.outWrong, c.out), 5.0, "%s: out of spec, yet it is in", what)
	require.Positive(t, c.in+c.out, "%s: no verdict at all would be honest and useless", what)
}

func share(part, of int) float64 {
	if of == 0 {
		return 0
	}
	return 100 * float64(part) / float64(of)
}

// Of verdicts given, at most 5 % may be wrong, even where the truth is crowded
// around the limits. Recomputed, fixed seed.
func TestSimulatedVerdictsAreHonest(t *testing.T) {
	for _, c := range []struct {
		what      string
		low, high float64
		zeroed    bool
	}{
		{"0.5 to 1.5 Ω, lead zero taken", 0.5, 1.5, true},
		{"0.5 to 1.5 Ω, no lead zero", 0.5, 1.5, false},
		{"0.5 to 0.6 Ω, lead zero taken", 0.5, 0.6, true},
		{"90 to 110 Ω, lead zero taken", 90, 110, true},
		{"90 to 110 Ω, no lead zero", 90, 110, false},
	} {
		random := rand.New(rand.NewPCG(21, 22))
		var c2 tally
		width := c.high - c.low
		for range 20000 {
			truth := c.low - width + 3*width*random.Float64()
			if truth <= 0 {
				continue
			}
			v := spec.Judge(ohms(c.low, c.high), newBench(random, c.zeroed).read(truth), spec.AirAt(20))
			c2.count(v.Outcome, truth >= c.low && truth <= c.high)
		}
		c2.mustBeHonest(t, c.what)
	}
}

// At the limit itself a verdict must still be right 95 times of 100: a part that
// just fails is passed at most so often, one that just passes failed so often.
func TestSimulatedVerdictsAtTheLimit(t *testing.T) {
	random := rand.New(rand.NewPCG(23, 24))
	for _, c := range []struct {
		low, high, truth float64
		wrong            spec.Outcome
	}{
		{90, 110, 0.999 * 90, spec.InSpec}, {90, 110, 1.001 * 110, spec.InSpec}, {90, 110, 1.001 * 90, spec.OutOfSpec}, {90, 110, 0.999 * 110, spec.OutOfSpec},
		{0.3, 1.5, 0.299, spec.InSpec}, {0.3, 1.5, 0.301, spec.OutOfSpec}, {0.3, 1.5, 1.501, spec.InSpec}, {0.3, 1.5, 1.499, spec.OutOfSpec},
		{0.5, 5, 0.499, spec.InSpec}, {0.5, 5, 0.501, spec.OutOfSpec},
	} {
		for _, zeroed := range []bool{true, false} {
			wrong, n := 0, 20000
			for range n {
				if spec.Judge(ohms(c.low, c.high), newBench(random, zeroed).read(c.truth), spec.AirAt(20)).Outcome == c.wrong {
					wrong++
				}
			}
			t.Logf("%.3f Ω, lead zero %v: %s in %.2f %% of %d", c.truth, zeroed, c.wrong, share(wrong, n), n)
			assert.LessOrEqual(t, share(wrong, n), 5.0)
		}
	}
}

// Three windings that are alike must not be called different, nor shorted ones
// alike. Recomputed, fixed seed.
func TestSimulatedBalanceIsHonest(t *testing.T) {
	for _, zeroed := range []bool{true, false} {
		for _, size := range []float64{0.3, 0.6, 1, 3, 10} {
			random := rand.New(rand.NewPCG(25, 26))
			var healthy, mixed tally
			for range 1000 {
				b := newBench(random, zeroed)
				v := spec.JudgeBalance(alikeWithin10, []meter.Measurement{b.read(size), b.read(size), b.read(size)})
				healthy.count(v.Outcome, true)
				short := size * (0.6 + 0.4*random.Float64()) // deviation from the mean up to 0.31
				v = spec.JudgeBalance(alikeWithin10, []meter.Measurement{b.read(size), b.read(short), b.read(size)})
				mixed.count(v.Outcome, 1-short/((2*size+short)/3) <= 0.10)
			}
			falseAlarms := share(healthy.out, healthy.in+healthy.out+healthy.open)
			t.Logf("%4.1f Ω alike, lead zero %v: false alarms %.2f %%, told alike %.0f %%", size, zeroed, falseAlarms, share(healthy.in, 1000))
			assert.LessOrEqual(t, falseAlarms, 5.0)
			assert.LessOrEqual(t, share(mixed.inWrong, mixed.in), 5.0, "%v Ω: alike, yet one is shorted", size)
			assert.LessOrEqual(t, share(mixed.outWrong, mixed.out), 5.0, "%v Ω: differs, yet within the limit", size)
			t.Logf("%4.1f Ω, one up to 40 %% short: alike %d, wrong %.2f %%; differs %d, wrong %.2f %%; cannot tell %d", size,
				mixed.in, share(mixed.inWrong, mixed.in), mixed.out, share(mixed.outWrong, mixed.out), mixed.open)
		}
	}
}
