package rig_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

// A part that is taken off is read by itself, by formulas and by simulation: a sound
// plug is an open line though the coil behind it is none, and a fouled one changes
// neither coil nor cap.
func TestWhatIsTakenOffIsReadByItself(t *testing.T) {
	cheap := meter.Cheap() // its top range is 2 MΩ
	for _, b := range []machine.Build{machine.Usual(), batteryFed()} {
		sound := machine.Typical(b)
		fouled := sound.With(machine.Fault{Kind: machine.PlugFouled, Size: 5e3})
		broken := sound.With(machine.Fault{Kind: machine.CapBroken})
		coil := sound.Spark.Secondary.Ohms
		for _, c := range []struct {
			id   check.ID
			m    machine.Machine
			want float64
		}{
			{"plug-leak", sound, math.Inf(1)}, {"plug-leak", fouled, 5e3}, {"plug-leak", broken, math.Inf(1)},
			{"plug-cap", sound, sound.Spark.Cap}, {"plug-cap", fouled, sound.Spark.Cap}, {"plug-cap", broken, math.Inf(1)},
			{"coil-secondary", sound, coil}, {"coil-secondary", fouled, coil}, {"coil-secondary", broken, coil},
			{"kill-wire", sound, math.Inf(1)}, {"kill-wire", sound.With(machine.Fault{Kind: machine.KillWire, Size: 20e3}), 20e3},
		} {
			k, ok := check.Find(check.Whole(check.Build{StatorPoles: b.StatorPoles, ChargeLeads: 3, Exciter: b.Exciter(), Pickup: true, GroundLead: b.GroundLead}), c.id)
			require.True(t, ok, c.id)
			p := c.m.Predict(k, cheap, machine.Kit{})
			d, err := rig.Check(c.m, k, rig.Exact(cheap), machine.Kit{})
			require.NoError(t, err)
			if math.IsInf(c.want, 1) {
				assert.True(t, p.Open, "%s by formula", c.id)
				assert.Equal(t, quantity.OverRange, d.State, "%s by simulation", c.id)
				continue
			}
			assert.InEpsilon(t, c.want, p.Value, 0.03, "%s by formula", c.id)
			assert.InEpsilon(t, c.want, d.Value, 0.03, "%s by simulation", c.id)
		}
	}
}

func batteryFed() machine.Build {
	b := machine.Usual()
	b.Ignition = machine.BatteryFed
	return b
}
