package rig

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// motion is how the crank turns: omega is its mean speed in rad/s, and once in
// two turns compression takes and gives the share ripple of it.
type motion struct {
	omega, ripple float64
}

func (r *Rig) motion() motion {
	switch r.state.Engine {
	case check.Stopped:
		return motion{}
	case check.Cranking:
		return motion{omega: r.cranking(), ripple: r.parts.Starter.Ripple}
	}
	return motion{omega: machine.Running(r.state.Engine) * 2 * math.Pi / 60}
}

func (m motion) still() bool { return m.omega == 0 }

// beat is the frequency of compression.
func (m motion) beat() float64 { return m.omega / 2 }

// angle is how far the crank has turned since the start, in rad.
func (m motion) angle(t float64) float64 {
	if m.ripple == 0 {
		return m.omega * t
	}
	return m.omega*t + m.ripple*m.omega/m.beat()*math.Sin(m.beat()*t)
}

// speed is that of the crank at a time.
func (m motion) speed(t float64) float64 {
	return m.omega * (1 + m.ripple*math.Cos(m.beat()*t))
}

// emf is the voltage of a winding whose flux linkage swings between ± linkage as
// magnets pass, pairs of them in a turn: minus its change in time.
func (m motion) emf(linkage float64, pairs, lag float64) transient.Source {
	if m.still() || linkage == 0 {
		return transient.Constant(0)
	}
	if m.ripple == 0 {
		return transient.Sine{Volts: linkage * pairs * m.omega, Hertz: pairs * m.omega / (2 * math.Pi), Phase: -lag}
	}
	return transient.Func(func(t float64) float64 {
		return linkage * pairs * m.speed(t) * math.Sin(pairs*m.angle(t)-lag)
	})
}

// pulses is the voltage of a pickup: its flux rises as one edge of the reluctor
// enters and falls as the other leaves, once in a turn.
func (m motion) pulses(turns float64, nose machine.Reluctor, at float64) transient.Source {
	if m.still() {
		return transient.Constant(0)
	}
	flux := nose.Flux * math.Exp(-2*math.Pi*(nose.Gap-nose.Usual)/nose.Lambda)
	half, edge := nose.Arc/2*math.Pi/180, nose.Edge*math.Pi/180
	slope := func(x float64) float64 {
		if math.Abs(x) > 12*edge {
			return 0
		}
		c := math.Cosh(x / edge)
		return 1 / (edge * c * c)
	}
	return transient.Func(func(t float64) float64 {
		turn := math.Remainder(m.angle(t)-at, 2*math.Pi)
		return turns * flux / 2 * m.speed(t) * (slope(turn+half) - slope(turn-half))
	})
}

// step is short against the electrical period and against a reluctor's edge.
func (r *Rig) step() float64 {
	if r.turn.still() {
		return 1e-4
	}
	perTurn := max(48*float64(r.made.Build.MagnetPoles)/2, 288)
	return 2 * math.Pi / r.turn.omega / perTurn
}

// cranking is the speed at which the starter turns the crank, in rad/s: by what
// is left at the battery's posts while it draws.
func (r *Rig) cranking() float64 {
	b := r.made.Build
	if b.Kick {
		return r.parts.Starter.PerVolt * float64(b.Volts) * 2 * math.Pi / 60
	}
	still := &Rig{made: r.made, state: r.state, parts: r.parts}
	still.wireSupply()
	s, err := still.c.AtRest(0)
	if err != nil {
		return 0
	}
	volts := s.Between(still.node(check.BatteryPlus), still.node(check.BatteryMinus))
	if volts < machine.TurnsFrom*float64(b.Volts) {
		return 0
	}
	return r.parts.Starter.PerVolt * volts * 2 * math.Pi / 60
}
