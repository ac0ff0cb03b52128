package rig

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// What the magnets give in a second, copper, diodes, wires, lamp and battery take:
// over whole periods nothing is left in inductances, little in the battery's layer.
func TestEnergyIsKept(t *testing.T) {
	for _, connection := range []machine.Connection{machine.Star, machine.Delta, machine.SinglePhase, machine.TwoPhase} {
		for _, k := range []machine.Kind{machine.NoRegulating, machine.LowSetPoint, machine.DiodeIsOpen, machine.DiodeIsShorted} {
			b := machine.Usual()
			b.Charge = connection
			m := machine.Typical(b).With(machine.Fault{Kind: k, At: 1, Size: 13.6})
			m.Harness.Drain = 0
			e := measureEnergy(t, wired(m, machine.State{Plug: check.Together, Engine: check.At3000}, charging))
			what := fmt.Sprintf("%s %s: %+v", connection, k, e)
			require.Greater(t, e.given, 20.0, what)
			assert.InEpsilon(t, e.given, e.copper+e.leads, 0.01, what)
			assert.InEpsilon(t, e.leads, e.diodes+e.wires+e.lamp+e.battery, 0.02, what)
			assert.Positive(t, min(e.copper, e.diodes, e.wires, e.lamp), what)
		}
	}
}

// energy is mean powers in W.
type energy struct {
	given   float64 // by the emfs of all phases
	copper  float64 // lost in them
	leads   float64 // handed over at the regulator
	diodes  float64 // and thyristors
	wires   float64
	lamp    float64
	battery float64 // into its posts
}

func measureEnergy(t *testing.T, r *Rig) energy {
	var e energy
	emfs := make([]transient.Source, len(r.phases))
	for i := range emfs {
		_, _, lag := r.ends(i)
		emfs[i] = r.linked(r.parts.Phases[i], lag)(1)
	}
	run, err := r.c.Start(r.step() / 4)
	require.NoError(t, err)
	require.NoError(t, run.Advance(0.4, nil))
	const over = 0.2
	h, b := r.parts.Harness, r.node
	leads := r.made.Build.Charge.Leads()
	require.NoError(t, run.Advance(0.4+over, func(s *transient.State) {
		share := s.Dt() / over
		out := make([]float64, leads+1) // A out of each lead
		for i, p := range r.phases {
			amps := s.Amps(p)
			// A step's emf at its middle, as its current is a straight line.
			e.given += emfs[i].At(s.Time()) * amps * share
			e.copper += r.parts.Phases[i].Ohms * amps * amps * share
			from, to := r.leadsOf(i)
			out[from] += amps
			if to > 0 {
				out[to] -= amps
			}
		}
		lost := 0.0
		for lead := 1; lead <= leads; lead++ {
			e.leads += s.Volts(b(check.Charge(lead))) * out[lead] * share
			lost += out[lead] * (s.Volts(b(check.Charge(lead))) - s.Volts(b(check.RegulatorLead(lead))))
			e.diodes += out[lead] * s.Between(b(check.RegulatorLead(lead)), b(check.RegulatorBody)) * share
		}
		plus, body := b(check.RegulatorPlus), b(check.RegulatorBody)
		feed, battery := s.Amps(r.feed), s.Between(b(check.PlusClamp), b(check.BatteryPlus))/h.Plus.Ohms
		lamp := s.Between(b(check.KeyOut), b(check.Frame)) / h.Lamp
		e.diodes -= feed * s.Between(plus, body) * share
		e.lamp += lamp * lamp * h.Lamp * share
		e.battery += battery * s.Between(b(check.BatteryPlus), b(check.BatteryMinus)) * share
		lost += feed*feed*h.Feed.Ohms + battery*battery*(h.Fuse.Ohms+h.Plus.Ohms+h.Minus.Ohms) + lamp*lamp*h.Key.Ohms
		lost += feed*feed*r.parts.Regulator.Ground.Ohms + battery*battery*h.Strap.Ohms
		e.wires += lost * share
	}))
	return e
}

// leadsOf are the leads that a phase lies between, 0 for what is no lead.
func (r *Rig) leadsOf(i int) (from, to int) {
	switch r.made.Build.Charge {
	case machine.Star:
		return i + 1, 0
	case machine.Delta:
		return i + 1, (i+1)%3 + 1
	}
	return 2*i + 1, 2*i + 2
}

// A box fires at every turn of the crank: as often as a two-stroke single does,
// twice as often as a four-stroke needs.
func TestTheBoxFiresAtEveryTurn(t *testing.T) {
	for _, e := range []check.Engine{check.Idling, check.At3000, check.At5000} {
		r := New(machine.Typical(machine.Usual()), machine.State{Plug: check.Together, Engine: e})
		require.NoError(t, r.Run(1.005))
		assert.InDelta(t, machine.Firing(machine.Running(e), 2, 1), float64(r.spark.sparks), 1.1, "engine %v", e)
		assert.Greater(t, r.spark.peak, 7e3)
	}
	dead := New(machine.Typical(machine.Usual()).With(machine.Fault{Kind: machine.KillSwitch}), machine.State{Plug: check.Together, Engine: check.At3000})
	require.NoError(t, dead.Run(0.5))
	assert.Zero(t, dead.spark.sparks)
	assert.False(t, math.IsNaN(dead.spark.peak))
}
