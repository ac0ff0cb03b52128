package assess_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/specs"
)

func setup(b check.Build) session.Entry {
	warm := 20.0
	return session.Entry{Setup: &session.Setup{Build: b, Meter: "cheap", Ambient: &warm, Profile: "any-small-machine"}}
}

func read(id check.ID, text string) session.Entry {
	return session.Entry{Reading: &session.Reading{Check: id, Text: text}}
}

func skipped(id check.ID) session.Entry { return session.Entry{Skip: &session.Skip{Check: id}} }

func opened(t testing.TB, entries ...session.Entry) assess.Bench {
	t.Helper()
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	return assess.Open(folded(entries...), profiles)
}

func folded(entries ...session.Entry) session.State {
	s := session.Session{ID: uuid.NewSHA1(uuid.Nil, []byte("session"))}
	for i, e := range asTheScreenWrites(entries) {
		e.ID = uuid.NewSHA1(s.ID, fmt.Append(nil, i))
		e.At = time.Date(2026, 5, 1, 9, i, 0, 0, time.UTC)
		s = s.Append(e)
	}
	return s.Fold()
}

// asTheScreenWrites gives each reading the warmth that the set-up before it holds.
func asTheScreenWrites(entries []session.Entry) (out []session.Entry) {
	var now spec.Warmth
	for _, e := range entries {
		if e.Setup != nil {
			now = e.Setup.Winding
		}
		if e.Reading != nil && e.Reading.Winding == "" {
			r := *e.Reading
			r.Winding, e.Reading = now, &r
		}
		out = append(out, e)
	}
	return out
}

func line(t *testing.T, b assess.Bench, id check.ID) assess.Line {
	t.Helper()
	c, ok := check.Find(b.Plan, id)
	require.True(t, ok, id)
	return b.Line(c)
}

func TestWhatIsNotKnownGivesWay(t *testing.T) {
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	st := folded()
	st.Setup.Meter, st.Setup.Profile, st.Setup.Ambient = "golden", "none", nil
	b := assess.Open(st, profiles)
	assert.Equal(t, "cheap", b.Meter.ID)
	assert.Equal(t, specs.DefaultID, b.Profile.ID)
	assert.Equal(t, spec.AirUnknown(), b.Air)

	warm := 31.0
	st.Setup.Meter, st.Setup.Profile, st.Setup.Ambient = "auto6000", "ac-fed-ignition", &warm
	b = assess.Open(st, profiles)
	assert.Equal(t, "auto6000", b.Meter.ID)
	assert.Equal(t, "ac-fed-ignition", b.Profile.ID)
	assert.Equal(t, spec.AirAt(31), b.Air)
}

// The lead zero counts for every reading, those before it too.
func TestLeadZeroIsTakenOffAllReadings(t *testing.T) {
	b := opened(t, setup(check.DefaultBuild()), read("charge-pair-1-2", "1.1"), read("lead-zero", "0.4"), read("charge-pair-2-3", "1.1"))
	for _, id := range []check.ID{"charge-pair-1-2", "charge-pair-2-3"} {
		l := line(t, b, id)
		assert.InDelta(t, 0.7, l.Measured.Value, 1e-9)
		assert.True(t, l.Measured.Zeroed)
	}
	assert.InDelta(t, 0.4, line(t, b, "lead-zero").Measured.Value, 1e-9, "not of itself")

	for _, e := range []session.Entry{read("lead-zero", "garbage"), skipped("lead-zero"), read("lead-zero", "OL")} {
		b = opened(t, setup(check.DefaultBuild()), e, read("charge-pair-1-2", "1.1"))
		assert.InDelta(t, 0.85, line(t, b, "charge-pair-1-2").Measured.Value, 1e-9)
	}
}

func TestLinesTellWhatBecameOfACheck(t *testing.T) {
	b := opened(t, setup(check.DefaultBuild()), read("pickup", "21"), read("pickup", "212"), skipped("exciter"), read("core-continuity", "1,234"),
		read("exciter-cranking", "won't settle"))
	pickup := line(t, b, "pickup")
	assert.True(t, pickup.Answered)
	assert.Equal(t, 1, pickup.Earlier)
	assert.Equal(t, "212 Ω", pickup.Typed.String())
	assert.Equal(t, spec.InSpec, pickup.Verdict.Outcome)
	assert.True(t, line(t, b, "exciter").Skipped)
	assert.False(t, line(t, b, "lead-zero").Answered)
	var ask *quantity.AmbiguousError
	assert.ErrorAs(t, line(t, b, "core-continuity").Unread, &ask)
	assert.Equal(t, spec.WontSettle, line(t, b, "exciter-cranking").Verdict.Reason)
	assert.Equal(t, []check.ID{"lead-zero", "core-continuity", "charge-pair-1-2", "charge-pair-2-3", "charge-pair-3-1",
		"charge-core-1", "charge-core-2", "charge-core-3", "pickup-gap", "exciter"}, b.Report().Untested)
}

