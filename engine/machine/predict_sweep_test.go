package machine_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

var kit = machine.Kit{ResistorOhms: 0.47, BulbOhms: 40, SupplyVolts: 12.5, AdapterFarads: 0.47e-6, BleederOhms: 10e6}

// struck hands out every build with every fault that suits it, and without one.
func struck(visit func(name string, m machine.Machine)) {
	for name, b := range builds() {
		sound := machine.Typical(b)
		visit(name+", sound", sound)
		for _, k := range machine.Kinds() {
			for seed := range uint64(4) {
				if f, ok := machine.NewChance(seed).Sized(k, b); ok {
					visit(name+", "+string(k), sound.With(f))
				}
			}
		}
	}
}

func everyPlan(b machine.Build) []check.Check {
	out := check.Plan(b.Known(), check.Bench, check.VoltAmp, check.HotWinding, check.PeakHold)
	return append(out, check.Plan(b.Known(), check.SelfCheck, check.ResistorCheck)...)
}

func mustBeSane(t *testing.T, p machine.Prediction, what ...any) {
	t.Helper()
	require.False(t, math.IsNaN(p.Value) || math.IsNaN(p.Flicker), what...)
	require.False(t, math.IsInf(p.Value, 0) && !p.Open, what...)
	require.GreaterOrEqual(t, p.Flicker, 0.0, what...)
	if p.Open {
		require.True(t, p.Known && p.Value > 0, what...)
	}
}

// Of all checks that a plan may hold, only the pulse of a box that fires has no
// formula.
func TestEveryCheckOfEveryPlanHasAPrediction(t *testing.T) {
	unknown := map[check.ID]bool{}
	struck(func(name string, m machine.Machine) {
		for _, with := range meter.Bundled() {
			for _, c := range everyPlan(m.Build) {
				p := m.Predict(c, with, kit)
				mustBeSane(t, p, name, c.ID)
				if c.Function == meter.Ohms {
					require.GreaterOrEqual(t, p.Value, 0.0, "%s: %s", name, c.ID)
				}
				if !p.Known {
					unknown[c.ID] = true
				}
			}
		}
	})
	assert.Equal(t, map[check.ID]bool{"box-peak": true}, unknown)
}

var everyTerminal = []check.Terminal{
	check.Core, check.GroundLead, check.PickupA, check.PickupB, check.ExciterLead, check.BoxOutput, check.BatteryPlus, check.BatteryMinus,
	check.PlusClamp, check.FuseIn, check.FuseOut, check.RegulatorPlus, check.RegulatorBody, check.Frame, check.KeyOut, check.LightingLead,
	check.PickupTwo, check.BoxExciter, check.BoxPickup, check.BoxGround, check.BoxFeed, check.KillWire, check.CoilPrimary,
	check.SparkLead, check.CapEnd, "charge-1", "charge-2", "charge-3", "charge-4", "regulator-1", "regulator-2", "regulator-3", "regulator-4",
}

var everyState = []machine.State{
	{}, {Plug: check.Together}, {Key: true}, {Key: true, Plug: check.Together}, {Key: true, Engine: check.Cranking},
	{Key: true, Engine: check.Cranking, Plug: check.Together}, {Key: true, Engine: check.Idling, Plug: check.Together},
	{Key: true, Engine: check.At5000, Plug: check.Together}, {Key: true, Engine: check.At3000}, {Engine: check.At3000, Plug: check.Together, Hot: true},
}

// Any two terminals, any dial, any state: no number that is none, and the same
// with the leads swapped but for the sign. One in some hundred of all of them.
func TestAnyTwoTerminalsInAnyState(t *testing.T) {
	with := meter.Auto6000()
	n := 0
	struck(func(name string, m machine.Machine) {
		for i, red := range everyTerminal {
			for _, black := range everyTerminal[i:] {
				for _, s := range everyState {
					for _, f := range []meter.Function{meter.Ohms, meter.VoltsDC, meter.VoltsAC, meter.AmpsDC} {
						if n++; n%83 == 0 {
							mustNotCareForTheOrder(t, m, machine.Probing{Red: red, Black: black, Function: f, State: s}, with, name)
						}
					}
				}
			}
		}
	})
}

func mustNotCareForTheOrder(t *testing.T, m machine.Machine, p machine.Probing, with meter.Meter, name string) {
	t.Helper()
	there := m.Shows(p, with)
	mustBeSane(t, there, name, p)
	p.Red, p.Black = p.Black, p.Red
	back := m.Shows(p, with)
	require.Equal(t, there.Known, back.Known, "%s: %+v", name, p)
	require.Equal(t, there.Open, back.Open)
	if p.Function == meter.VoltsDC {
		back.Value = -back.Value
	}
	if !there.Open {
		require.InDelta(t, there.Value, back.Value, 1e-6+1e-6*math.Abs(there.Value), "%s: %+v", name, p)
	}
}
