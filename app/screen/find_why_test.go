package screen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/session"
)

// A suspect's reasons are told in sentences with the reading as it was typed, those
// that hardly tell left out.
func TestReasonsAreToldWithTheReadings(t *testing.T) {
	m, queue := newPopulations()
	b := complaint(t, check.NoSpark, read("spark", "no", ""), read("exciter", "OL", "Ω"), read("pickup", "190", "Ω"))
	talk := replay(drawn(t, m, queue, b), b.State, b.Meter)
	r := talk.reasons("exciter-open")
	require.NotEmpty(t, r.pro)
	told := talk.reason(fault.Fault{ID: "exciter-open"}, r.pro[0])
	assert.Contains(t, told, "Exciter resistance: open line. With this fault nearly all read open line")
	against := talk.reasons("pickup-open").con
	require.NotEmpty(t, against)
	assert.Contains(t, talk.reason(fault.Fault{ID: "pickup-open"}, against[0]), "190 Ω")
	for _, s := range talk.Suspects().Faults {
		for _, one := range append(talk.reasons(s.Fault.ID).pro, talk.reasons(s.Fault.ID).con...) {
			assert.GreaterOrEqual(t, max(one.Weight, -one.Weight), leastReason)
		}
	}
	next, more := replay(drawn(t, m, queue, complaint(t, check.NoSpark)), complaint(t, check.NoSpark).State, b.Meter).Ask()
	require.True(t, more)
	means := talk.means(next.Check.ID)
	for _, one := range means {
		assert.GreaterOrEqual(t, one.Chance, leastChance)
		assert.NotEmpty(t, words.MeaningAnswer(next.Check, one))
	}
}

// Readings of one point count together in the search as they do elsewhere.
func TestRepeatedReadingsAreHeardTogether(t *testing.T) {
	m, queue := newPopulations()
	again := read("battery-rest", "12.6", "V")
	again.Reading.Again = true
	b := complaint(t, check.NoCharge, read("battery-rest", "12.4", "V"), again)
	talk := replay(drawn(t, m, queue, b), b.State, b.Meter)
	require.Len(t, talk.said, 1)
	assert.Equal(t, "12.6 V (2 readings)", talk.said[0].value)
	require.Len(t, talk.Evidence(), 2)
	assert.InDelta(t, 12.6, talk.Evidence()[1].Value, 1e-9)
}

func TestAStatorOnTheBenchIsAskedNothingElse(t *testing.T) {
	m, queue := newPopulations()
	b := complaint(t, check.Bench)
	talk := replay(drawn(t, m, queue, b), b.State, b.Meter)
	require.NotEmpty(t, talk.checks)
	for _, k := range talk.checks {
		require.True(t, check.BareStator(k), k.ID)
		first, minutes := talk.before(k)
		assert.Empty(t, first)
		assert.Equal(t, k.Minutes, minutes)
	}
}

// Each aim either has a plan of its own or begins with the suspects.
func TestWhereAComplaintBegins(t *testing.T) {
	for _, a := range check.Aims() {
		_, found := fault.Of(a)
		assert.True(t, found || !straight(a), a)
		assert.NotEmpty(t, words.Aim(a))
	}
	assert.False(t, straight(check.NoCharge))
	assert.True(t, straight(check.CutsOutHot))
	planned := complaint(t, check.NoCharge, read("charge-pair-1-2", "0.5", "Ω"))
	assert.False(t, searched(planned.State))
	assert.Empty(t, planned.Beyond())
	beyond := complaint(t, check.NoCharge, read("battery-rest", "12.4", "V"), read("fuse", "yes", ""), session.Entry{Skip: &session.Skip{Check: "battery-5000"}})
	assert.True(t, searched(beyond.State))
	assert.Len(t, beyond.Beyond(), 3)
}

func TestAFindingWithoutAFaultIsOfNoKind(t *testing.T) {
	f := diagnose.Finding{Fault: "box-dead", Action: diagnose.Replace, Faults: []diagnose.Suspect{{Fault: fault.Fault{ID: "box-dead", Kind: "box-dead"}}}}
	assert.EqualValues(t, "box-dead", mendedBy(f).Kind)
	f.Action = diagnose.NotListed
	assert.Empty(t, mendedBy(f).Kinds())
	assert.Empty(t, suspectOf(diagnose.Finding{Fault: "x"}))
}