func TestTheDialOfTheReadingCounts(t *testing.T) {
	b := opened(t, setup(check.DefaultBuild()))
	c, _ := check.Find(b.Plan, "charge-core-1")
	low := b.Judge(c, session.Reading{Check: c.ID, Text: "OL", Range: "200 kΩ"})
	assert.Equal(t, spec.RangeTooLow, low.Verdict.Reason)
	assert.Equal(t, spec.OpenAsMust, b.Judge(c, session.Reading{Check: c.ID, Text: "OL"}).Verdict.Reason)
	gap, _ := check.Find(b.Plan, "pickup-gap")
	l := b.Judge(gap, session.Reading{Check: gap.ID, Text: "14", Unit: "thou"})
	assert.InDelta(t, 14*25.4e-6, l.Measured.Value, 1e-12)
}

// Cranking is below the band of every bundled meter.
func TestCrankingIsOffBand(t *testing.T) {
	b := opened(t, setup(check.DefaultBuild()), read("exciter-cranking", "75"))
	assert.True(t, line(t, b, "exciter-cranking").Measured.OffAC)
}

func TestAProfileWithoutALimitJudgesNothing(t *testing.T) {
	profiles := []spec.Profile{{ID: "bare", Limits: map[spec.Measurand]spec.Limit{}}}
	b := assess.Open(folded(setup(check.DefaultBuild()), read("pickup", "212")), profiles)
	assert.Equal(t, spec.NoLimit, line(t, b, "pickup").Verdict.Reason)
	assert.Nil(t, b.Report().Balance)
}

func TestBalanceNeedsEveryPair(t *testing.T) {
	three := []session.Entry{setup(check.DefaultBuild()), read("lead-zero", "0.2"), read("charge-pair-1-2", "1.1"), read("charge-pair-2-3", "1.1")}
	b := opened(t, three...).Report().Balance
	require.NotNil(t, b)
	assert.Equal(t, 1, b.Missing)
	assert.Equal(t, spec.CannotCompare, b.Verdict.Reason)
	for _, last := range []session.Entry{skipped("charge-pair-3-1"), read("charge-pair-3-1", "?")} {
		assert.Equal(t, 1, opened(t, append(three, last)...).Report().Balance.Missing)
	}
	b = opened(t, append(three, read("charge-pair-3-1", "1.1"))...).Report().Balance
	assert.Zero(t, b.Missing)
	assert.Equal(t, spec.InSpec, b.Verdict.Outcome)
	assert.Len(t, b.Checks, 3)

	build := check.DefaultBuild()
	build.ChargeLeads = 2
	assert.Nil(t, opened(t, setup(build)).Report().Balance, "one pair has nothing to be compared with")
}

func parts(r assess.Report) map[check.Part]assess.PartResult {
	out := map[check.Part]assess.PartResult{}
	for _, p := range r.Parts {
		out[p.Part] = p
	}
	return out
}

// A part is as good as its worst reading; without readings nothing is said.
func TestPartsTakeTheirWorstReading(t *testing.T) {
	got := parts(opened(t, setup(check.DefaultBuild()), read("lead-zero", "0.2"), read("pickup", "212"), read("pickup-gap", "2"),
		read("charge-core-1", "OL"), read("charge-pair-1-2", "1.1"), read("charge-pair-2-3", "1.1"), read("charge-pair-3-1", "2.2")).Report())
	assert.Equal(t, assess.PartResult{Part: check.Pickup, Outcome: spec.OutOfSpec, Tested: 2, Of: 2}, got[check.Pickup])
	assert.Equal(t, assess.PartResult{Part: check.ChargeWinding, Outcome: spec.OutOfSpec, Tested: 4, Of: 6}, got[check.ChargeWinding], "by the balance alone")
	assert.Equal(t, assess.PartResult{Part: check.MeterLeads, Outcome: spec.InSpec, Tested: 1, Of: 1}, got[check.MeterLeads])
	assert.Equal(t, assess.PartResult{Part: check.Exciter, Outcome: spec.CannotTell, Tested: 0, Of: 2}, got[check.Exciter])
	got = parts(opened(t, setup(check.DefaultBuild()), read("pickup", "212"), read("pickup-gap", "1.30")).Report())
	assert.Equal(t, spec.CannotTell, got[check.Pickup].Outcome)
}

// Each bundled meter can be used for each build: no check lacks a range.
func TestEveryMeterServesEveryPlan(t *testing.T) {
	for _, m := range meter.Bundled() {
		for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
			build := check.DefaultBuild()
			build.ChargeLeads = leads
			e := setup(build)
			e.Setup.Meter = m.ID
			b := opened(t, e)
			for _, c := range b.Plan {
				l := b.Judge(c, session.Reading{Check: c.ID, Text: "1.0"})
				require.NoError(t, l.Unread, c.ID)
				require.NotEmpty(t, l.Verdict.Reason, c.ID)
				require.True(t, l.Verdict.HasLimit, "%s: every profile limits every check", c.ID)
			}
		}
	}
}
