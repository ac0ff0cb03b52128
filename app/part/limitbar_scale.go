package part

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// scale maps values to places: evenly by value or, where the limits lie far
// apart, evenly by ratio. From and to are where the line begins and ends, in
// what the places are even by.
type scale struct {
	from, to float64
	ratio    bool
}

// evenly is what the places are even by.
func (s scale) evenly(v float64) float64 {
	if s.ratio {
		return math.Log(max(v, math.SmallestNonzeroFloat64))
	}
	return v
}

// x is the place of a value, kept on the line.
func (s scale) x(v float64) float64 {
	f := (s.evenly(v) - s.from) / (s.to - s.from)
	return barLeft + min(max(f, 0), 1)*(barRight-barLeft)
}

// value is what stands at a place.
func (s scale) value(x float64) float64 {
	u := s.from + (x-barLeft)/(barRight-barLeft)*(s.to-s.from)
	if s.ratio {
		return math.Exp(u)
	}
	return u
}

func (s scale) before(v float64) bool { return s.evenly(v) < s.from }

func (s scale) shows(v float64) bool { return !s.before(v) && s.evenly(v) <= s.to }

// farApart is the factor between two limits from which a line even by value
// would squeeze the lower one into its end.
const farApart = 20

// nearZero is the divisor of a value below which a line even by ratio is not
// widened for the foot of its bell.
const nearZero = 4

// byRatio reports whether the line is even by ratio. A value that may be zero
// has no place on such a line, and zero degrees are not nothing.
func byRatio(v spec.Verdict) bool {
	l := v.Limit
	return !l.Ratio && l.Kind != quantity.Temperature && l.Low > 0 && !math.IsInf(l.High, 1) && l.High >= farApart*l.Low &&
		(!v.HasValue || v.Value > 2*v.Std)
}

// scaleFor lets the limit fill much of the line and widens it for the value, by
// its own length at most: what lies further off must not squeeze the limit to a
// hair.
func scaleFor(v spec.Verdict) scale {
	s := aroundLimit(v)
	span := s.to - s.from
	widest := scale{s.from - span, s.to + span, s.ratio}
	if !v.HasValue || !widest.shows(v.Value) {
		return s
	}
	low := v.Value - reach*v.Std
	if s.ratio { // the way to zero is endless
		low = max(low, v.Value/nearZero)
	}
	points := []float64{v.Value, low, v.Value + reach*v.Std}
	if v.HasShown && widest.shows(v.Shown) {
		points = append(points, v.Shown)
	}
	for _, p := range points {
		u := s.evenly(p)
		s.from, s.to = min(s.from, max(u, widest.from)), max(s.to, min(u, widest.to))
	}
	return s
}

// aroundLimit is a line with room beside the limit. It begins at zero where
// nothing asks for less.
func aroundLimit(v spec.Verdict) scale {
	s := scale{ratio: byRatio(v)}
	low, high := sides(v.Limit)
	switch {
	case math.IsInf(high, 1):
		s.from, s.to = min(0, 2*low), max(2*low, 0)
	case math.IsInf(low, -1):
		s.from, s.to = min(0, 2*high), max(1.35*high, 0)
	default:
		s.from, s.to = s.evenly(low), s.evenly(high)
		room := (s.to - s.from) / 4
		s.from, s.to = s.from-room, s.to+room
		if low >= 0 && !s.ratio {
			s.from = max(s.from, 0)
		}
	}
	if s.to <= s.from {
		s.to = s.from + 1
	}
	return s
}
