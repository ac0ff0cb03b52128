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

// visit is a session on a machine on a day of 2026.
func visit(t *testing.T, day int, name, profile string, entries ...session.Entry) assess.Bench {
	t.Helper()
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	with := session.DefaultSetup()
	with.Name, with.Profile = name, profile
	s := session.Session{ID: uuid.NewSHA1(uuid.Nil, []byte{byte(day)})}
	for i, e := range append([]session.Entry{{Setup: &with}}, asTheScreenWrites(entries)...) {
		e.ID = uuid.NewSHA1(s.ID, []byte{byte(i)})
		e.At = time.Date(2026, 1, day, 9, i, 0, 0, time.UTC)
		s = s.Append(e)
	}
	return assess.Open(s.Fold(), profiles)
}

func TestTracksFollowAChecksReadings(t *testing.T) {
	late := visit(t, 90, "Quad", "any-small-machine", read("pickup", "250"), read("exciter", "300"), read("fuse", "no"))
	early := visit(t, 3, "Quad", "ac-fed-ignition", read("pickup", "200"), skipped("exciter"), read("pickup-gap", "0.4"), read("fuse", "yes"))
	middle := visit(t, 40, "Quad", "any-small-machine", read("pickup", "OL"), read("battery-5000", "14.1"), read("lead-zero", "won't settle"))
	also := visit(t, 41, "Quad", "any-small-machine", read("battery-5000", "13.9"), read("lead-zero", "0.2"))
	got := assess.Tracks([]assess.Bench{late, early, middle, also})
	require.Len(t, got, 2)
	pickup, battery := got[0], got[1]
	assert.Equal(t, check.ID("pickup"), pickup.Check.ID)
	require.Len(t, pickup.Points, 3)
	assert.InDelta(t, 200, pickup.Points[0].Line.Verdict.Value, 2)
	assert.False(t, pickup.Points[1].Line.Verdict.HasValue, "the open line has its place")
	assert.InDelta(t, 250, pickup.Points[2].Line.Verdict.Value, 2)
	assert.Equal(t, early.State.ID, pickup.Points[0].Session)
	assert.True(t, pickup.Points[0].At.Before(pickup.Points[1].At) && pickup.Points[1].At.Before(pickup.Points[2].At))
	assert.NotEqual(t, pickup.Points[0].Line.Verdict.Limit.Low, pickup.Points[2].Line.Verdict.Limit.Low, "each is held against its own profile")
	assert.Equal(t, check.ID("battery-5000"), battery.Check.ID, "read beyond the plan counts too")
	require.Empty(t, assess.Tracks([]assess.Bench{early}), "one session is no trend")
	require.Empty(t, assess.Tracks([]assess.Bench{middle, visit(t, 5, "Quad", "", read("pickup", "OL"))}), "open lines alone are none")
}

func TestMachinesAreToldByTheirNames(t *testing.T) {
	named := func(s string) session.Setup { return session.Setup{Name: s} }
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"Red scooter", "red  SCOOTER ", true}, {"Red scooter", "Red scooter 2", false}, {"", "", false}, {"  ", "  ", false}, {"Züge", "züge", true},
	} {
		assert.Equal(t, c.same, assess.SameMachine(named(c.a), named(c.b)), "%q and %q", c.a, c.b)
	}
}
