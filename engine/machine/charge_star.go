package machine

import (
	"math/cmplx"

	"coilbook/engine/circuit"
)

// star is three phases: all of them, or two in series. One that has more ohms
// than the others lies between a sound one and none.
func (m *Machine) star(g *generator, w *winding) {
	var legs [3]leg[complex128]
	var contacts [3]float64
	live := make([]int, 0, 3)
	for i := range legs {
		legs[i] = w.coil(i)
		legs[i].ohms += complex(min(m.pin(i), most), 0)
		contacts[i] = m.Phases[i].Joint + m.pin(i)
		if real(legs[i].ohms) < most {
			live = append(live, i)
		}
	}
	switch len(live) {
	case 2:
		m.two(g, w, legs, live[0], live[1], 1)
	case 3:
		weak, extra := weakest(contacts)
		part := share(extra*starJoint, legs[(weak+1)%3].ohms)
		g.add(m.ofDiodes(g, stars, 0, 1, 2), w.mean(legs, weak, extra), part)
		m.two(g, w, legs, (weak+1)%3, (weak+2)%3, 1-part)
	}
}

// two is two phases of a star in series; the third gives nothing.
func (m *Machine) two(g *generator, w *winding, legs [3]leg[complex128], a, b int, weight float64) {
	if weight < 1e-3 {
		return
	}
	both := leg[complex128]{legs[a].volts - legs[b].volts, legs[a].ohms + legs[b].ohms}
	g.add(m.ofDiodes(g, fullWaves, a, b), w.source(both, 0), weight)
}

// weakest is the phase with the most ohms in its contacts, and by how much it
// has more than the mean of the others.
func weakest(contacts [3]float64) (at int, extra float64) {
	for i, ohms := range contacts {
		if ohms > contacts[at] {
			at = i
		}
	}
	return at, contacts[at] - (contacts[(at+1)%3]+contacts[(at+2)%3])/2
}

// What ohms in one phase count for in share: a fit to a time-stepped star and a
// delta at three speeds, from a third of a phase's impedance to ten times it, good
// to 4 % of the current.
const starJoint, deltaJoint = 1.2, 2

// share is how much of the whole current is left beside that with the weak part
// gone: all with no ohms more, none with many.
func share(extra float64, sound complex128) float64 {
	return cmplx.Abs(sound) / cmplx.Abs(sound+complex(extra, 0))
}

// mean is three legs as if alike, without what the weakest has more.
func (w *winding) mean(legs [3]leg[complex128], weak int, extra float64) circuit.Source {
	legs[weak].ohms -= complex(extra, 0)
	var out circuit.Source
	for _, l := range legs {
		s := w.source(l, 0)
		out.Peak += s.Peak / 3
		out.Ohms += s.Ohms / 3
		out.Henries += s.Henries / 3
	}
	out.Hertz = w.hertz
	return out
}
