package machine

import (
	"math"

	"coilbook/engine/circuit"
)

func (m *Machine) grounded() bool {
	for i := range m.Build.phases() {
		if m.Phases[i].Ground.Ohms < most {
			return true
		}
	}
	return m.Build.Charge == Star && m.Neutral.Ohms < most
}

// bridged is a winding with two leads in touch: three leads give one full wave
// against the third; of two phases the one that is shorted gives none.
func (m *Machine) bridged(g *generator, w *winding) {
	if m.Build.leads() == 3 {
		third := 3 - (m.Bridge.From - 1) - (m.Bridge.To - 1)
		if l, ok := m.between(w, chargeLead(m.Bridge.From-1), chargeLead(third)); ok {
			m.single(g, m.Bridge.From-1, third, l)
		}
		return
	}
	for i := range m.Build.phases() {
		if l, ok := m.between(w, chargeLead(2*i), chargeLead(2*i+1)); ok {
			m.single(g, 2*i, 2*i+1, l)
		}
	}
}

// groundedTerms is a winding that lies on the core, and so on the regulator's
// ground: each lead that has a voltage to the core gives what a full wave with
// one diode shorted gives, as its lower halves are short circuits there too.
// Leads are taken one by one, though they share wire; asOne makes up for it.
func (m *Machine) groundedTerms(g *generator, w *winding) {
	g.returns = core
	for i := range m.Build.leads() {
		l, ok := m.between(w, chargeLead(i), core)
		if !ok {
			m.ungrounded(g, w, i)
			continue
		}
		if !(m.pin(i) < most) || m.Regulator.Upper[i] == DiodeOpen {
			continue
		}
		g.known = g.known && m.Regulator.Upper[i] == DiodeGood && m.Regulator.Lower[i] == DiodeGood
		g.add(circuit.FullWaveDiodeShorted, w.source(l, m.pin(i)), 1)
	}
	for i := range m.Build.phases() {
		if at := m.Phases[i].Ground; m.Build.leads() == 3 && at.Ohms < most && m.Neutral.Ohms >= most {
			m.asOne(g, w, i, at.At)
			return
		}
	}
}

// deltaTouch is how much more is to be made up for at the middle of a branch than
// at its ends: a fit to a time-stepped delta at three speeds, good to 10 %.
const deltaTouch = 0.75

// asOne makes up for leads that were taken one by one, between ends that are
// known. With the neutral on the core they have nothing in common, and nothing is
// to make up for; a lead on the core is a star with one diode shorted, of which
// one by one gives two pairs of phases. Between them, in proportion.
func (m *Machine) asOne(g *generator, w *winding, phase int, at float64) {
	share := 1 - at
	a, b := w.source(w.coil((phase+1)%3), m.pin((phase+1)%3)), w.source(w.coil((phase+2)%3), m.pin((phase+2)%3))
	one := circuit.Source{Peak: (a.Peak + b.Peak) / 2, Ohms: (a.Ohms + b.Ohms) / 2, Henries: (a.Henries + b.Henries) / 2, Hertz: w.hertz}
	if m.Build.Charge == Delta {
		share = 1 + deltaTouch*(1-math.Abs(1-2*at))
		one = circuit.Source{Peak: one.Peak / math.Sqrt(3), Ohms: one.Ohms / 3, Henries: one.Henries / 3, Hertz: w.hertz}
	}
	pairs := circuit.Source{Peak: one.Peak * math.Sqrt(3), Ohms: 2 * one.Ohms, Henries: 2 * one.Henries, Hertz: w.hertz}
	g.add(circuit.StarDiodeShorted, one, share)
	g.add(circuit.FullWaveDiodeShorted, pairs, -2*share)
}

// ungrounded is the other of two phases.
func (m *Machine) ungrounded(g *generator, w *winding, lead int) {
	if m.Build.Charge == TwoPhase && lead%2 == 0 {
		m.single(g, lead, lead+1, w.coil(lead/2))
	}
}
