package rig_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/rig"
)

// Where the formula is sure of a spark, or of none, the simulation sees the same,
// over faults of the ignition and both feeds.
func TestSparksAgree(t *testing.T) {
	sure, wrong, open := 0, 0, 0
	for _, feed := range []machine.Feed{machine.ACFed, machine.BatteryFed} {
		b := machine.Usual()
		b.Ignition = feed
		for i, k := range append([]machine.Kind{""}, machine.Kinds()...) {
			if k != "" && k.Charging() {
				continue
			}
			for n := range uint64(3) {
				c := machine.NewChance(n + 100*uint64(i))
				m := machine.Drawn(b, c)
				if f, ok := c.Sized(k, b); ok {
					m = m.With(f)
				}
				for _, look := range check.Whole(b.Known()) {
					if look.Instrument != check.Eyes || look.Engine != check.Cranking {
						continue
					}
					p := m.Predict(look, meter.Cheap(), machine.Kit{}).Value
					yes, err := rig.Seen(m, look, 0)
					require.NoError(t, err)
					switch {
					case p > 0.1 && p < 0.9:
						open++
					default:
						if sure++; (p > 0.5) != yes {
							wrong++
							t.Logf("%s %v %s: formula %.3f, simulation %v", feed, m.Faults, look.ID, p, yes)
						}
					}
				}
			}
		}
	}
	t.Logf("%d looks, %d wrong; %d left open", sure, wrong, open)
	require.Greater(t, sure, 350)
	assert.LessOrEqual(t, wrong, sure/40)
	assert.LessOrEqual(t, open, (sure+open)/5)
}

// Fuse and plug are looked at, not cranked.
func TestFuseAndPlugAreLookedAt(t *testing.T) {
	looks := map[check.Look]check.Check{}
	for _, c := range check.Whole(machine.Usual().Known()) {
		looks[c.Looks] = c
	}
	for _, c := range []struct {
		look  check.Look
		fault machine.Kind
		size  float64
	}{{check.FuseBlown, machine.MainFuse, 0}, {check.PlugBurnt, machine.ChargePin, 3}} {
		for faulty, m := range map[bool]machine.Machine{false: star(), true: star().With(machine.Fault{Kind: c.fault, At: 1, Size: c.size})} {
			yes, err := rig.Seen(m, looks[c.look], 0.5)
			require.NoError(t, err)
			assert.Equal(t, faulty, yes, c.look)
			assert.Equal(t, faulty, m.Predict(looks[c.look], meter.Cheap(), machine.Kit{}).Value > 0.5, c.look)
		}
	}
}
