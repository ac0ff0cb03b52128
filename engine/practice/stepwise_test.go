package practice_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
)

func TestTheRouteInStepsIsTheGuidedOne(t *testing.T) {
	at := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	for seed := range uint32(4) {
		b := practice.Open(practice.Usual, seed)
		want, err := b.Guided(at, "any")
		require.NoError(t, err)
		r := b.Route(at, "any")
		for more := true; more; {
			more, err = r.Step()
			require.NoError(t, err)
		}
		assert.Equal(t, want, r.Session(), b.Code())
		more, err := r.Step()
		assert.False(t, more)
		assert.NoError(t, err)
	}
}

func TestUnlikeAtEveryPlaceIsSpeaking(t *testing.T) {
	b := practice.Open(practice.Plain, 3)
	p, err := b.Show(machine.Probing{Red: "charge-1", Black: check.Core, Function: meter.Ohms}, "")
	require.NoError(t, err)
	spoke := 0
	for _, rival := range b.Rivals() {
		want, err := b.Speaks(p, rival)
		require.NoError(t, err)
		got := true
		for _, f := range b.Places(rival) {
			unlike, err := b.Unlike(p, f)
			require.NoError(t, err)
			got = got && unlike
		}
		assert.Equal(t, want, got, rival)
		if got {
			spoke++
		}
	}
	assert.Positive(t, spoke, "an ohm reading to the core tells some faults apart")
}

// A machine whose owner says that it gives no spark does not run.
func TestAMachineRunsUnlessTheOwnerSaysNot(t *testing.T) {
	for seed := range uint32(80) {
		b := practice.Open(practice.Sly, seed)
		switch {
		case b.Complaint == practice.NoSpark:
			assert.False(t, b.Starts(false) || b.Starts(true), b.Code())
		case b.Complaint == practice.FailsWarm && !b.Truth().Kind.Charging():
			assert.True(t, b.Starts(false) && !b.Starts(true), b.Code())
		case b.Complaint == practice.AllDead && !b.Build.Exciter():
			assert.False(t, b.Starts(false), b.Code())
		default:
			assert.True(t, b.Starts(false) && b.Starts(true), b.Code())
		}
	}
}
