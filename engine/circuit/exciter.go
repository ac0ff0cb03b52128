package circuit

import (
	"math"
	"math/cmplx"
)

// Exciter is the coil that fills the capacitor of an ignition through one diode,
// once per cycle: the peak of its sinusoidal voltage, its resistance, which must be
// above 0, its inductance, its frequency and the drop of the diode.
type Exciter struct{ Peak, Ohms, Henries, Hertz, DiodeVolts float64 }

// Fills is the voltage on a capacitor of so many farads after a number of cycles
// from a start voltage, nothing drawn from it meanwhile. A cycle begins where the
// voltage of the coil rises through zero. NaN for what is no exciter or capacitor.
//
// Between the diode's opening and closing the circuit is linear: a sinusoid and two
// exponentials, worked out in closed form; only the moment of closing is searched.
func (e Exciter) Fills(farads, start float64, cycles int) (volts float64) {
	if !e.valid() || !(farads > 0) || math.IsInf(farads, 1) || !finite(start) {
		return math.NaN()
	}
	volts = start
	for range cycles {
		volts = e.cycle(farads, volts)
	}
	return volts
}

func (e Exciter) valid() bool {
	return e.Peak > 0 && e.Ohms > 0 && e.Henries >= 0 && e.Hertz > 0 && e.DiodeVolts >= 0 &&
		finite(e.Peak+e.Ohms+e.Henries+e.Hertz+e.DiodeVolts)
}

const (
	looks  = 64 // for the current's end, in a cycle
	halves = 40 // of the interval it was found in
)

// cycle is one opening of the diode. It opens when the coil's voltage passes that
// of the capacitor, at once if that is below zero, and never if it is above the
// peak. A current that has not ended when the cycle has is cut off there.
func (e Exciter) cycle(farads, volts float64) float64 {
	level := (volts + e.DiodeVolts) / e.Peak
	if level >= 1 {
		return volts
	}
	omega := 2 * math.Pi * e.Hertz
	opens := math.Asin(math.Max(level, 0)) / omega
	p := e.pulse(farads, volts, opens)
	period := 1 / e.Hertz
	a := opens
	for n := 1; n <= looks; n++ {
		b := opens + period*float64(n)/looks
		if p.amps(b) < 0 {
			return p.volts(p.ends(a, b))
		}
		a = b
	}
	return p.volts(a)
}

// pulse is the solution while the diode conducts: the capacitor's voltage is a
// sinusoid about minus the diode's drop, and two natural exponentials.
type pulse struct {
	omega, farads, opens float64
	drop                 float64
	sine                 complex128    // its imaginary part at exp(jωt)
	size, rate           [2]complex128 // of the exponentials, rate in 1/s
}

// leastDamping keeps the two natural rates of a coil without inductance finite, at
// an L/R of this share of RC.
const leastDamping = 1e-4

func (e Exciter) pulse(farads, volts, opens float64) pulse {
	p := pulse{omega: 2 * math.Pi * e.Hertz, farads: farads, opens: opens, drop: e.DiodeVolts}
	henries := math.Max(e.Henries, leastDamping*e.Ohms*e.Ohms*farads)
	p.rate = naturalRates(e.Ohms/henries, 1/(henries*farads))
	jw := complex(0, p.omega)
	p.sine = complex(e.Peak, 0) / (1 + jw*complex(e.Ohms*farads, 0) + jw*jw*complex(henries*farads, 0))
	turned := p.sine * cmplx.Exp(jw*complex(opens, 0))
	value := complex(volts+p.drop-imag(turned), 0)
	slope := complex(-imag(jw*turned), 0)
	p.size[0] = (slope - p.rate[1]*value) / (p.rate[0] - p.rate[1])
	p.size[1] = value - p.size[0]
	return p
}

// naturalRates solves s² + damping·s + spring = 0; two equal rates are set a little
// apart.
func naturalRates(damping, spring float64) [2]complex128 {
	root := cmplx.Sqrt(complex(damping*damping/4-spring, 0))
	if least := 1e-5 * damping; cmplx.Abs(root) < least {
		root = complex(least, 0)
	}
	fast := complex(-damping/2, 0) - root
	return [2]complex128{fast, complex(spring, 0) / fast}
}

func (p *pulse) volts(t float64) float64 {
	sum := complex(imag(p.sine*cmplx.Exp(complex(0, p.omega*t)))-p.drop, 0)
	for n, rate := range p.rate {
		sum += p.size[n] * cmplx.Exp(rate*complex(t-p.opens, 0))
	}
	return real(sum)
}

func (p *pulse) amps(t float64) float64 {
	sum := complex(imag(complex(0, p.omega)*p.sine*cmplx.Exp(complex(0, p.omega*t))), 0)
	for n, rate := range p.rate {
		sum += rate * p.size[n] * cmplx.Exp(rate*complex(t-p.opens, 0))
	}
	return p.farads * real(sum)
}

// ends is where the current of the pulse comes to nothing, between a and b.
func (p *pulse) ends(a, b float64) float64 {
	for range halves {
		if middle := (a + b) / 2; p.amps(middle) < 0 {
			b = middle
		} else {
			a = middle
		}
	}
	return a
}
