package machine

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/circuit"
)

// Supply is how generator, battery and loads come to terms.
type Supply struct {
	RPM            float64
	RegulatorVolts float64 // from its plus to its body
	BatteryVolts   float64 // between the posts
	GeneratorAmps  float64 // mean
	BatteryAmps    float64 // into the battery; below zero it gives
	LoadAmps       float64 // what neither makes up: generator less battery
	RippleAmps     float64 // rms of what alternates in the generator's, unregulated
	Holding        bool    // the regulator keeps the voltage down
	Known          bool    // false: faults together for which there is no formula

	returns  point // where the generator's current comes back
	charging bool
}

// ChargeState is the balance in a state: the generator's current into the voltage
// that it meets is what battery and loads take, and where that voltage would pass
// the set point the regulator lets through no more than keeps it there. With the
// plug apart or the engine stopped the generator gives none.
func (m Machine) ChargeState(s State) Supply {
	now := m.InState(s)
	if s.Engine != check.Stopped && now.loose() {
		return now.loosened(0.5).chargeState(s)
	}
	return now.chargeState(s)
}

func (m *Machine) chargeState(s State) Supply {
	out := m.charge(s)
	out.RegulatorVolts = m.supplied(out, probed{red: regulatorPlus, black: regulatorBody, State: s}, math.Inf(1))
	out.BatteryVolts = m.supplied(out, probed{red: batteryPlus, black: batteryMinus, State: s}, math.Inf(1))
	ohms := m.Battery.Ohms
	if out.charging {
		ohms += m.Battery.Accept
	}
	out.BatteryAmps = (out.BatteryVolts - m.RestVolts()) / max(ohms, least)
	out.LoadAmps = out.GeneratorAmps - out.BatteryAmps
	return out
}

// charge is the balance alone.
func (m *Machine) charge(s State) Supply {
	g := m.generator(s)
	out := Supply{RPM: g.rpm, Known: g.known, returns: g.returns}
	if g.n == 0 {
		return out
	}
	l := load{}
	var open bool
	l.gives, l.sensedGives, open = m.linesOf(s, g.returns, false)
	if open { // what a rectifier without a load gives is not told
		out.Known = false
		return out
	}
	if g.at(l.gives.volts).amps == 0 {
		return out
	}
	l.takes, l.sensedTakes, _ = m.linesOf(s, g.returns, true)
	out.GeneratorAmps = m.balance(&g, &l, &out)
	out.charging = l.charges(out.GeneratorAmps) && m.steadied()
	out.Known = out.Known && m.steadied()
	return out
}

// supplied is the mean voltage between two points with the generator's current
// flowing.
func (m *Machine) supplied(s Supply, p probed, input float64) float64 {
	var n net[float64]
	m.wireDirect(&n, p.State, s.charging)
	n.feed(regulatorPlus, s.returns, s.GeneratorAmps)
	return metered(&n, p, input)
}

// line is a voltage that rises with the generator's current.
type line struct{ volts, ohms float64 }

func (l line) at(amps float64) float64 { return l.volts + l.ohms*amps }

// load is what the generator meets: the voltage where its current goes in and
// comes out, with a battery that gives and with one that takes. The one that is
// higher holds, as taking meets more resistance. Sensed is what the regulator
// looks at, from its plus to its body.
type load struct {
	gives, takes             line
	sensedGives, sensedTakes line
}

// linesOf is the voltage from the regulator's plus to where the current comes
// back, and to its body. Where that is another point, the slope is found with a
// current of 1 A.
func (m *Machine) linesOf(s State, returns point, charging bool) (met, sensed line, open bool) {
	var n net[float64]
	m.wireSupply(&n, s, charging)
	volts, siemens, ok := n.seen(regulatorPlus, returns)
	if !ok {
		return line{}, line{}, true
	}
	met = line{volts, 1 / siemens}
	if returns == regulatorBody {
		return met, met, false
	}
	none := m.sensing(s, returns, 0, charging)
	return met, line{none, m.sensing(s, returns, 1, charging) - none}, false
}

func (m *Machine) sensing(s State, returns point, amps float64, charging bool) float64 {
	var n net[float64]
	m.wireSupply(&n, s, charging)
	n.feed(regulatorPlus, returns, amps)
	volts, _, _ := n.seen(regulatorPlus, regulatorBody)
	return volts
}

func (l *load) charges(amps float64) bool { return l.takes.at(amps) > l.gives.at(amps) }

func (l *load) at(amps float64) float64 { return max(l.gives.at(amps), l.takes.at(amps)) }

func (l *load) sensed(amps float64) float64 {
	if l.charges(amps) {
		return l.sensedTakes.at(amps)
	}
	return l.sensedGives.at(amps)
}

// ampsAt is the current at which the regulator senses a voltage, 0 if it does
// without.
func (l *load) ampsAt(volts float64) float64 {
	g := (volts - l.sensedGives.volts) / l.sensedGives.ohms
	t := (volts - l.sensedTakes.volts) / l.sensedTakes.ohms
	if l.charges(t) {
		return max(t, 0)
	}
	return max(g, 0)
}

// balance is the generator's current, and whether the regulator holds it down.
func (m *Machine) balance(g *generator, l *load, out *Supply) float64 {
	full := g.into(l)
	out.RippleAmps = full.ripple
	if m.Regulator.Thyristors != Regulate || l.sensed(full.amps) <= m.Regulator.SetPoint {
		return full.amps
	}
	out.Holding = true
	out.Known = out.Known && m.holdsMean(l, full.amps)
	return m.held(l, full.amps)
}

// into is the current at which the generator's and what it meets agree. The one
// falls and the other rises with the voltage, so that there is one; found by the
// rule of false position, with the weight of an end that stays halved (Illinois).
func (g *generator) into(l *load) current {
	quick := 0.0
	switch {
	case g.pulses():
		quick = l.gives.ohms
		g.pulsed = quick
		defer func() { g.pulsed = 0 }()
	case g.n == 1 && g.terms[0].arrangement == circuit.FullWaveDiodeShorted:
		// Half sines weigh a resistance by π²/4 of their mean (<i²>/<i>, derived).
		quick = -l.gives.ohms * (math.Pi*math.Pi/4 - 1)
	}
	excess := func(amps float64) (current, float64) {
		c := g.at(l.at(amps) - quick*amps)
		return c, c.amps - amps
	}
	c, above := excess(0)
	low, high := 0.0, c.amps
	c, below := excess(high)
	if high == 0 || below == 0 {
		return c
	}
	stayed := 0 // which end did in the last step, below or above zero
	for range mostTries {
		x := (low*below - high*above) / (below - above)
		next, f := excess(x)
		if math.Abs(f) <= closeEnough*(1+x) {
			return next
		}
		if f > 0 {
			if low, above = x, f; stayed > 0 {
				below /= 2
			}
			stayed = 1
			continue
		}
		if high, below, c = x, f, next; stayed < 0 {
			above /= 2
		}
		stayed = -1
	}
	return c
}

// The tables of the generator's current are good to 1 %.
const (
	closeEnough = 1e-4
	mostTries   = 40
)
