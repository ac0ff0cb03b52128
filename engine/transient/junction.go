package transient

import "math"

// Junction is a valve that conducts: a knee, and the slope above it.
type Junction struct{ Volts, Ohms float64 }

// thermalVolts is kT/q at 27 °C, with the constants of the SI.
const thermalVolts = 1.380649e-23 * 300.15 / 1.602176634e-19

// FitJunction puts a straight line to the diode equation
// v = N·kT/q·ln(i/IS) + RS·i by least squares over all currents from none to
// amps, at 27 °C: the logarithm of x from 0 to 1 is fitted best by 3x - 5/2
// (derived). amps, far above IS, is the peak of the current that is expected.
func FitJunction(IS, N, RS, amps float64) Junction {
	v := N * thermalVolts
	return Junction{Volts: max(v*(math.Log(amps/IS)-2.5), 0), Ohms: RS + 3*v/amps}
}
