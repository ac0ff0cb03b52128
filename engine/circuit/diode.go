package circuit

import "math"

// Diode is a junction by its equation, V = n·V_T·ln(I/I_S + 1) + R·I.
type Diode struct {
	Saturation float64 // I_S in amperes, above 0
	Emission   float64 // n, 1 to 2 for silicon
	Ohms       float64 // R in series
}

// thermal is kT/e at 27 °C, in volts.
const thermal = 0.02585

// DiodeThrough is the one without a series resistance that drops so many volts at a
// current above 0.
func DiodeThrough(volts, amps, emission float64) Diode {
	return Diode{Saturation: amps / math.Expm1(volts/(emission*thermal)), Emission: emission}
}

// Volts is the drop at a current of 0 or more amperes.
func (d Diode) Volts(amps float64) float64 {
	return d.Emission*thermal*math.Log1p(amps/d.Saturation) + d.Ohms*amps
}

// Knee is the straight line that touches the diode's curve at an operating current
// above 0: a constant drop in volts and a resistance in ohms. Taken at the mean
// current while the diode conducts, it stands for the diode in a Sink.
func (d Diode) Knee(amps float64) (volts, ohms float64) {
	ohms = d.Emission*thermal/(amps+d.Saturation) + d.Ohms
	return math.Max(d.Volts(amps)-ohms*amps, 0), ohms
}
