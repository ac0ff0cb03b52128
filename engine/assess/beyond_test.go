package assess_test

import (
	"testing"
	"time"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/session"
	"coilbook/specs"
)

// What was read for the suspects stands beside the plan, a look without a verdict.
func TestReadingsBeyondThePlan(t *testing.T) {
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	setup := session.DefaultSetup()
	setup.Aim = check.Overcharges
	s := session.Session{ID: uuid.Max}
	for i, e := range []session.Entry{
		{Setup: &setup}, {Reading: &session.Reading{Check: "battery-5000", Text: "16.2", Unit: "V"}}, {Reading: &session.Reading{Check: "fuse", Text: "no"}},
		{Skip: &session.Skip{Check: "drop-ground"}}, {Reading: &session.Reading{Check: "charge-pair-1-2", Text: "0.5", Unit: "Ω"}},
		{Reading: &session.Reading{Check: "battery-rest", Text: "soup", Unit: "V"}},
	} {
		e.ID, e.At = uuid.Must(uuid.NewV7()), time.Date(2026, 5, 1, 9, i, 0, 0, time.UTC)
		s = s.Append(e)
	}
	lines := map[check.ID]assess.Line{}
	for _, l := range assess.Open(s.Fold(), profiles).Beyond() {
		lines[l.Check.ID] = l
	}
	require.Len(t, lines, 4, "the pair is in the plan")
	assert.InDelta(t, 16.2, lines["battery-5000"].Measured.Value, 1e-9)
	assert.NoError(t, lines["fuse"].Unread)
	assert.False(t, lines["fuse"].Verdict.HasValue)
	assert.True(t, lines["drop-ground"].Skipped)
	assert.Error(t, lines["battery-rest"].Unread)
}
