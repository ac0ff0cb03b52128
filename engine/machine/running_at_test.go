package machine_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

// At the speeds that a state can name, the throttle held there changes nothing.
func TestAHeldThrottleAgreesWithTheNamedSpeeds(t *testing.T) {
	for name, b := range builds() {
		m := machine.Drawn(b, machine.NewChance(11))
		for _, e := range []check.Engine{check.Idling, check.At3000, check.At5000} {
			named := m.ChargeState(machine.State{Plug: check.Together, Engine: e, Key: true})
			assert.Equal(t, named, m.ChargeAt(machine.Running(e), false), "%s at %v", name, e)
			assert.Equal(t, machine.Running(e), m.RunningAt(machine.Running(e)).Speed(check.Idling))
		}
		rest := m.ChargeAt(0, false)
		assert.Zero(t, rest.GeneratorAmps, name)
		assert.InDelta(t, m.RestVolts(), rest.BatteryVolts, 0.01, name)
		assert.Equal(t, m.CrankingSpeed(), m.RunningAt(4000).Speed(check.Cranking), "the starter has its own speed")
		assert.Zero(t, m.RunningAt(4000).Speed(check.Stopped))
		assert.Equal(t, m, m.RunningAt(-1))
	}
}

// The open circuit rises with the speed as it does in the books, in a line.
func TestOpenVoltsAreInALineWithTheSpeed(t *testing.T) {
	m := machine.Typical(machine.Usual())
	p := machine.Probing{Red: "charge-1", Black: "charge-2", Function: meter.VoltsAC, State: machine.State{Plug: check.Apart, Engine: check.At3000, Key: true}}
	at := func(rpm float64) float64 {
		got := m.RunningAt(rpm).Shows(p, meter.Auto6000())
		require.True(t, got.Known)
		return got.Value
	}
	assert.InEpsilon(t, 2*at(1500), at(3000), 1e-4)
	assert.InEpsilon(t, at(3000)*5/3, at(5000), 1e-4)
}

// Without a regulator the current never falls with the speed.
func TestTheCurrentRisesWithTheSpeed(t *testing.T) {
	for name, b := range builds() {
		m := machine.Typical(b).With(machine.Fault{Kind: machine.NoRegulating})
		last := 0.0
		for rpm := 1000.0; rpm <= 6000; rpm += 250 {
			now := m.ChargeAt(rpm, false).GeneratorAmps
			assert.GreaterOrEqual(t, now, last*0.98, "%s at %v", name, rpm)
			last = max(last, now)
		}
		assert.Positive(t, last, name)
	}
}
