package spec

import "math"

// Outcome of a verdict.
type Outcome int

// The three outcomes.
const (
	CannotTell Outcome = iota
	InSpec
	OutOfSpec
)

func (o Outcome) String() string {
	return [...]string{"cannot tell", "in spec", "out of spec"}[o]
}

// A verdict is given when the probability that it is right is at least this
// (ISO 14253-1:2017 default conformance-probability limit, from memory).
const confidence = 0.95

// Conformance is the probability that a quantity measured as y with standard
// uncertainty u lies in [low, high] (±Inf for an open side), for a normal
// distribution and a vague prior (JCGM 106:2012, 7.2). u = 0 means certainty.
func Conformance(y, u, low, high float64) float64 {
	if u <= 0 {
		if y >= low && y <= high {
			return 1
		}
		return 0
	}
	return max(normal((high-y)/u)-normal((low-y)/u), 0)
}

// Decide turns a conformance probability into an outcome.
func Decide(p float64) Outcome {
	switch {
	case p >= confidence:
		return InSpec
	case p <= 1-confidence+1e-12:
		return OutOfSpec
	}
	return CannotTell
}

// DecideBetween is the decision on a value between limits, with its conformance
// probability. "Out of spec" needs a value that is sure to lie on one side: a
// meter too coarse for a narrow span hits it with little probability wherever
// the value is, and that condemns no part (ISO 14253-1 rejects beyond a limit).
func DecideBetween(y, u, low, high float64) (Outcome, float64) {
	p := Conformance(y, u, low, high)
	o := Decide(p)
	outside := max(Conformance(y, u, math.Inf(-1), low), Conformance(y, u, high, math.Inf(1)))
	if o == OutOfSpec && outside < confidence-1e-12 {
		o = CannotTell
	}
	return o, p
}

func normal(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }
