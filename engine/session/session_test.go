package session_test

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/session"
)

var (
	sessionID = uuid.MustParse("5e551000-0000-4000-8000-000000000000")
	start     = time.Date(2026, 5, 1, 9, 30, 0, 0, time.UTC)
)

// entry is the nth of a session, n minutes after its start.
func entry(n int, body session.Entry) session.Entry {
	body.ID = uuid.MustParse(fmt.Sprintf("e0000000-0000-4000-8000-%012x", n))
	body.At = start.Add(time.Duration(n) * time.Minute)
	return body
}

func reading(id check.ID, text string) session.Entry {
	return session.Entry{Reading: &session.Reading{Check: id, Text: text, Unit: "Ω", Range: "200 Ω"}}
}

func skip(id check.ID) session.Entry {
	return session.Entry{Skip: &session.Skip{Check: id, Reason: "flywheel stays on"}}
}

func mark(m session.Mark) session.Entry { return session.Entry{Mark: &m} }

func setup(leads int, aim check.Aim) session.Entry {
	warm := 18.5
	build := check.Build{StatorPoles: 12, ChargeLeads: leads, Pickup: true}
	return session.Entry{Setup: &session.Setup{Name: "quad", Aim: aim, Build: build, Unsure: []string{"statorPoles"},
		Meter: "cheap", Ambient: &warm, Profile: "any-small-machine"}}
}

func whole() session.Session {
	corrected := entry(7, reading("charge-pair-1-2", "1.1"))
	wrong := entry(3, reading("charge-pair-1-2", "11"))
	corrected.Reading.Corrects = &wrong.ID
	return session.Session{ID: sessionID}.Append(entry(1, setup(3, check.Bench)), entry(2, reading("lead-zero", "0.2")), wrong,
		entry(4, skip("charge-pair-2-3")), entry(5, session.Entry{Note: &session.Note{Text: "grinds\nwhen turned"}}),
		entry(6, mark(session.Finished)), corrected)
}

func TestFoldOfAWholeSession(t *testing.T) {
	st := whole().Fold()
	assert.Equal(t, sessionID, st.ID)
	assert.Equal(t, "quad", st.Setup.Name)
	assert.Equal(t, "1.1", st.Current["charge-pair-1-2"].Reading.Text)
	require.Len(t, st.Earlier["charge-pair-1-2"], 1, "a correction keeps what it corrects")
	assert.Equal(t, "11", st.Earlier["charge-pair-1-2"][0].Reading.Text)
	assert.NotNil(t, st.Current["charge-pair-2-3"].Skip)
	assert.Empty(t, st.Earlier["lead-zero"])
	assert.Len(t, st.Notes, 1)
	assert.False(t, st.Finished, "a reading after the end opens it again")
	assert.Equal(t, start.Add(time.Minute), st.Started)
	assert.Equal(t, start.Add(7*time.Minute), st.Changed)
}

func TestFoldOfNothing(t *testing.T) {
	st := session.Session{ID: sessionID}.Fold()
	assert.Equal(t, session.DefaultSetup(), st.Setup)
	assert.True(t, st.Started.IsZero())
	c, ok := st.Next()
	assert.True(t, ok)
	assert.Equal(t, check.ID("lead-zero"), c.ID)
}

func TestASkipCanBeTakenUpLater(t *testing.T) {
	s := session.Session{ID: sessionID}.Append(entry(1, skip("pickup")), entry(2, reading("pickup", "120")), entry(3, skip("pickup")))
	st := s.Fold()
	assert.NotNil(t, st.Current["pickup"].Skip)
	assert.Len(t, st.Earlier["pickup"], 2)
}

func TestMarksListASession(t *testing.T) {
	for _, c := range []struct {
		marks             []session.Mark
		finished, removed bool
	}{
		{nil, false, false},
		{[]session.Mark{session.Finished}, true, false},
		{[]session.Mark{session.Removed}, false, true},
		{[]session.Mark{session.Removed, session.Restored}, false, false},
		{[]session.Mark{session.Finished, session.Removed, session.Restored}, true, false},
	} {
		s := session.Session{ID: sessionID}
		for i, m := range c.marks {
			s = s.Append(entry(i+1, mark(m)))
		}
		st := s.Fold()
		assert.Equal(t, c.finished, st.Finished, "%v", c.marks)
		assert.Equal(t, c.removed, st.Removed, "%v", c.marks)
	}
}

func TestProgressFollowsThePlan(t *testing.T) {
	s := session.Session{ID: sessionID}.Append(entry(1, setup(2, check.NoCharge)))
	plan := s.Fold().Plan()
	for i, c := range plan {
		next, ok := s.Fold().Next()
		require.True(t, ok)
		assert.Equal(t, c.ID, next.ID)
		done, of := s.Fold().Answered()
		assert.Equal(t, i, done)
		assert.Equal(t, len(plan), of)
		s = s.Append(entry(i+2, reading(c.ID, "1")))
	}
	_, ok := s.Fold().Next()
	assert.False(t, ok)
	s = s.Append(entry(40, reading("exciter", "300")))
	done, of := s.Fold().Answered()
	assert.Equal(t, of, done, "what the plan does not hold does not count")
}

func TestAppendLeavesTheReceiverAlone(t *testing.T) {
	s := session.Session{ID: sessionID}.Append(entry(2, mark(session.Finished)))
	_ = s.Append(entry(1, mark(session.Removed)))
	assert.Len(t, s.Entries, 1)
	assert.Equal(t, session.Finished, *s.Entries[0].Mark)
}

// Laws of a union, for copies that grew apart, were reordered, or were tampered
// with so that one id stands for two entries.
func TestMergeLaws(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 32))
	for range 300 {
		pool := pool(random)
		a, b, c := part(random, pool), part(random, pool), part(random, pool)
		ab := session.Merge(a, b)
		require.Equal(t, text(t, ab), text(t, session.Merge(b, a)), "either first")
		require.Equal(t, text(t, ab), text(t, session.Merge(ab, b)), "twice is once")
		require.Equal(t, text(t, a), text(t, session.Merge(a, a)))
		require.Equal(t, text(t, session.Merge(ab, c)), text(t, session.Merge(a, session.Merge(b, c))), "in any grouping")
		require.Equal(t, text(t, a), text(t, session.Merge(a, session.Session{ID: sessionID})))
		_, err := session.Decode([]byte(text(t, ab)))
		require.NoError(t, err, "what was merged opens")
		require.Len(t, ab.Entries, countIDs(a, b), "nothing is lost")
	}
}

func pool(random *rand.Rand) []session.Entry {
	var out []session.Entry
	for i := range 12 {
		e := entry(i/2+1, reading("pickup", fmt.Sprint(random.IntN(4))))
		if random.IntN(2) == 0 { // else it shares id and time with another
			e.ID = uuid.NewSHA1(sessionID, []byte{byte(i)})
		}
		if random.IntN(4) == 0 {
			e.At = e.At.Add(time.Duration(random.IntN(5)) * time.Minute)
		}
		out = append(out, e)
	}
	return out
}

func part(random *rand.Rand, pool []session.Entry) session.Session {
	s := session.Session{ID: sessionID}
	for _, i := range random.Perm(len(pool)) {
		if random.IntN(2) == 0 {
			s = s.Append(pool[i])
		}
	}
	return s
}

func countIDs(sessions ...session.Session) int {
	ids := map[uuid.UUID]bool{}
	for _, s := range sessions {
		for _, e := range s.Entries {
			ids[e.ID] = true
		}
	}
	return len(ids)
}

func text(t *testing.T, s session.Session) string {
	t.Helper()
	b, err := session.Encode(s)
	require.NoError(t, err)
	return string(b)
}
