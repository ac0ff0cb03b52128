package machine

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// Speed is the engine's in rpm: 0 stopped, by the starter cranking, else as it
// runs.
func (m Machine) Speed(e check.Engine) float64 {
	if e == cranking {
		return m.CrankingSpeed()
	}
	return m.speed(e)
}

func (m *Machine) speed(e check.Engine) float64 {
	if e == cranking {
		return m.crankingSpeed()
	}
	if rpm := Running(e); rpm > 0 && m.runs > 0 {
		return m.runs
	}
	return Running(e)
}

// still is a voltage of a machine that stands: from the battery alone. On an AC
// dial it depends on the detector, as a meter's self-check finds.
func (m *Machine) still(p probed, with *meter.Meter) Prediction {
	input := float64(with.InputDC)
	if p.function == meter.VoltsAC {
		input = float64(with.InputAC)
	}
	if m.lifted(p) {
		return Prediction{}
	}
	var n net[float64]
	m.wireDirect(&n, p.State, false)
	volts := metered(&n, p, input)
	if p.function == meter.VoltsAC {
		volts = detectorOf(with).of(volts, 0)
	}
	return known(volts)
}

// lifted reports a lead in its plug on a machine whose bad ground may lift the
// frame above the knee of a diode.
func (m *Machine) lifted(p probed) bool {
	lead := atRegulator(p.red) != atRegulator(p.black)
	return lead && p.Plug == together && p.Key && m.Harness.Strap.Ohms > 0.05
}

// metered is what a meter with an input in ohms sees; nothing between two parts
// that no way joins.
func metered(n *net[float64], p probed, input float64) float64 {
	volts, siemens, ok := n.seen(p.red, p.black)
	if !ok {
		return 0
	}
	return volts * siemens / (siemens + 1/input)
}

// direct is the mean voltage of a machine that turns.
func (m *Machine) direct(p probed, with *meter.Meter) Prediction {
	input := float64(with.InputDC)
	if m.excites(p) {
		e, ok := m.excited(p, input)
		return Prediction{Value: e.averages().mean, Flicker: m.unsteady(p.Engine), Known: ok}
	}
	s := m.charge(p.State)
	returned := m.grounded() && (p.red == regulatorBody) != (p.black == regulatorBody) // by the winding, not the body's wire
	if m.bent(p, s) || m.sparking(p) || returned {
		return Prediction{}
	}
	return Prediction{Value: m.supplied(s, p, input), Known: s.Known, Rough: !s.Known}
}

// unsteady is how far a winding's volts differ from display to display: as much
// as the speed does.
func (m *Machine) unsteady(e check.Engine) float64 {
	if e == cranking {
		return m.Starter.Ripple
	}
	return 0
}

// alternating is what the AC dial shows of a machine that turns.
func (m *Machine) alternating(p probed, with *meter.Meter) Prediction {
	input, d := float64(with.InputAC), detectorOf(with)
	if lead, ok := acrossPin(p); ok && Running(p.Engine) > 0 {
		return Prediction{Value: m.pinDrop(lead, p.State), Rough: true}
	}
	if m.excites(p) {
		e, ok := m.excited(p, input)
		return Prediction{Value: d.shows(e.averages()), Flicker: m.unsteady(p.Engine), Known: ok}
	}
	switch {
	case m.sparking(p):
		return Prediction{}
	case sparks(p.red) || sparks(p.black):
		return known(0)
	case m.smeared(p), m.rippled(p):
		return Prediction{}
	}
	rpm := m.speed(p.Engine)
	sine := m.sine(p, rpm, input)
	pulse := m.pulses(p, rpm, input)
	steady, ok := m.beneath(p, d, input)
	out := Prediction{Value: d.of(steady, sine) + pulse.shown(d), Flicker: m.unsteady(p.Engine), Known: ok}
	if sine == 0 && pulse.share == 0 {
		out.Flicker = 0
	}
	return out
}

// rippled reports a supply on which something alternates that no formula has: a
// winding with an end on the core that a shorted diode or thyristor lays across the
// battery.
func (m *Machine) rippled(p probed) bool {
	return m.feeds(p) && (m.Build.Charge == GroundedEnd || m.grounded()) && m.diodeShorted()
}

// beneath is the mean voltage that a detector without a capacitor sees with the
// rest. Where the rectifier takes current there is no formula for what a
// detector shows, but for a mean that hides all that alternates about it.
func (m *Machine) beneath(p probed, d detector, input float64) (volts float64, ok bool) {
	atLeads := atRegulator(p.red) || atRegulator(p.black)
	if !d.seesMean() && (p.Plug != together || !atLeads && !m.feeds(p)) {
		return 0, true
	}
	s := m.charge(p.State)
	switch {
	case m.bent(p, s):
		return 0, false
	case !d.seesMean():
		return 0, s.GeneratorAmps == 0 || !m.feeds(p)
	}
	volts = m.supplied(s, p, input)
	return volts, s.Known
}

// bent reports that the rectifier shapes the voltage that is probed: between
// leads of a winding while it conducts, and from a lead to anything else always, for
// then the meter itself draws a current through its diodes.
func (m *Machine) bent(p probed, s Supply) bool {
	red, black := atRegulator(p.red), atRegulator(p.black)
	if p.Plug != together || !red && !black {
		return false
	}
	apart := red != black || pairOf(p.red) != pairOf(p.black) && m.Build.Charge == TwoPhase
	return m.conducts(s) || m.grounded() || apart && m.Build.Charge != GroundedEnd
}

// pairOf is which of two pairs a lead of two windings is of, on either side of the plug.
func pairOf(p point) int {
	if p >= regulator1 && p < regulator1+4 {
		return int(p-regulator1) / 2
	}
	return int(p-charge1) / 2
}

// feeds reports whether a probing sees the generator's current: not where both
// points are on the same side of it by a wire alone.
func (m *Machine) feeds(p probed) bool {
	on := func(at point) bool {
		return at >= frame && at <= boxFeed && at != boxGround || at == killWire && !m.Build.Exciter()
	}
	return on(p.red) || on(p.black)
}

// sparking reports a probe at the ignition coil, or at a box with a bad ground,
// while the box may drive it.
func (m *Machine) sparking(p probed) bool {
	fed := p.BoxPlugged() || !m.Build.Exciter()
	high := func(at point) bool { return at == sparkLead || at == capEnd } // a killed box leaves it a volt or so
	return fed && (high(p.red) || high(p.black) || (m.driven(p.red) || m.driven(p.black)) && !m.killed(p.State))
}

func (m *Machine) driven(p point) bool {
	return sparks(p) || p == boxGround && m.Box.Ground.Ohms > 1
}

func sparks(p point) bool { return p == coilPrimary || p == sparkLead || p == capEnd }
