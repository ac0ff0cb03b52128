package rig

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// wireRegulator lays bridge and thyristors.
func (r *Rig) wireRegulator() {
	reg := r.parts.Regulator
	plus, body := r.node(check.RegulatorPlus), r.node(check.RegulatorBody)
	r.contact(body, r.node(check.Frame), reg.Ground)
	low, high := r.gates(sense(plus, body))
	for lead := 1; lead <= r.made.Build.Charge.Leads(); lead++ {
		at := r.node(check.RegulatorLead(lead))
		upper, lower := reg.Upper[lead-1], reg.Lower[lead-1]
		switch r.made.Build.Regulating {
		case machine.HalfWave:
			r.valve(at, plus, upper, low)
			continue
		case machine.Series:
			r.valve(at, plus, upper, low)
		case machine.Shunt:
			r.valve(at, plus, upper, nil)
			if high != nil {
				r.valves = append(r.valves, r.c.Thyristor(at, body, r.junction(), high))
			}
		}
		r.valve(body, at, lower, nil)
	}
}

// gates fire the thyristors below and above the set point; nil where none is
// needed: a series thyristor that always fires is a diode, a shunt thyristor that
// never does is not there.
func (r *Rig) gates(sensed func(*transient.State) float64) (low, high transient.Gate) {
	stuck := func(fires bool) transient.Gate {
		return func(*transient.State) bool { return fires }
	}
	set := r.parts.Regulator.SetPoint
	switch {
	case r.turn.still(), r.parts.Regulator.Thyristors == machine.NeverFire: // at rest nothing feeds what fires them
		return stuck(false), nil
	case r.parts.Regulator.Thyristors == machine.AlwaysFire:
		return nil, stuck(true)
	}
	return func(s *transient.State) bool { return sensed(s) < set }, func(s *transient.State) bool { return sensed(s) > set }
}

// sense is the voltage that a regulator acts on: smoothed, so that it holds the
// mean and not the peaks of the ripple.
func sense(plus, body transient.Node) func(*transient.State) float64 {
	smoothed, last, begun := 0.0, 0.0, false
	return func(s *transient.State) float64 {
		v, now := s.Between(plus, body), s.Time()
		switch {
		case !begun:
			smoothed, begun = v, true
		case now > last:
			smoothed += (v - smoothed) * -math.Expm1((last-now)/machine.SenseTime)
		}
		last = now
		return smoothed
	}
}

// valve is a diode, or a thyristor where there is a gate, in the state it is in.
func (r *Rig) valve(anode, cathode transient.Node, state machine.Diode, gate transient.Gate) {
	switch {
	case state == machine.DiodeOpen:
	case state == machine.DiodeShorted:
		r.join(anode, cathode, shortedDiode)
	case gate != nil:
		r.valves = append(r.valves, r.c.Thyristor(anode, cathode, r.junction(), gate))
	default:
		r.valves = append(r.valves, r.c.Diode(anode, cathode, r.junction()))
	}
}

// shortedDiode is what is left of one, in Ω. An assumption, no source.
const shortedDiode = 1e-3

func (r *Rig) junction() transient.Junction {
	j := r.parts.Regulator.Junction
	return transient.Junction{Volts: j.Volts, Ohms: j.Ohms}
}
