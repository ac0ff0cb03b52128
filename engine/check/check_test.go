package check_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

func ids(plan []check.Check) (out []string) {
	for _, c := range plan {
		out = append(out, string(c.ID))
	}
	return out
}

// Which lead pairs have a winding between them follows from the number of leads.
func TestPlanFollowsTheBuild(t *testing.T) {
	const start = "lead-zero"
	for _, c := range []struct {
		name  string
		build check.Build
		aim   check.Aim
		want  string
	}{
		{"one lead", check.Build{ChargeLeads: 1}, check.Bench, "charge-grounded-1"},
		{"two leads", check.Build{ChargeLeads: 2}, check.Bench, "charge-pair-1-2 charge-core-1 charge-core-2"},
		{"three leads", check.Build{ChargeLeads: 3}, check.Bench,
			"charge-pair-1-2 charge-pair-2-3 charge-pair-3-1 charge-core-1 charge-core-2 charge-core-3"},
		{"four leads", check.Build{ChargeLeads: 4}, check.Bench,
			"charge-pair-1-2 charge-pair-3-4 charge-core-1 charge-core-2 charge-core-3 charge-core-4 phase-to-phase"},
		{"ground lead", check.Build{ChargeLeads: 1, GroundLead: true}, check.Bench, "core-continuity charge-grounded-1"},
		{"pickup", check.Build{ChargeLeads: 1, Pickup: true}, check.Bench, "charge-grounded-1 pickup pickup-gap"},
		{"exciter", check.Build{ChargeLeads: 1, Exciter: true}, check.EveryPart, "charge-grounded-1 exciter exciter-cranking"},
		{"no charge", check.Build{ChargeLeads: 2, Exciter: true, Pickup: true, GroundLead: true}, check.NoCharge,
			"core-continuity charge-pair-1-2 charge-core-1 charge-core-2"},
		{"no spark", check.Build{ChargeLeads: 2, Exciter: true, Pickup: true, GroundLead: true}, check.NoSpark,
			"core-continuity pickup pickup-gap exciter exciter-cranking"},
		{"no spark, nothing to test it with", check.Build{ChargeLeads: 3}, check.NoSpark, ""},
	} {
		assert.Equal(t, strings.TrimSpace(start+" "+c.want), strings.Join(ids(check.Plan(c.build, c.aim)), " "), c.name)
	}
}

func everyBuild(visit func(check.Build, check.Aim)) {
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		for flags := range 8 {
			for _, aim := range []check.Aim{check.Bench, check.NoCharge, check.NoSpark, check.EveryPart} {
				visit(check.Build{StatorPoles: 12, ChargeLeads: leads, Exciter: flags&1 > 0, Pickup: flags&2 > 0, GroundLead: flags&4 > 0}, aim)
			}
		}
	}
}

func TestEveryPlanIsWhole(t *testing.T) {
	everyBuild(func(b check.Build, aim check.Aim) {
		seen := map[check.ID]bool{}
		plan := check.Plan(b, aim)
		for i, c := range plan {
			require.False(t, seen[c.ID], "%s stands twice in %v", c.ID, b)
			seen[c.ID] = true
			require.NotEmpty(t, c.Measures)
			require.NotEmpty(t, c.Part)
			require.NotEmpty(t, c.Traps, c.ID)
			require.NotEmpty(t, c.Cautions, c.ID)
			require.Positive(t, c.Minutes, c.ID)
			require.NotEqual(t, check.Nowhere, c.Red, c.ID)
			require.True(t, distinct(c.Traps) && distinct(c.Cautions), "%s repeats itself", c.ID)
			require.Equal(t, c.Engine == check.Cranking, i == len(plan)-1 && c.ID == "exciter-cranking", "what turns the engine comes last")
			found, ok := check.Find(plan, c.ID)
			require.True(t, ok)
			require.Equal(t, c.ID, found.ID)
		}
		require.Equal(t, check.ID("lead-zero"), plan[0].ID, "the lead zero comes first: small readings need it")
	})
	_, ok := check.Find(nil, "pickup")
	assert.False(t, ok)
}

