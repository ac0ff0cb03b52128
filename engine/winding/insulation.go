package winding

import (
	"math"

	"coilbook/engine/quantity"
)

// InsulationAt40 is the least resistance from winding to core at 40 °C, for
// random-wound machines and those below 1 kV (IEEE 43-2013, from memory). The
// standard is written for larger machines and tests with 500 V and more.
const InsulationAt40 quantity.Ohm = 5e6

// InsulationRule is how insulation resistance follows temperature.
type InsulationRule int

// The two rules of the standard. They disagree by a factor of three at 20 °C, so
// what is below one minimum and above the other is not settled by it.
const (
	Halving       InsulationRule = iota // half for each 10 K more; any age of enamel
	Thermosetting                       // flatter when cold: baked resins, from 10 to 85 °C
)

const kelvinAtZero = 273 // as the standard rounds it (IEEE 43-2013, from memory)

// Factor brings an insulation resistance measured at t to 40 °C: K of the
// standard's R40 = K·R. It is false where the rule has nothing to say.
//
// Halving is 0.5^((40-t)/10) (IEEE 43-2013, seen in a public tutorial).
// Thermosetting has exponents of 1245 K up to 40 °C and 4230 K above (IEEE
// 43-2013, from memory).
func (r InsulationRule) Factor(t quantity.Celsius) (k float64, ok bool) {
	if r == Halving {
		return math.Exp2((float64(t) - 40) / 10), true
	}
	exponent := 1245.0
	if t > 40 {
		exponent = 4230
	}
	return math.Exp(-exponent * (1/(float64(t)+kelvinAtZero) - 1.0/(40+kelvinAtZero))), t >= 10 && t <= 85
}

// Minimum is the least insulation resistance at t; false as in Factor. It falls
// with temperature: where that is doubtful, take the coldest to see what clears
// the minimum, and the warmest to see what fails it.
func (r InsulationRule) Minimum(t quantity.Celsius) (quantity.Ohm, bool) {
	k, ok := r.Factor(t)
	return InsulationAt40 / quantity.Ohm(k), ok
}

// Proof is what a reading from winding to core proves. There is none that
// passes the insulation: a multimeter tests with a volt or so, and cracks, gaps
// and moist tracks conduct at fifty and more.
type Proof int

// The three proofs.
const (
	ProvesNothing  Proof = iota // it may be above the minimum or below
	ProvesFailure               // it is below the minimum
	ProvesNoDefect              // it is above the minimum at the meter's own voltage, and no more
)

func (p Proof) String() string {
	return [...]string{"nothing", "failure", "no defect at this voltage"}[p]
}

// OpenLineProves is what an open line on a range of the given full scale proves
// against a minimum: more than that full scale, never a failure.
func OpenLineProves(fullScale, minimum quantity.Ohm) Proof {
	if fullScale >= minimum {
		return ProvesNoDefect
	}
	return ProvesNothing
}

// InsulationProves is what a number proves that has the standard uncertainty u.
func InsulationProves(r, u, minimum quantity.Ohm) Proof {
	switch {
	case r+told*u < minimum:
		return ProvesFailure
	case r-told*u >= minimum:
		return ProvesNoDefect
	}
	return ProvesNothing
}
