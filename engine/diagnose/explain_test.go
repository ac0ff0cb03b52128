package diagnose_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/quantity"
)

// A suspect is explained by the readings that tell it from the others: what speaks
// for one speaks against another, and what all share speaks for none.
func TestReasonsForAndAgainst(t *testing.T) {
	m := ready()[fault.WontCharge]
	ev := []diagnose.Evidence{
		volts("battery-5000", 12.3), volts("charge-ac-1-2", 30), volts("charge-ac-2-3", 30), volts("charge-ac-3-1", 30),
		{Check: "charge-core-1", State: quantity.OverRange}, {Check: "fuse", Value: 0}, {Check: "no-such-check", Value: 1},
	}
	s := m.Weigh(ev)
	require.Equal(t, fault.PartsOf(check.Regulator), s.Faults[0].Fault.Parts())
	_, con := m.Explain(s, ev, "main-fuse", 2)
	require.NotEmpty(t, con)
	assert.Equal(t, check.ID("fuse"), con[0].Check, "the fuse was looked at")
	assert.Less(t, con[0].Weight, -3.0)
	pro, con := m.Explain(s, ev, "phase-to-core", 3)
	assert.LessOrEqual(t, len(pro), 3)
	var open bool
	for _, r := range con {
		open = open || r.Check == "charge-core-1" && r.Open < 0.5
	}
	assert.True(t, open, "an open line speaks against a touch: %+v", con)
	pro, _ = m.Explain(s, ev, "regulator-dead", 6)
	for _, r := range pro {
		if r.Check == "battery-5000" {
			assert.Less(t, r.Low, r.High)
			assert.Less(t, r.Low, 13.0, "it does not charge")
			assert.Less(t, r.High, 13.8)
		}
		require.False(t, math.IsNaN(r.Weight+r.Low+r.High+r.Open))
	}
	none, against := m.Explain(s, ev, "no-such-fault", 3)
	assert.Empty(t, none)
	assert.Empty(t, against)
}

// What the answers would mean: their chances make one, spans of numbers follow each
// other, and where the fuse is blown the wiring is to blame.
func TestWhatAnswersWouldMean(t *testing.T) {
	m := ready()[fault.WontCharge]
	s := m.Weigh(nil)
	for _, c := range m.Checks {
		means := m.Means(s, nil, c.ID)
		sum := 0.0
		for i, one := range means {
			sum += one.Chance
			require.True(t, one.Sure > 0 && one.Sure <= 1+1e-9, c.ID)
			if i > 0 && one.State == quantity.Number && means[i-1].State == quantity.Number && c.Instrument != check.Eyes {
				require.GreaterOrEqual(t, one.Low, means[i-1].High, c.ID)
			}
		}
		assert.InDelta(t, 1, sum, 0.08, c.ID)
	}
	var blown, whole diagnose.Meaning
	for _, one := range m.Means(s, nil, "fuse") {
		if one.Yes {
			blown = one
		} else {
			whole = one
		}
	}
	assert.Equal(t, fault.PartsOf(check.Wiring), blown.Parts)
	assert.Greater(t, blown.Sure, 0.8)
	assert.Greater(t, whole.Chance, 0.8)
	assert.Nil(t, m.Means(s, nil, "no-such-check"))
}
