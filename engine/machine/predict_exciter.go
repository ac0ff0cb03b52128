package machine

import (
	"math"
	"math/cmplx"
)

// boxKnee is the drop of the box's diodes, V. Common practice for silicon, no
// source.
const boxKnee = 0.8

// halves is the voltage of an exciter that the box clamps, over one period of
// angle: from opens to π it is peak·sin, from π on through the next opens it is
// -(clamp + rest·sin of the half wave). The current of the clamped half goes on
// into the next by the coil's inductance; that is opens.
//
// The capacitor is left out: it fills in the first half waves after a spark and
// draws little from then on.
type halves struct{ peak, opens, clamp, rest float64 }

// excites reports whether a probing sees the exciter with the box at it.
func (m *Machine) excites(p probed) bool {
	on := func(at point) bool { return at == exciter || at == boxExciter }
	return p.BoxPlugged() && m.Build.Exciter() && (on(p.red) || on(p.black))
}

// excited is the voltage at exciter or box against the core. ok is false against
// anything that is not the core by a wire, and above the clamp of the box, where
// the capacitor cuts the tops off.
func (m *Machine) excited(p probed, input float64) (h halves, ok bool) {
	live, other := p.red, p.black
	turned := other == exciter || other == boxExciter
	if turned {
		live, other = other, live
	}
	if other != core && other != groundLead && other != batteryMinus && other != frame {
		return halves{}, false
	}
	h = m.halves(live, p.State, input)
	loop := m.Kill.Chafed < most || m.Exciter.Ground.Ohms < most
	if h.peak > m.Box.Clamp || loop && Running(p.Engine) > 0 {
		return halves{}, false // at speed inductance and a second loop shape the half waves anew
	}
	if turned {
		return h.swapped(), true
	}
	return h, true
}

// swapped is not another halves: detectors that look at one side alone are told
// by the sign of the mean.
func (h halves) swapped() halves {
	h.peak = -h.peak
	h.clamp, h.rest = -h.clamp, -h.rest
	return h
}

func (m *Machine) halves(live point, s State, input float64) halves {
	rpm := m.speed(s.Engine)
	volts, inside := m.exciterAlone(rpm)
	if volts == 0 {
		return halves{}
	}
	pin := m.Harness.OtherPins.Ohms
	loads := 0.0 // siemens from the box's end to the core
	if m.Kill.Chafed < most {
		loads += 1 / max(m.Kill.Chafed, least)
	}
	if m.killed(s) {
		loads += 1 / KillContact
	}
	up := divided(inside, live, pin, loads, 1/input)
	down := divided(inside, live, pin, loads+1/max(m.Box.Ground.Ohms, least), 1/input)
	h := halves{peak: volts * cmplx.Abs(up.share)}
	if m.Box.Shorted { // its capacitor lies across the coil
		h.peak /= cmplx.Abs(1 + (inside+complex(min(pin, most), 0))*complex(0, 2*math.Pi*m.hertz(rpm)*m.Box.Farad))
	}
	knee := min(boxKnee, h.peak)
	kept := cmplx.Abs(down.share) / max(cmplx.Abs(up.share), least)
	h.clamp = knee * (1 - kept)
	h.rest = kept * h.peak
	h.opens = extinction(down.lag) * (1 - knee/max(h.peak, least))
	return h
}

// divider is the share of the coil's volts that is left at a point, and by how
// much the coil's current comes after them.
type divider struct {
	share complex128
	lag   float64
}

// divided is a coil with its inside impedance behind a pin, siemens at the far
// end of that and a meter at the point that is looked at.
func divided(inside complex128, live point, pin, far, meter float64) divider {
	if !(pin < most) {
		pin = most
	}
	beyond := complex(pin, 0) + 1/complex(far+1e-12, 0)
	if live == exciter {
		load := 1/beyond + complex(meter, 0)
		return divider{1 / (1 + inside*load), cmplx.Phase(inside + 1/load)}
	}
	load := 1 / complex(far+meter+1e-12, 0)
	all := inside + complex(pin, 0) + load
	return divider{load / all, cmplx.Phase(all)}
}

// extinction is how far into the next half wave the current of one goes whose
// impedance turns the phase by lag, a diode letting it through: from the current
// of a coil that is connected at a zero of its voltage, sin(u-lag) +
// sin(lag)·exp(-u/tan(lag)) = 0 beyond u = π.
func extinction(lag float64) float64 {
	if lag < 1e-6 {
		return 0
	}
	beyond := lag
	for range 6 {
		beyond = lag + math.Asin(math.Sin(lag)*math.Exp(-(math.Pi+beyond)/math.Tan(lag)))
	}
	return min(beyond, math.Pi)
}

// exciterAlone is the peak voltage of the exciter with nothing on it, and its
// impedance. An open one gives none.
func (m *Machine) exciterAlone(rpm float64) (peak float64, inside complex128) {
	hertz := m.hertz(rpm)
	if hertz == 0 {
		return 0, 0
	}
	var n net[complex128]
	n.wind(exciter, core, exciterTouch, m.Exciter.reactive(complex(m.emf(&m.Exciter, hertz), 0), 2*math.Pi*hertz))
	volts, siemens, ok := n.seen(exciter, core)
	if !ok {
		return 0, 0
	}
	return math.Sqrt2 * cmplx.Abs(volts), 1 / siemens
}

// averages are integrals over the period, by hand. A waveform that is swapped has
// a negative peak; its magnitudes are those of the other.
func (h halves) averages() averages {
	if h.peak < 0 {
		a := h.swapped().averages()
		a.mean = -a.mean
		return a
	}
	const all = 2 * math.Pi
	sin, cos := math.Sincos(h.opens)
	above := h.peak * (1 + cos)
	below := h.clamp*(math.Pi+h.opens) + 2*h.rest
	square := h.peak*h.peak*((math.Pi-h.opens)/2+sin*cos/2) + h.clamp*h.clamp*(math.Pi+h.opens) +
		4*h.clamp*h.rest + h.rest*h.rest*math.Pi/2
	mean := (above - below) / all
	return averages{mean: mean, magnitude: (above + below) / all, aside: h.above(mean) / math.Pi, square: square / all}
}

// above is the integral of what is over a level. Half of all deviation from the
// mean lies above it.
func (h halves) above(level float64) float64 {
	if h.peak <= level || h.peak == 0 {
		return 0
	}
	end := math.Asin(max(level, 0) / h.peak)
	from, to := max(h.opens, end), math.Pi-end
	if from >= to {
		return 0
	}
	return h.peak*(math.Cos(from)-math.Cos(to)) - level*(to-from)
}
