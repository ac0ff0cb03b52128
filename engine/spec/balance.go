package spec

import (
	"math"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// JudgeBalance asks whether readings that should be alike are: the deviation
// of each from their mean, as a fraction of it, against the limit's High. All
// readings come from one range of one meter, so its gain error cancels and an
// offset shared by all moves only the mean; what is left is each reading's own
// quantisation and contact. "In spec" is said of all readings together, "out of
// spec" of the one furthest off. It takes two or three readings: no generator
// here has more windings that are alike.
func JudgeBalance(l Limit, readings []meter.Measurement) Verdict {
	v := Verdict{Limit: l, HasLimit: true, Probability: 0.5, Reason: CannotCompare}
	if comparable(readings) && groupOf(readings).mean <= 0 {
		v.Reason, v.Remedies = TooCoarse, finer(l)
		return v
	}
	if !comparable(readings) {
		v.Remedies = []Remedy{Repeat}
		return v
	}
	g := groupOf(readings)
	v.HasValue, v.Worst = true, g.furthest()
	v.Value, v.Std = g.fractionOff(v.Worst)
	v.Probability = g.alikeWithin(l.High)
	switch {
	case v.Probability >= confidence:
		v.Outcome, v.Reason = InSpec, AllAlike
	case g.offBeyond(l.High, v.Worst) >= confidence:
		v.Outcome, v.Reason = OutOfSpec, OneDiffers
	default:
		v.Reason = undecidedBalance(g, l)
		v.Remedies = balanceRemedies(v, readings[0])
	}
	return v
}

// DeviationDoubt is the standard uncertainty, as a fraction of the mean, with
// which JudgeBalance tells a deviation from the limit; NaN where the readings
// cannot be compared.
func DeviationDoubt(l Limit, readings []meter.Measurement) float64 {
	if !comparable(readings) {
		return math.NaN()
	}
	g := groupOf(readings)
	return g.beyondStd(l.High) / g.mean
}

func comparable(readings []meter.Measurement) bool {
	for _, m := range readings {
		if m.State != quantity.Number || m.Range.Label != readings[0].Range.Label {
			return false
		}
	}
	return len(readings) == 2 || len(readings) == 3
}

// fractionOff is the deviation of reading i from the mean, as a fraction of it,
// with its standard uncertainty.
func (g group) fractionOff(i int) (d, u float64) {
	x, own, alike := make([]float64, len(g.off)), make([]float64, len(g.off)), make([]float64, len(g.off))
	for k := range x {
		x[k], own[k], alike[k] = g.mean+g.off[k], g.own, 1
	}
	cov := uncertainty.Independent(own...).Plus(uncertainty.Common(g.shared, alike...))
	return uncertainty.Propagate(func(x []float64) float64 { return x[i]/mean(x) - 1 }, x, cov)
}

func undecidedBalance(g group, l Limit) Reason {
	g.off = make([]float64, len(g.off))
	if g.alikeWithin(l.High) < confidence {
		return TooCoarse // even readings that are all the same would not pass
	}
	return NearLimit
}

func balanceRemedies(v Verdict, m meter.Measurement) []Remedy {
	var out []Remedy
	if !m.Zeroed {
		out = append(out, ZeroLeads)
	}
	if v.Reason != TooCoarse {
		out = append(out, Repeat)
	}
	return append(out, finer(v.Limit)...)
}

// finer is what sees a smaller difference than the readings at hand.
func finer(l Limit) []Remedy {
	if l.Measurand == FineBalance {
		return []Remedy{BetterMeter}
	}
	return []Remedy{VoltAmp, BetterMeter}
}

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}

// sameOff is the difference below which two deviations count as equally large,
// so that the order of the readings decides and not the last bit.
const sameOff = 1e-9

func (g group) furthest() int {
	worst := 0
	for i := range g.off {
		if math.Abs(g.off[i]) > math.Abs(g.off[worst])+sameOff*g.mean {
			worst = i
		}
	}
	return worst
}
