package meter

import (
	"cmp"
	"math"
	"slices"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// Repeats is what several readings of one point are worth together. Its
// Measurement is their mean, with the doubt of the mean: gain and offset of the
// range stand in every reading alike and stay in full.
type Repeats struct {
	Measurement
	Count   int
	Scatter float64 // experimental standard deviation of one reading
	TypeA   float64 // standard uncertainty of the mean, from the scatter alone
	Spread  float64 // largest reading less smallest
	Few     bool    // too few to know the scatter: type A is large for that alone
	Wanders bool    // spreads more than the meter itself explains
	Retake  int     // the reading to take again; -1 for none
}

const (
	// enough readings know their scatter within about 40 % (JCGM 100:2008, table
	// E.1, from memory).
	enough = 4
	// wanderOwn is the spread, in own doubts of one reading, that the meter
	// explains: a last digit that moves by one to either side spreads 6.93. An
	// assumption, no source.
	wanderOwn = 7
	// shownOwn is the scatter, in own doubts of one reading, that shows all of
	// the own doubt. Noise of half a step, which with the rounding scatters by
	// twice a step's own doubt, leaves the mean of rounded readings 0.2 % of a
	// step off: exp(−2π²·0.5²)/π, calculated.
	shownOwn = 2
	// coverage95 is the two-sided 95 % quantile of the normal distribution.
	coverage95 = 1.959964
)

// Repeat joins readings of one point, taken with the probes lifted in between.
// No reading is left out, not even an outlier: that is for who reads. ok is
// false when there are none.
//
// Two readings may agree by chance: with noise of some steps twice their own
// doubt covers 81 % at worst, from three on about 95 % or more (simulated in the
// test).
//
// Where some readings are no numbers, neither is what they are together; it is
// unsettled where they differ. Where a meter changed its range in between, the
// largest doubt of either stands for all.
func Repeat(readings []Measurement) (Repeats, bool) {
	if len(readings) == 0 {
		return Repeats{}, false
	}
	out := Repeats{Measurement: readings[0], Count: len(readings), Few: len(readings) < enough, Retake: -1}
	if out.State = commonState(readings); out.State != quantity.Number {
		out.Measurement = Measurement{State: out.State, Range: coarsest(readings)}
		return out, true
	}
	if len(readings) > 1 {
		out.join(readings)
	}
	return out, true
}

func (r *Repeats) join(readings []Measurement) {
	values := make([]float64, len(readings))
	r.Shown = 0
	for i, m := range readings {
		values[i] = m.Value
		r.Shown += m.Shown / float64(len(readings))
		r.Bound = max(r.Bound, m.Bound)
	}
	common := r.worst(readings)
	r.Spread = slices.Max(values) - slices.Min(values)
	r.Retake = outlier(values, r.Own)
	r.Value, r.Scatter = meanAndScatter(values)
	r.TypeA = SmallSample(r.Count) * r.Scatter / math.Sqrt(float64(r.Count))
	r.Wanders = r.Spread > wanderOwn*r.Own
	r.Own = r.ownOfMean()
	r.Std = math.Hypot(common, r.Own)
}

// ownOfMean is the doubt of the mean that other readings would not share. What
// the scatter does not show of one reading's own doubt, as when a display stands
// still and rounds the same way each time, no averaging takes away. Two or three
// readings know their scatter so badly that a digit's difference would count for
// many: while the meter explains their spread, at most half of it counts, beside
// one reading's own doubt. Where readings wander the cause is not known, nor that
// it would average out: then the spread is a bound.
func (r *Repeats) ownOfMean() float64 {
	shown := r.Scatter / shownOwn
	hidden := math.Sqrt(max(r.Own*r.Own-shown*shown, 0))
	seen := min(r.TypeA, r.Spread/2+r.Own)
	if r.Wanders {
		seen = max(r.TypeA, uncertainty.Rectangular(r.Spread/2))
	}
	return math.Hypot(seen, hidden)
}

// worst takes the largest doubts of all readings and returns the doubt that they
// share, which no number of them makes smaller.
func (r *Repeats) worst(readings []Measurement) (common float64) {
	r.Range = coarsest(readings)
	for _, m := range readings {
		r.Gain, r.Shared, r.Own = max(r.Gain, m.Gain), max(r.Shared, m.Shared), max(r.Own, m.Own)
		r.Zeroed, r.OffAC = r.Zeroed && m.Zeroed, r.OffAC || m.OffAC
		apart := math.Sqrt(max(m.Std*m.Std-m.Own*m.Own, 0))
		common = max(common, apart, norm(m.Gain*m.Value, m.Shared))
	}
	return common
}

func coarsest(readings []Measurement) Range {
	return slices.MaxFunc(readings, func(a, b Measurement) int { return cmp.Compare(a.Range.Step, b.Range.Step) }).Range
}

func commonState(readings []Measurement) quantity.State {
	for _, m := range readings {
		if m.State != readings[0].State {
			return quantity.Unsettled
		}
	}
	return readings[0].State
}

// SmallSample widens a standard uncertainty that was estimated from the scatter
// of n readings, so that twice of it still covers 95 %: Student's t over the
// normal quantile (JCGM 100:2008, 4.2.3 with G.3.2, from memory). It is 6.5 for
// two readings, 1.4 for five, 1.15 for ten.
func SmallSample(n int) float64 {
	if n < 2 {
		return math.Inf(1)
	}
	return studentLimit(1-0.95, n-1) / coverage95
}
