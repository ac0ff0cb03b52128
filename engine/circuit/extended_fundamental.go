package circuit

import "math"

// ExtendedFundamental is the closed form of the mean current into the sink of
// StarBridge, DeltaBridge (as its star), StarPhaseOpen and FullWave; NaN for the
// other arrangements and for inputs that Charging calls Outside.
//
// It takes each phase to conduct all the time, each terminal to be a square wave in
// phase with its current, and power to flow in fundamentals only: with U that
// fundamental's peak, (U + R·I)² + (ωL·I)² = Peak². For a three-phase bridge it is
// within 1 % of the exact current up to a sink voltage of 0.3 Peak, too high by
// 14 % to 37 % at 1.2 to 1.3 Peak, and zero where there is still current from
// (π/2)·Peak to √3·Peak. Charging is nearer everywhere; this is for a check by
// hand.
//
// Source: V. Caliskan, D. Perreault, T. Jahns, J. Kassakian, Analysis of
// Three-Phase Rectifiers With Constant-Voltage Loads, IEEE TCAS-I 50(9), 2003
// (citation from memory), derived anew on its assumptions with R.
func (a Arrangement) ExtendedFundamental(s Source, k Sink) float64 {
	if !a.known() || !s.valid() || !k.valid() {
		return math.NaN()
	}
	path := paths[a]
	s = path.phase(s, k.DiodeOhms)
	volts := k.Volts + path.drops*k.DiodeVolts
	switch path.table {
	case &starTable:
		return 3 / math.Pi * s.fundamental(2/math.Pi*volts)
	case &singleTable:
		return 2 / math.Pi * s.fundamental(4/math.Pi*volts)
	}
	return math.NaN()
}

// fundamental is the peak current of a phase against a voltage in phase with it.
func (s Source) fundamental(u float64) float64 {
	x := s.reactance()
	z2 := s.Ohms*s.Ohms + x*x
	root := s.Peak*s.Peak*z2 - x*x*u*u
	if root <= 0 {
		return 0
	}
	return math.Max((math.Sqrt(root)-s.Ohms*u)/z2, 0)
}

// Continuous is the sink voltage, over the peak of a phase, up to which each phase
// of a healthy three-phase bridge conducts without a pause, for a ratio ωL/R of 0
// or more: from 0 without inductance to 1.293 without resistance. NaN below 0.
//
// A phase that comes to zero current goes on at once if its emf is then at least a
// third of the sink voltage, and the current of the six-step voltage comes to zero
// where it does by the balance over half a period. Own derivation.
func Continuous(ratio float64) float64 {
	if !(ratio >= 0) {
		return math.NaN()
	}
	ratio = math.Min(ratio, 1e6) // as good as no resistance
	angle := math.Atan(ratio)
	low, high := 0.0, 1.5
	for range halves {
		if middle := (low + high) / 2; goesOn(middle, ratio, angle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

func goesOn(x, ratio, angle float64) bool {
	least := math.Asin(x / 3)
	third := math.Exp(-math.Pi / 3 / ratio)
	steps := -math.Expm1(-math.Pi/3/ratio) * (1 + third) * (1 + third) / (1 + third*third*third)
	lag := x / 3 * steps / math.Cos(angle)
	return lag <= 1 && angle-math.Asin(lag) >= least
}
