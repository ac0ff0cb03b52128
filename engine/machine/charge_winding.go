package machine

import (
	"math"
	"math/cmplx"

	"coilbook/engine/check"
	"coilbook/engine/circuit"
)

// winding is the phases at a speed.
type winding struct {
	hertz  float64
	phases [3]piece[complex128]
}

func (m *Machine) windingAt(rpm float64) winding {
	w := winding{hertz: m.hertz(rpm)}
	for i := range m.Build.phases() {
		w.phases[i] = m.phase(i, w.hertz)
	}
	return w
}

// coil is one phase with nothing before it.
func (w *winding) coil(i int) leg[complex128] {
	if w.phases[i].open {
		return leg[complex128]{0, complex(most, 0)}
	}
	return w.phases[i].upto
}

func (w *winding) source(l leg[complex128], pins float64) circuit.Source {
	return circuit.Source{
		Peak: math.Sqrt2 * cmplx.Abs(l.volts), Ohms: max(real(l.ohms), 0) + pins,
		Henries: max(imag(l.ohms), 0) / (2 * math.Pi * w.hertz), Hertz: w.hertz,
	}
}

func (m *Machine) pin(lead int) float64 { return m.Harness.ChargePins[lead].Ohms }

// between is the winding between two of its points, the plug apart.
func (m *Machine) between(w *winding, a, b point) (leg[complex128], bool) {
	var n net[complex128]
	for i := range m.Build.phases() {
		first, second := m.Build.ends(i)
		n.wind(first, second, phaseTouch1+point(i), w.phases[i])
	}
	n.joinPlug(m, State{Plug: check.Apart})
	volts, siemens, ok := n.seen(a, b)
	if !ok {
		return leg[complex128]{}, false
	}
	return leg[complex128]{volts, 1 / siemens}, true
}
