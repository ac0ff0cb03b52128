package rig

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// wireGenerator lays the charge and lighting windings and the plug.
func (r *Rig) wireGenerator() {
	b := r.made.Build
	for i := range b.Charge.Phases() {
		from, to, lag := r.ends(i)
		r.phases = append(r.phases, r.wireCoil(from, to, r.parts.Phases[i], r.linked(r.parts.Phases[i], lag)))
	}
	if b.Charge == machine.Star {
		r.join(r.c.Node("neutral"), transient.Ground, r.parts.Neutral.Ohms)
	}
	if k := r.parts.Bridge; k.From > 0 {
		r.join(r.node(check.Charge(k.From)), r.node(check.Charge(k.To)), k.Ohms)
	}
	for lead := 1; lead <= b.Charge.Leads(); lead++ {
		if r.state.Plug == check.Together {
			r.contact(r.node(check.Charge(lead)), r.node(check.RegulatorLead(lead)), r.parts.Harness.ChargePins[lead-1])
		}
	}
	if b.GroundLead {
		r.contact(r.node(check.GroundLead), transient.Ground, r.parts.Harness.GroundLead)
	}
	if b.Lighting {
		r.wireCoil(r.node(check.LightingLead), transient.Ground, r.parts.Lighting, r.linked(r.parts.Lighting, 0))
	}
}

// ends are where a phase begins and ends, and by how much it lags, in rad.
func (r *Rig) ends(i int) (from, to transient.Node, lag float64) {
	lead := func(n int) transient.Node { return r.node(check.Charge(n)) }
	switch r.made.Build.Charge {
	case machine.Star:
		return lead(i + 1), r.c.Node("neutral"), float64(i) * 2 * math.Pi / 3
	case machine.Delta:
		return lead(i + 1), lead((i+1)%3 + 1), float64(i) * 2 * math.Pi / 3
	case machine.TwoPhase:
		return lead(2*i + 1), lead(2*i + 2), float64(i) * math.Pi / 2
	case machine.GroundedEnd:
		return lead(1), transient.Ground, 0
	}
	return lead(1), lead(2), 0
}

// linked is the emf of a coil that the magnets' flux passes.
func (r *Rig) linked(c machine.Coil, lag float64) emfOf {
	pairs := float64(r.made.Build.MagnetPoles) / 2
	return func(share float64) transient.Source {
		return r.turn.emf(c.Turns*share*machine.WindingFactor*r.parts.Magnets.Flux, pairs, lag)
	}
}
