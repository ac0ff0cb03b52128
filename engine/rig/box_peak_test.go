package rig_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/rig"
)

// What an adapter holds of a box's discharges into the coil is estimated without
// simulating it: near enough to tell a box that fires from one that does not.
func TestBoxPeaksAreEstimated(t *testing.T) {
	kit := machine.Kit{AdapterFarads: 1e-6, BleederOhms: 10e6}
	battery := machine.Usual()
	battery.Ignition = machine.BatteryFed
	for _, b := range []machine.Build{machine.Usual(), battery} {
		c, ok := check.Find(check.Whole(b.Known()), "box-peak")
		require.True(t, ok)
		for _, f := range []machine.Fault{
			{}, {Kind: machine.SecondaryOpen}, {Kind: machine.PrimaryShorted, Size: 0.6}, {Kind: machine.SecondaryTurns, Size: 0.5}, {Kind: machine.CapBroken},
			{Kind: machine.BoxDead}, {Kind: machine.PrimaryOpen}, {Kind: machine.PickupOpen}, {Kind: machine.KillSwitch},
		} {
			m := machine.Typical(b)
			if f.Kind != "" {
				m = m.With(f)
			}
			name := fmt.Sprint(b.Ignition, " ", f.Kind)
			want := m.Predict(c, meter.Cheap(), kit)
			require.True(t, want.Known || want.Rough, name)
			got, err := rig.Check(m, c, rig.Exact(meter.Cheap()), kit)
			require.NoError(t, err, name)
			if want.Known {
				assert.Zero(t, want.Value, name)
				assert.InDelta(t, 0, got.Value, 2, name)
				continue
			}
			assert.Greater(t, want.Value, 50.0, name)
			assert.InEpsilon(t, want.Value, got.Value, 0.3, name)
			assert.False(t, m.Predict(c, meter.Cheap(), machine.Kit{}).Known, "without an adapter nothing is held")
		}
	}
}
