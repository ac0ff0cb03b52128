package machine

import (
	"math"

	"coilbook/engine/circuit"
)

// generator is what gives current into the supply at a speed: rectified sources
// side by side.
type generator struct {
	rpm     float64
	terms   [6]term
	n       int
	diode   Junction
	pulsed  float64 // Ω that pulses of current meet on their way, not their mean
	returns point   // regulator's body, or the core where the winding lies on it
	known   bool
}

// term is one of them, with how much of its current counts.
type term struct {
	arrangement circuit.Arrangement
	source      circuit.Source
	weight      float64
}

func (g *generator) add(a circuit.Arrangement, s circuit.Source, weight float64) {
	if s.Peak > 0 && weight != 0 && s.Ohms < most && g.n < len(g.terms) {
		g.terms[g.n] = term{a, s, weight}
		g.n++
	}
}

type current struct{ amps, ripple float64 }

// at is the mean current into a voltage.
func (g *generator) at(volts float64) current {
	sink := circuit.Sink{Volts: max(volts, 0), DiodeVolts: g.diode.Volts, DiodeOhms: g.diode.Ohms}
	var out current
	for _, t := range g.terms[:g.n] {
		sink.DiodeOhms = g.diode.Ohms + g.pulsed/float64(t.arrangement.Drops())
		c := t.arrangement.Charging(t.source, sink)
		out.amps += t.weight * c.Mean
		out.ripple = math.Hypot(out.ripple, max(t.weight, 0)*c.Ripple)
	}
	out.amps = max(out.amps, 0)
	return out
}

// pulses reports a current that comes in pulses with nothing between: what it drops
// over a wire grows with the pulse. That of more sources than one hardly
// alternates, and behind a shorted diode most of the pulse takes another way.
func (g *generator) pulses() bool {
	if g.n != 1 {
		return false
	}
	switch g.terms[0].arrangement {
	case circuit.FullWave, circuit.FullWaveDiodeOpen, circuit.HalfWave:
		return true
	}
	return false
}

// generator of a machine in a state; none with the plug apart, nor where the
// thyristors keep all from the battery.
func (m *Machine) generator(s State) generator {
	g := generator{rpm: m.speed(s.Engine), returns: regulatorBody, known: true, diode: m.Regulator.Junction}
	if m.Build.Charge == GroundedEnd {
		g.returns = core
	}
	if g.rpm == 0 || s.Plug != together || m.blocks() {
		return g
	}
	w := m.windingAt(g.rpm)
	switch {
	case m.Build.Charge == GroundedEnd:
		m.halfWave(&g, &w)
	case m.grounded():
		m.groundedTerms(&g, &w)
	case m.Bridge.Ohms < most:
		m.bridged(&g, &w)
	case m.Build.Charge == Star:
		m.star(&g, &w)
	case m.Build.Charge == Delta:
		m.delta(&g, &w)
	default:
		for i := range m.Build.phases() {
			m.single(&g, 2*i, 2*i+1, w.coil(i))
		}
	}
	return g
}

// blocks reports thyristors that let nothing through to the battery: a shunt
// regulator's that short the leads, a series one's that stay off.
func (m *Machine) blocks() bool {
	if m.Build.Regulating == Shunt {
		return m.Regulator.Thyristors == AlwaysFire
	}
	return m.Regulator.Thyristors == NeverFire
}

func (m *Machine) halfWave(g *generator, w *winding) {
	if m.Regulator.Upper[0] != DiodeGood {
		return // open, or joined to the battery by the net
	}
	var n net[complex128]
	n.wind(charge1, core, phaseTouch1, w.phases[0])
	volts, siemens, ok := n.seen(charge1, core)
	if ok && m.pin(0) < most {
		g.add(circuit.HalfWave, w.source(leg[complex128]{volts, 1 / siemens}, m.pin(0)), 1)
	}
}

// single is a full wave between two leads.
func (m *Machine) single(g *generator, a, b int, l leg[complex128]) {
	pins := m.pin(a) + m.pin(b)
	if !(pins < most) || !(real(l.ohms) < most) {
		return
	}
	w := winding{hertz: m.hertz(g.rpm)}
	g.add(m.ofDiodes(g, fullWaves, a, b), w.source(l, pins), 1)
}

// arrangements by what one diode is.
type arrangements [3]circuit.Arrangement

var (
	stars     = arrangements{circuit.StarBridge, circuit.StarDiodeOpen, circuit.StarDiodeShorted}
	fullWaves = arrangements{circuit.FullWave, circuit.FullWaveDiodeOpen, circuit.FullWaveDiodeShorted}
)

// ofDiodes chooses by the diodes of the leads that carry current. For more than
// one broken diode there is no arrangement.
func (m *Machine) ofDiodes(g *generator, of arrangements, leads ...int) circuit.Arrangement {
	worst, broken := DiodeGood, 0
	for _, i := range leads {
		for _, d := range [...]Diode{m.Regulator.Upper[i], m.Regulator.Lower[i]} {
			if d != DiodeGood {
				broken++
				worst = max(worst, d)
			}
		}
	}
	if broken > 1 {
		g.known = false
	}
	return of[worst]
}
