package check_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
)

// A stored plan may ask for what its build has no use for: that is left out.
func TestMethodsFollowBuildAndAim(t *testing.T) {
	all := []check.Method{check.VoltAmp, check.HotWinding, check.PeakHold, check.ResistorCheck}
	bare := check.Build{StatorPoles: 12, ChargeLeads: 2}
	for _, c := range []struct {
		name    string
		build   check.Build
		aim     check.Aim
		methods []check.Method
		want    string
	}{
		{"two leads by drops", bare, check.Bench, []check.Method{check.VoltAmp}, "volt-amp-known-1-2 volt-amp-winding-1-2"},
		{"one lead by drops", check.Build{ChargeLeads: 1}, check.Bench, []check.Method{check.VoltAmp}, "volt-amp-known-1-core volt-amp-winding-1-core"},
		{"no pulses without pickup and exciter", bare, check.Bench, []check.Method{check.PeakHold}, ""},
		{"the resistor belongs to the meter", bare, check.Bench, []check.Method{check.ResistorCheck}, ""},
		{"and nothing else does", bare, check.SelfCheck, all, "known-resistor"},
		{"hot readings have a cold one", check.DefaultBuild(), check.NoSpark, []check.Method{check.HotWinding}, "hot-pickup hot-exciter"},
		{"likewise", check.DefaultBuild(), check.NoCharge, []check.Method{check.HotWinding}, "hot-charge-pair-1-2 hot-charge-pair-2-3 hot-charge-pair-3-1"},
		{"unknown", bare, check.Bench, []check.Method{"magic"}, ""},
	} {
		plan := check.Plan(c.build, c.aim, c.methods...)
		first := len(check.Plan(c.build, c.aim))
		assert.Equal(t, c.want, strings.Join(ids(plan[first:]), " "), c.name)
		for _, added := range plan[first:] {
			assert.Contains(t, c.methods, added.Method, c.name)
		}
	}
}

// One run serves all hot readings, and it is dangerous in all the ways that a
// running engine is.
func TestHotReadingsTakeOneRun(t *testing.T) {
	plan := check.Plan(check.DefaultBuild(), check.Bench, check.HotWinding)
	runs := 0
	for _, c := range plan {
		if c.Method != check.HotWinding {
			continue
		}
		require.True(t, c.Feeds)
		_, cold := check.Find(plan, check.ID(strings.TrimPrefix(string(c.ID), "hot-")))
		require.True(t, cold, c.ID)
		for _, caution := range []check.Caution{check.ExhaustIndoor, check.InNeutral, check.ShockExciter, check.RotatingParts, check.HotParts} {
			require.Contains(t, c.Cautions, caution)
		}
		if c.Minutes > 10 {
			runs++
		}
	}
	require.Equal(t, 1, runs)
}
