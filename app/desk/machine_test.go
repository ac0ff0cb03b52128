package desk

import (
	"testing"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/store"
	"coilbook/engine/check"
	"coilbook/engine/session"
)

func TestSessionsOfOneMachineComeTogether(t *testing.T) {
	tb := newTable(t, onDevice(&store.Memory{}))
	tb.Start()
	tb.settle()
	begun := func(name string, aim check.Aim) (id uuid.UUID) {
		s := session.DefaultSetup()
		s.Name, s.Aim = name, aim
		made := tb.Begin(s)
		tb.Enter(made, reading("battery-rest", "12.4"))
		tb.settle()
		return made
	}
	first := begun("Red scooter", check.NoCharge)
	begun("Other", check.NoCharge)
	last := begun(" red  Scooter ", check.Bench)
	unnamed := begun("", check.NoCharge)
	begun("", check.NoCharge)
	tb.Refresh()
	tb.settle()
	tb.Show(first)
	tb.settle()
	var got []uuid.UUID
	for _, b := range tb.Machine(first) {
		got = append(got, b.State.ID)
	}
	assert.ElementsMatch(t, []uuid.UUID{first, last}, got)
	assert.Empty(t, tb.Machine(last), "it is not the open one")
	tb.Mark(last, session.Removed)
	tb.settle()
	assert.Len(t, tb.Machine(first), 1)
	tb.Show(unnamed)
	tb.settle()
	require.Empty(t, tb.Machine(unnamed), "sessions without a name are not one machine")
}
