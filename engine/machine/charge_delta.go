package machine

import (
	"math"
	"math/cmplx"

	"coilbook/engine/circuit"
)

// delta is three branches: all of them as the star that does the same, two, or
// one. A weak one lies between.
func (m *Machine) delta(g *generator, w *winding) {
	var legs [3]leg[complex128]
	cut, branches := -1, 0
	for i := range legs {
		legs[i] = w.coil(i)
		if real(legs[i].ohms) < most {
			branches++
		} else {
			cut = i
		}
	}
	if m.pinOpen() || branches < 2 {
		m.deltaByTwo(g, w)
		return
	}
	pins := m.pin(0) + m.pin(1) + m.pin(2)
	if branches == 2 {
		g.add(circuit.DeltaBranchOpen, w.vee(legs, cut, pins), 1)
		g.known = m.ofDiodes(g, stars, 0, 1, 2) == circuit.StarBridge
		return
	}
	weak, extra := weakest([3]float64{m.Phases[0].Joint, m.Phases[1].Joint, m.Phases[2].Joint})
	part := share(extra*deltaJoint, legs[(weak+1)%3].ohms)
	whole := w.mean(legs, weak, extra)
	whole.Peak /= math.Sqrt(3)
	whole.Ohms /= 3
	whole.Henries /= 3
	poorest := max(m.pin(0), m.pin(1), m.pin(2))
	usual := (pins - poorest) / 2
	poor := share((poorest-usual)*starJoint, complex(whole.Ohms+usual, 2*math.Pi*w.hertz*whole.Henries))
	whole.Ohms += usual
	g.add(m.ofDiodes(g, stars, 0, 1, 2), whole, part*poor)
	if part < 0.999 {
		g.add(circuit.DeltaBranchOpen, w.vee(legs, weak, 3*usual), (1-part)*poor)
	}
	if poor < 0.999 {
		whole.Peak *= math.Sqrt(3)
		whole.Ohms *= 2
		whole.Henries *= 2
		g.add(circuit.FullWave, whole, 1-poor)
	}
}

// vee is the branch of a delta without one.
func (w *winding) vee(legs [3]leg[complex128], cut int, pins float64) circuit.Source {
	a, b := w.source(legs[(cut+1)%3], pins), w.source(legs[(cut+2)%3], pins)
	return circuit.Source{Peak: (a.Peak + b.Peak) / 2, Ohms: (a.Ohms + b.Ohms) / 2, Henries: (a.Henries + b.Henries) / 2, Hertz: w.hertz}
}

func (m *Machine) pinOpen() bool {
	for i := range m.Build.leads() {
		if !(m.pin(i) < most) {
			return true
		}
	}
	return false
}

// deltaByTwo is the pair of leads that gives most, of those that are not open.
func (m *Machine) deltaByTwo(g *generator, w *winding) {
	var best leg[complex128]
	from, to := -1, -1
	for i := range 3 {
		j := (i + 1) % 3
		if !(m.pin(i)+m.pin(j) < most) {
			continue
		}
		if l, ok := m.between(w, chargeLead(i), chargeLead(j)); ok && cmplx.Abs(l.volts) > cmplx.Abs(best.volts) {
			best, from, to = l, i, j
		}
	}
	if from >= 0 {
		m.single(g, from, to, best)
	}
}
