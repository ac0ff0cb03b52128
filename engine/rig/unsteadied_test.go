package rig_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/rig"
)

// What a formula roughly says of a regulator whose battery is cut off is near what the
// circuit in time shows: well under the set point, most of all with one phase.
func TestWithoutABatteryTheMeanFalls(t *testing.T) {
	for _, charge := range []machine.Connection{machine.Star, machine.Delta, machine.SinglePhase} {
		b := machine.Usual()
		b.Charge = charge
		m := machine.Typical(b).With(machine.Fault{Kind: machine.MainFuse})
		state := machine.State{Plug: check.Together, Engine: check.At5000, Key: true}
		d, err := rig.Show(m, machine.Probing{
			Red: check.RegulatorPlus, Black: check.RegulatorBody, Function: meter.VoltsDC, State: state,
		}, rig.Exact(meter.Auto6000()), "")
		assert.NoError(t, err, charge)
		s := m.ChargeState(state)
		assert.False(t, s.Known, charge)
		assert.InDelta(t, d.Value, s.RegulatorVolts, 0.8, charge)
		assert.Less(t, s.RegulatorVolts, m.Regulator.SetPoint-1, charge)
	}
}
