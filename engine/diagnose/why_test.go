package diagnose_test

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/meter"
)

var bareStator = sync.OnceValue(func() *diagnose.Model {
	faults, err := fault.Bundled()
	if err != nil {
		panic(err)
	}
	return diagnose.New(diagnose.Question{Symptom: fault.OnTheBench, Build: check.DefaultBuild(), Meter: meter.Cheap()}, faults).Ready()
})

func answered(t *testing.T, c *diagnose.Conversation, readings ...[2]string) *diagnose.Conversation {
	t.Helper()
	for _, r := range readings {
		require.NoError(t, c.Answer(check.ID(r[0]), r[1], ""))
	}
	return c
}

// A part is cleared by a reading that a sound machine shows and its faults do not;
// what another finding merely explains away stays uncleared.
func TestPartsThatReadingsCleared(t *testing.T) {
	c := answered(t, begun(), [2]string{"battery-rest", "12.7"}, [2]string{"charge-ac-1-2", "31"}, [2]string{"charge-ac-2-3", "31"},
		[2]string{"charge-ac-3-1", "31"}, [2]string{"charge-core-1", "OL"}, [2]string{"battery-5000", "12.4"})
	by := map[check.Part][]check.ID{}
	for _, one := range c.Cleared() {
		by[one.Part] = one.By
		assert.LessOrEqual(t, one.After, 0.02)
		assert.Less(t, one.After, one.Before)
		assert.NotEmpty(t, one.By)
	}
	require.Contains(t, by, check.ChargeWinding)
	for _, id := range by[check.ChargeWinding] {
		assert.NotEqual(t, check.ID("battery-5000"), id, "poor charging speaks for no winding")
	}
	for _, part := range c.Finding().Parts.List() {
		assert.NotContains(t, by, part, "the finding is not cleared")
	}
	blown := begun()
	require.NoError(t, blown.See("fuse", true))
	assert.Empty(t, blown.Cleared(), "a blown fuse shows nothing else sound")
	assert.Empty(t, begun().Cleared())
}

// What was refused is missed while it would tell, and no longer once others told.
func TestRefusedChecksThatWouldTell(t *testing.T) {
	c := begun()
	assert.Empty(t, c.Missed(3))
	first, ok := c.Ask()
	require.True(t, ok)
	require.NoError(t, c.Refuse(first.Check.ID))
	missed := c.Missed(3)
	require.Len(t, missed, 1)
	assert.Equal(t, first.Check.ID, missed[0].Check.ID)
	assert.Positive(t, missed[0].Bits)
	_, ok = c.Choice(first.Check.ID)
	assert.False(t, ok, "a refused check is no choice")
	next, _ := c.Ask()
	choice, ok := c.Choice(next.Check.ID)
	require.True(t, ok)
	assert.Equal(t, next, choice)
	assert.NotEmpty(t, c.Means(next.Check.ID))
}

// A stator on the bench: nothing turns, and nothing has to be got at.
func TestOnTheBenchOnlyTheStatorIsAsked(t *testing.T) {
	m := bareStator()
	c := diagnose.Begin(m, nil)
	for range 40 {
		next, more := c.Ask()
		if !more {
			break
		}
		require.True(t, check.BareStator(next.Check), next.Check.ID)
		require.Empty(t, next.Check.Needs, "%s", next.Check.ID)
		require.Equal(t, next.Check.Minutes, next.Minutes)
		require.NoError(t, c.Refuse(next.Check.ID))
	}
	for _, k := range m.Checks {
		assert.Equal(t, check.BareStator(k), c.Within(k), k.ID)
	}
	d := answered(t, diagnose.Begin(m, nil), [2]string{"exciter", "OL"}, [2]string{"pickup", "190"})
	assert.Equal(t, fault.PartsOf(check.Exciter), d.Finding().Parts)
	assert.InDelta(t, 2, d.Minutes(), 1e-9, "no side panel on the bench")
	assert.True(t, d.Given(check.PlugParted))
	assert.False(t, begun().Given(check.PlugParted))
	assert.True(t, begun().Within(m.Checks[len(m.Checks)-1]))
}

// What decided is named, also where it left no other suspect.
func TestTheDecidingReadingIsAReason(t *testing.T) {
	c := answered(t, begun(), [2]string{"battery-rest", "12.6"}, [2]string{"charge-core-1", "0.00004"}, [2]string{"charge-core-2", "0.00004"})
	f := c.Finding()
	require.Equal(t, fault.PartsOf(check.ChargeWinding), f.Parts)
	pro, _ := c.Reasons(f.Fault, 2)
	require.NotEmpty(t, pro)
	assert.Contains(t, []check.ID{"charge-core-1", "charge-core-2"}, pro[0].Check)
	assert.Greater(t, pro[0].Weight, 2.0)
	assert.Less(t, pro[0].High, 1e4)
}

// Readings of one point count beside each other, and are no new check; what cannot
// be read changes nothing, and a plain answer begins anew.
func TestReadingsOfAPointCountTogether(t *testing.T) {
	c := answered(t, begun(), [2]string{"battery-rest", "12.40"})
	require.NoError(t, c.Again("battery-rest", "12.44", ""))
	require.NoError(t, c.Again("battery-rest", "12.45", "V"))
	assert.Len(t, c.Evidence(), 3)
	require.Error(t, c.Again("battery-rest", "soup", ""))
	assert.Len(t, c.Evidence(), 3)
	assert.Len(t, c.Done(), 1)
	require.NoError(t, c.Answer("battery-rest", "12.1", ""))
	assert.Len(t, c.Evidence(), 1)
	assert.InDelta(t, 12.1, last(c).Value, 1e-9)
	require.NoError(t, c.Again("battery-5000", "14", ""))
	assert.Len(t, c.Done(), 2, "the first of a point may come so too")
}

// Readings of one point are one reason, by the last of them.
func TestAPointIsOneReason(t *testing.T) {
	c := answered(t, begun(), [2]string{"battery-5000", "12.3"}, [2]string{"charge-core-1", "0.00004"})
	require.NoError(t, c.Again("charge-core-1", "0.00005", ""))
	pro, con := c.Reasons(c.Finding().Fault, 5)
	seen := map[check.ID]int{}
	for _, r := range append(pro, con...) {
		seen[r.Check]++
	}
	assert.Equal(t, map[check.ID]int{"battery-5000": 1, "charge-core-1": 1}, seen)
}
