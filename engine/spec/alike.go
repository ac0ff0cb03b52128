package spec

import (
	"math"

	"coilbook/engine/meter"
)

// group is two or three readings of one range: their mean, what each is off it,
// the doubt that each has of its own and the doubt that all share.
type group struct {
	mean, own, shared float64
	off               []float64
}

func groupOf(readings []meter.Measurement) group {
	x := make([]float64, len(readings))
	g := group{shared: readings[0].Shared}
	for i, m := range readings {
		x[i] = m.Value
		g.own = max(g.own, m.Own)
	}
	g.mean = mean(x)
	for i := range x {
		g.off = append(g.off, x[i]-g.mean)
	}
	return g
}

// meanStd is the doubt of the mean. With doubts of their own alike, the mean is
// independent of what each is off it; this is what makes the rest tractable.
func (g group) meanStd() float64 {
	return math.Hypot(g.shared, g.own/math.Sqrt(float64(len(g.off))))
}

// alikeWithin is the probability that every true value lies within ±fraction of
// their true mean. The mean must be averaged over, not merely propagated:
// leads that were not taken off may leave so little of it that the same
// difference is too much. A mean of zero or less is no winding.
func (g group) alikeWithin(fraction float64) float64 {
	std := g.meanStd()
	low, high := max(g.mean-6*std, 0), g.mean+6*std
	if std == 0 {
		return g.closeTo(fraction * g.mean)
	}
	weight := func(m float64) float64 { return math.Exp(-sq((m-g.mean)/std) / 2) }
	alike := integral(low, high, func(m float64) float64 { return weight(m) * g.closeTo(fraction*m) })
	return min(alike/integral(low, high, weight), 1)
}

// closeTo is the probability that every true value is within ±c of the mean.
// Two readings are off it by the same amount; three leave two free.
func (g group) closeTo(c float64) float64 {
	if len(g.off) == 2 {
		return Conformance(g.off[0], g.own/math.Sqrt2, -c, c)
	}
	first, second := g.own*math.Sqrt(2.0/3), g.own/math.Sqrt2
	rest := func(d float64) float64 { // the other two share what the first leaves
		return Conformance(g.off[1]-(d-g.off[0])/2, second, max(-c, -c-d), min(c, c-d))
	}
	if first == 0 {
		return Conformance(g.off[0], 0, -c, c) * rest(g.off[0])
	}
	low, high := max(-c, g.off[0]-6*first), min(c, g.off[0]+6*first)
	if low >= high {
		return 0
	}
	density := 1 / (first * math.Sqrt(2*math.Pi))
	return integral(low, high, func(d float64) float64 { return density * math.Exp(-sq((d-g.off[0])/first)/2) * rest(d) })
}

// offBeyond is the probability that reading i is truly off the mean, on the
// side that it seems to be on, by more than fraction of the mean.
func (g group) offBeyond(fraction float64, i int) float64 {
	return Conformance(math.Abs(g.off[i])-fraction*g.mean, g.beyondStd(fraction), 0, math.Inf(1))
}

// beyondStd is the doubt of what one reading is off the mean by, less the
// fraction of the mean that it may be.
func (g group) beyondStd(fraction float64) float64 {
	return math.Hypot(g.own*math.Sqrt(1-1/float64(len(g.off))), fraction*g.meanStd())
}

func sq(v float64) float64 { return v * v }

// integral is by Simpson's rule.
func integral(from, to float64, f func(float64) float64) float64 {
	const n = 32
	h := (to - from) / n
	sum := f(from) + f(to)
	for i := 1; i < n; i++ {
		sum += float64(2+2*(i%2)) * f(from+float64(i)*h)
	}
	return sum * h / 3
}
