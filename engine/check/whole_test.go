package check_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// The whole machine's checks hold all that the plans of the generator ask for,
// each once, with what it needs, and nothing dangerous without its cautions.
func TestWhole(t *testing.T) {
	everyBuild(func(b check.Build, aim check.Aim) {
		whole := check.Whole(b)
		seen := map[check.ID]bool{}
		for _, c := range whole {
			require.False(t, seen[c.ID], "%s stands twice", c.ID)
			seen[c.ID] = true
			require.NotEmpty(t, c.Measures, c.ID)
			require.NotEmpty(t, c.Part, c.ID)
			require.NotEmpty(t, c.Traps, c.ID)
			require.NotEmpty(t, c.Cautions, c.ID)
			require.Positive(t, c.Minutes, c.ID)
			require.Equal(t, c.Instrument == check.Eyes, c.Looks != "", c.ID)
			require.Equal(t, c.Instrument == check.Eyes, c.Red == check.Nowhere, c.ID)
			for _, a := range c.Needs {
				require.Positive(t, a.Minutes(), a)
			}
			if c.Engine != check.Stopped {
				require.True(t, c.Key, c.ID)
				require.Contains(t, c.Cautions, check.RotatingParts, c.ID)
				require.Contains(t, c.Cautions, check.InNeutral, c.ID)
			}
			if c.Engine > check.Cranking {
				require.Contains(t, c.Needs, check.EngineOn, c.ID)
				require.Contains(t, c.Cautions, check.ExhaustIndoor, c.ID)
			}
		}
		for _, c := range check.Plan(b, aim) {
			require.True(t, seen[c.ID], "%s is in the plan alone", c.ID)
		}
	})
	assert.Zero(t, check.Access("levitation").Minutes())
	for _, a := range check.Accesses() {
		assert.Positive(t, a.Minutes(), a)
	}
}

// On the bench nothing turns and nothing but the generator is there.
func TestOnTheBench(t *testing.T) {
	var got []check.ID
	for _, c := range check.OnTheBench(check.Build{ChargeLeads: 2, Pickup: true, Exciter: true, GroundLead: true}) {
		got = append(got, c.ID)
	}
	assert.Equal(t, []check.ID{
		"lead-zero", "core-continuity", "charge-pair-1-2", "charge-core-1", "charge-core-2", "pickup", "exciter", "pickup-core",
	}, got)
}

// The peaks of pulses are for those who have an adapter.
func TestPeaksNeedAnAdapter(t *testing.T) {
	held := 0
	for _, c := range check.Whole(check.Build{ChargeLeads: 3, Pickup: true, Exciter: true}) {
		if c.PeakHold {
			held++
			assert.Contains(t, c.Needs, check.PeakAdapter, c.ID)
		}
	}
	assert.Equal(t, 3, held)
}

// A wrench between plus and frame is a short circuit: amps are read at the minus
// post, whose clamp may touch what it likes. Common practice, no source.
func TestAmpsAreReadAtTheMinusPost(t *testing.T) {
	for _, c := range check.Whole(check.DefaultBuild()) {
		if c.Function != meter.AmpsDC || c.Instrument != check.Multimeter {
			continue
		}
		assert.Equal(t, []check.Terminal{check.MinusClamp, check.BatteryMinus}, []check.Terminal{c.Red, c.Black}, c.ID)
	}
}