func distinct[T comparable](list []T) bool {
	seen := map[T]bool{}
	for _, v := range list {
		if seen[v] {
			return false
		}
		seen[v] = true
	}
	return true
}

// Safety: this check turns the engine and meets the exciter's peaks.
func TestCrankingWarnsOfAllItCanDo(t *testing.T) {
	plan := check.Plan(check.DefaultBuild(), check.NoSpark)
	c, ok := check.Find(plan, "exciter-cranking")
	require.True(t, ok)
	assert.Subset(t, c.Cautions, []check.Caution{check.ShockExciter, check.ShockIgnition, check.MeterRating, check.RotatingParts,
		check.InNeutral, check.ExhaustIndoor, check.BatteryGas})
	assert.Equal(t, check.Together, c.Plug)
	gap, _ := check.Find(plan, "pickup-gap")
	assert.Subset(t, gap.Cautions, []check.Caution{check.RotatingParts, check.MagnetPull, check.KeyOff})
	for _, c := range check.Plan(check.DefaultBuild(), check.Bench) {
		if c.Engine == check.Stopped {
			assert.Contains(t, c.Cautions, check.KeyOff, "%s: resistance is only measured with the key off", c.ID)
			assert.Equal(t, check.Apart, c.Plug, c.ID)
		}
	}
}

func TestDialsShowWhatIsExpected(t *testing.T) {
	want := map[check.ID]string{"lead-zero": "200 Ω", "core-continuity": "200 Ω", "charge-pair-1-2": "200 Ω", "charge-core-1": "2 MΩ",
		"pickup": "200 Ω", "exciter": "2 kΩ", "exciter-cranking": "200 V"}
	for _, c := range check.Plan(check.DefaultBuild(), check.Bench) {
		for _, m := range meter.Bundled() {
			r, ok := c.Dial(m)
			require.Equal(t, c.Instrument == check.Multimeter, ok, c.ID)
			if ok {
				require.GreaterOrEqual(t, r.Full, c.Expected)
				if m.Auto {
					r.Unit = quantity.Units(c.Kind())[0] // its display says which
				}
				require.Equal(t, r.Unit, c.Unit(m))
			}
		}
		if label, ok := want[c.ID]; ok {
			r, _ := c.Dial(meter.Cheap())
			assert.Equal(t, label, r.Label, c.ID)
		}
	}
}

func TestAGaugeReadsLengths(t *testing.T) {
	c, _ := check.Find(check.Plan(check.DefaultBuild(), check.NoSpark), "pickup-gap")
	assert.Equal(t, quantity.Length, c.Kind())
	assert.Equal(t, quantity.Millis, c.Unit(meter.Cheap()))
	c.Instrument = check.Multimeter
	assert.Equal(t, quantity.Resistance, c.Kind())
}

func TestTheRangeFollowsTheLimit(t *testing.T) {
	c := check.Check{Expected: 7}
	assert.InDelta(t, 550, c.Toward(spec.Between(spec.ExciterResist, quantity.Resistance, 100, 500)).Expected, 1e-9)
	for what, l := range map[string]spec.Limit{
		"at least":     {Low: 30, High: math.Inf(1)},
		"open":         {Low: 2e6, High: 3e6, Open: true},
		"alike":        {High: 0.1, Ratio: true},
		"below zero":   {Low: -2, High: -1},
		"no limit yet": {},
	} {
		assert.InDelta(t, 7, c.Toward(l).Expected, 0, what)
	}
}

func TestBuildsAreCounted(t *testing.T) {
	for leads, phases := range map[int]int{1: 1, 2: 1, 3: 3, 4: 2} {
		b := check.Build{ChargeLeads: leads}
		assert.Equal(t, phases, b.Phases())
		assert.Equal(t, leads == 1, b.GroundedEnd())
		if leads > 1 {
			assert.Len(t, b.Pairs(), phases)
		}
	}
	assert.Equal(t, check.Terminal("charge-3"), check.Charge(3))
	d := check.DefaultBuild()
	assert.GreaterOrEqual(t, d.StatorPoles, check.MinPoles)
	assert.LessOrEqual(t, d.StatorPoles, check.MaxPoles)
}
