package machine

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

const (
	together = check.Together
	cranking = check.Cranking
)

// Prediction is what an ideal display would show at a probing, in SI units.
type Prediction struct {
	Value   float64 // Ω, V DC (mean), V AC as the meter's detector shows it, m for a gap; +Inf where Open
	Open    bool    // an open line: beyond every ohms range of the meter
	Flicker float64 // how far successive displays differ, as a share of Value
	Known   bool    // false: no formula for this pair of points in this state
	Rough   bool    // not Known, and yet Value is an estimate, by a fifth or so
}

func known(v float64) Prediction { return Prediction{Value: v, Known: true} }

// Shows is what a meter shows between two terminals in a state of the machine.
// The leads' own resistance is not in it: that is the meter's business.
//
// Not Known are: terminals that the build has not; amperes; a diode range but at a
// regulator that is unplugged; ohms where a source
// drives a voltage, or of an engine that turns; leads of a plugged generator while
// the rectifier takes current, and from a lead to anything else, where the meter
// itself draws through its diodes; AC on the supply behind a capacitor while the
// generator charges; the exciter into the box above its clamp or against anything
// but the core; AC on an ignition coil that is fired; two broken diodes at once; a
// rectifier with nothing on it.
//
// Within: ohms and volts without a rectifier exact for the circuit; pickup exact
// in its mean; an exciter that the box clamps 4 %; a regulator that holds 0.2 V,
// a series one 0.4 V; currents of a broken winding 2 to 15 % (tests compare with
// time-stepped circuits).
func (m Machine) Shows(p Probing, with meter.Meter) Prediction {
	a, found := m.Build.pointAt(p.Red)
	b, also := m.Build.pointAt(p.Black)
	if !found || !also {
		return Prediction{}
	}
	at := probed{a, b, p.Function, p.State}
	now := m.InState(p.State)
	switch {
	case p.Engine == check.Stopped || !now.loose():
		return now.shows(at, &with)
	case p.Function == meter.VoltsAC && now.feeds(at):
		return Prediction{} // what a contact that comes and goes alternates
	}
	return now.shaking(func(m *Machine) Prediction { return m.shows(at, &with) })
}

// probed is a Probing by points.
type probed struct {
	red, black point
	function   meter.Function
	State
}

// shows is for a machine that is InState, its contacts still.
func (m *Machine) shows(p probed, with *meter.Meter) Prediction {
	switch {
	case p.function == meter.AmpsDC:
		return Prediction{}
	case p.function == meter.Diode:
		return m.diodeRange(p, with)
	case p.red == p.black:
		return known(0)
	case p.function == meter.Ohms:
		return m.ohms(p, with)
	case p.Engine == check.Stopped:
		return m.still(p, with)
	case p.function == meter.VoltsDC:
		return m.direct(p, with)
	}
	return m.alternating(p, with)
}

// shaking is a prediction with loose contacts half way, and how far it moves from
// firm to loosest.
func (m *Machine) shaking(of func(*Machine) Prediction) Prediction {
	out := of(m.loosened(0.5))
	firm, loosest := of(m.loosened(0)), of(m.loosened(1))
	if swing := math.Abs(loosest.Value - firm.Value); swing > 0 && out.Value != 0 {
		out.Flicker += swing / math.Abs(out.Value)
	}
	return out
}

func (m *Machine) loose() bool {
	for _, c := range m.contacts() {
		if c.Loose > 0 {
			return true
		}
	}
	return false
}

// loosened is the machine with that share of what is loose in its contacts.
func (m *Machine) loosened(share float64) *Machine {
	out := *m
	for _, c := range out.contacts() {
		if c.Loose > 0 { // not of an open one without: 0 times +Inf
			c.Ohms += share * c.Loose
			c.Loose = 0
		}
	}
	return &out
}

func (m *Machine) contacts() [15]*Contact {
	h := &m.Harness
	p := &h.ChargePins
	return [...]*Contact{
		&p[0], &p[1], &p[2], &p[3], &h.OtherPins, &h.Feed, &h.Fuse, &h.Plus, &h.Minus, &h.Strap, &h.Key, &h.GroundLead,
		&m.Regulator.Ground, &m.Box.Ground, &m.Box.Feed,
	}
}
