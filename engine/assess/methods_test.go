package assess_test

import (
	"math"
	"testing"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/engine/uncertainty"
)

func again(id check.ID, text string) session.Entry {
	return session.Entry{Reading: &session.Reading{Check: id, Text: text, Again: true}}
}

func withMethods(leads int, kit *session.Kit, methods ...check.Method) session.Entry {
	b := check.DefaultBuild()
	b.ChargeLeads = leads
	e := setup(b)
	e.Setup.Kit, e.Setup.Methods = kit, methods
	return e
}

func known47() *session.Kit { return &session.Kit{ResistorOhms: 0.47, ResistorPercent: 1} }

// drops are the readings over resistor and winding for one pair, in mV.
func drops(name, known, winding string) []session.Entry {
	return []session.Entry{read(check.ID("volt-amp-known-"+name), known), read(check.ID("volt-amp-winding-"+name), winding)}
}

func derived(t *testing.T, r assess.Report, id check.ID) assess.Line {
	t.Helper()
	for _, l := range r.Derived {
		if l.Check.ID == id {
			return l
		}
	}
	require.Fail(t, "nothing was worked out", id)
	return assess.Line{}
}

func TestRepeatsCountTogether(t *testing.T) {
	entries := []session.Entry{setup(check.DefaultBuild()), read("lead-zero", "0.2"), read("charge-pair-1-2", "1.1")}
	one := line(t, opened(t, entries...), "charge-pair-1-2")
	for _, text := range []string{"1.2", "1.0", "1.1", "1.2", "1.0", "1.1", "1.2", "1.0", "1.1", "1.2", "1.0"} {
		entries = append(entries, again("charge-pair-1-2", text))
	}
	many := line(t, opened(t, entries...), "charge-pair-1-2")
	assert.Equal(t, 12, many.Repeats.Count)
	assert.Len(t, many.Run, 12)
	assert.Equal(t, "1.2", many.Run[1].Entry.Reading.Text)
	assert.Zero(t, many.Earlier, "nothing was replaced")
	assert.InDelta(t, 1.1-0.2, many.Measured.Value, 1e-9)
	assert.Less(t, many.Measured.Own, 0.8*one.Measured.Own)
	assert.Less(t, many.Measured.Std, one.Measured.Std)
	assert.Equal(t, -1, many.Repeats.Retake)
	assert.False(t, many.Repeats.Wanders)

	entries = append(entries, read("charge-pair-1-2", "1.3"))
	anew := line(t, opened(t, entries...), "charge-pair-1-2")
	assert.Equal(t, 1, anew.Repeats.Count, "a reading that is not one more of the same stands alone")
	assert.Equal(t, 12, anew.Earlier)
}

// What is being typed counts with what is recorded, as it would once recorded.
func TestALiveReadingJoinsTheRun(t *testing.T) {
	before := []session.Entry{setup(check.DefaultBuild()), read("pickup", "212"), again("pickup", "214")}
	b := opened(t, before...)
	c, _ := check.Find(b.Plan, "pickup")
	live := b.Judge(c, session.Reading{Check: "pickup", Text: "216", Again: true})
	assert.Equal(t, 3, live.Repeats.Count)
	assert.Zero(t, live.Run[2].Entry, "the one being typed has no entry yet")
	recorded := line(t, opened(t, append(before, again("pickup", "216"))...), "pickup")
	assert.InDelta(t, recorded.Measured.Value, live.Measured.Value, 1e-9)
	assert.Equal(t, recorded.Verdict, live.Verdict)
	assert.Equal(t, 1, b.Judge(c, session.Reading{Check: "pickup", Text: "216"}).Repeats.Count)
	assert.Equal(t, 2, line(t, b, "pickup").Repeats.Count, "nothing was recorded")
}

func TestAnOutlierIsAskedForAgain(t *testing.T) {
	entries := []session.Entry{setup(check.DefaultBuild()), read("lead-zero", "0.2"), read("charge-pair-1-2", "1.1"), again("charge-pair-1-2", "1.1"),
		again("charge-pair-1-2", "1.2"), again("charge-pair-1-2", "1.1"), again("charge-pair-1-2", "1.9")}
	l := line(t, opened(t, entries...), "charge-pair-1-2")
	assert.Equal(t, 4, l.Repeats.Retake)
	require.NotEmpty(t, l.Verdict.Remedies)
	assert.Equal(t, spec.RetakeOne, l.Verdict.Remedies[0])

	wrong := l.Run[4].Entry.ID
	require.NotEqual(t, uuid.Nil, wrong)
	entries = append(entries, session.Entry{Reading: &session.Reading{Check: "charge-pair-1-2", Text: "1.1", Corrects: &wrong}})
	l = line(t, opened(t, entries...), "charge-pair-1-2")
	assert.Equal(t, -1, l.Repeats.Retake)
	assert.Equal(t, 5, l.Repeats.Count)
	assert.Equal(t, 1, l.Earlier)
	assert.NotContains(t, l.Verdict.Remedies, spec.RetakeOne)
}

// Digits that wander have a cause that no averaging takes away.
func TestWanderingReadingsAreDoubtfulByTheirSpread(t *testing.T) {
	l := line(t, opened(t, setup(check.DefaultBuild()), read("lead-zero", "0.2"), read("charge-pair-1-2", "1.1"), again("charge-pair-1-2", "1.5"),
		again("charge-pair-1-2", "1.9")), "charge-pair-1-2")
	assert.True(t, l.Repeats.Wanders)
	assert.GreaterOrEqual(t, l.Measured.Own, uncertainty.Rectangular(0.4))
	require.NotEmpty(t, l.Verdict.Remedies)
	assert.Equal(t, spec.CleanContact, l.Verdict.Remedies[0])
}

func TestARunWithATextThatCannotBeReadIsUnread(t *testing.T) {
	l := line(t, opened(t, setup(check.DefaultBuild()), read("pickup", "212"), again("pickup", "1,234")), "pickup")
	require.Error(t, l.Unread)
	assert.False(t, l.Read())
	l = line(t, opened(t, setup(check.DefaultBuild()), read("pickup", "212"), again("pickup", "OL")), "pickup")
	assert.Equal(t, spec.WontSettle, l.Verdict.Reason, "once a number, once open")
}

// Worked example: 0.47 Ω within 1 %, 141.0 mV over it and 180.0 mV over the
// pair make 0.600 Ω. Of the doubt 1 %/√3 is the resistor's, 0.2 mV/√3 in each
// reading the display's; 0.5 % of the meter's gain cancels.
func TestOhmsByDrops(t *testing.T) {
	entries := append([]session.Entry{withMethods(3, known47(), check.VoltAmp)}, drops("1-2", "141.0", "180.0")...)
	r := opened(t, entries...).Report()
	l := derived(t, r, "volt-amp-1-2")
	assert.Len(t, r.Derived, 1)
	assert.Equal(t, spec.ChargePair, l.Check.Measures)
	assert.Equal(t, []int{1, 2}, l.Check.Leads)
	assert.True(t, l.Derived)
	assert.True(t, l.Judged())
	assert.InDelta(t, 0.600, l.Measured.Value, 1e-9)
	assert.InDelta(t, 0.01/1.7320508, l.Measured.Gain, 1e-6)
	heat := 2.0 / 1.7320508 / 254.5 / 1.4142136
	assert.InDelta(t, 0.00587, rootLess(l.Measured.Std/l.Measured.Value, heat), 0.00001)
	assert.InDelta(t, 0.00104, rootLess(l.Measured.Own/l.Measured.Value, heat), 0.00001)
	assert.Equal(t, spec.InSpec, l.Verdict.Outcome)
	assert.False(t, line(t, opened(t, entries...), "volt-amp-known-1-2").Judged(), "a drop by itself has no verdict")
	assert.Equal(t, 2, r.Fine.Missing)
}

// rootLess takes one part out of a root of summed squares.
func rootLess(all, part float64) float64 { return math.Sqrt(all*all - part*part) }

// Two ranges of a meter have each an error of their own, and it no longer
// cancels.
func TestDropsOnTwoRangesKeepTheirGains(t *testing.T) {
	own := func(winding string) float64 {
		m := derived(t, opened(t, append([]session.Entry{withMethods(2, known47(), check.VoltAmp)}, drops("1-2", "180.0", winding)...)...).Report(),
			"volt-amp-1-2").Measured
		return m.Own / m.Value
	}
	gains := uncertainty.Rectangular(0.005)
	digits, heat := uncertainty.Rectangular(2e-3)/0.250, 2.0/1.7320508/254.5/1.4142136
	first := uncertainty.Rectangular(0.2e-3) / 0.180
	want := math.Sqrt(2*gains*gains + digits*digits + heat*heat + first*first)
	assert.InDelta(t, want, own("0.250 V"), 1e-5)
	assert.Less(t, own("190.0"), 0.5*want)
}

func TestDropsThatTellNothing(t *testing.T) {
	pair := drops("1-2", "141.0", "180.0")
	for _, c := range []struct {
		name    string
		kit     *session.Kit
		entries []session.Entry
	}{
		{"no kit", nil, pair},
		{"resistor unknown", &session.Kit{AdapterMicrofarads: 1}, pair},
		{"known drop missing", known47(), pair[1:]},
		{"winding drop missing", known47(), pair[:1]},
		{"no current", known47(), drops("1-2", "0.0", "180.0")},
		{"a dark bulb", known47(), drops("1-2", "1.9", "2.4")},
		{"a probe off the metal", known47(), drops("1-2", "141.0", "0.0")},
		{"over-range", known47(), drops("1-2", "OL", "180.0")},
		{"winding over-range", known47(), drops("1-2", "141.0", "OL")},
		{"won't settle", known47(), drops("1-2", "141.0", "won't settle")},
		{"skipped", known47(), []session.Entry{pair[0], skipped("volt-amp-winding-1-2")}},
	} {
		r := opened(t, append([]session.Entry{withMethods(3, c.kit, check.VoltAmp)}, c.entries...)...).Report()
		assert.Empty(t, r.Derived, c.name)
		require.NotNil(t, r.Fine, c.name)
		assert.Equal(t, 3, r.Fine.Missing, c.name)
		assert.Equal(t, spec.CannotCompare, r.Fine.Verdict.Reason, c.name)
	}
}

// Probes turned round are no fault.
func TestDropsCountBySize(t *testing.T) {
	for _, signs := range [][2]string{{"", "-"}, {"-", ""}, {"-", "-"}} {
		r := opened(t, append([]session.Entry{withMethods(3, known47(), check.VoltAmp)}, drops("1-2", signs[0]+"141.0", signs[1]+"180.0")...)...).Report()
		require.Len(t, r.Derived, 1)
		assert.InDelta(t, 0.6, r.Derived[0].Measured.Value, 1e-9)
	}
}

func TestDropsOfOtherBuilds(t *testing.T) {
	r := opened(t, append([]session.Entry{withMethods(1, known47(), check.VoltAmp)}, drops("1-core", "141.0", "180.0")...)...).Report()
	l := derived(t, r, "volt-amp-1-core")
	assert.Equal(t, spec.ChargeGrounded, l.Check.Measures)
	assert.Equal(t, spec.InSpec, l.Verdict.Outcome)
	assert.Nil(t, r.Fine, "one winding has nothing to be compared with")

	e := append([]session.Entry{withMethods(4, known47(), check.VoltAmp)}, drops("1-2", "141.0", "180.0")...)
	r = opened(t, append(e, drops("3-4", "141.0", "150.0")...)...).Report()
	assert.Len(t, r.Derived, 2)
	require.NotNil(t, r.Fine)
	assert.Zero(t, r.Fine.Missing)
	assert.Equal(t, spec.OutOfSpec, r.Fine.Verdict.Outcome, "9 % off the mean")
	assert.Nil(t, r.Winding, "two phases are no star")
}

// starShort is a star of 0.3 Ω with 12 % of the turns of phase A shorted: 0.564,
// 0.600 and 0.564 Ω between the leads.
func starShort(methods ...check.Method) []session.Entry {
	return []session.Entry{withMethods(3, known47(), methods...), read("lead-zero", "0.2"), read("charge-pair-1-2", "0.8"),
		read("charge-pair-2-3", "0.8"), read("charge-pair-3-1", "0.8"), read("charge-core-1", "OL"), read("charge-core-2", "OL"), read("charge-core-3", "OL")}
}

func withDrops(e []session.Entry, a, b, c string) []session.Entry {
	e = append(e, drops("1-2", "141.0", a)...)
	e = append(e, drops("2-3", "141.0", b)...)
	return append(e, drops("3-1", "141.0", c)...)
}

func TestDropsFindWhatOhmsCannot(t *testing.T) {
	coarse := opened(t, starShort()...).Report()
	assert.Nil(t, coarse.Fine)
	assert.Equal(t, spec.CannotTell, coarse.Balance.Verdict.Outcome)
	assert.Greater(t, coarse.Balance.Half, 0.12)
	assert.Equal(t, spec.CannotTell, parts(coarse)[check.ChargeWinding].Outcome)

	short := opened(t, withDrops(starShort(check.VoltAmp), "169.2", "180.0", "169.2")...).Report()
	require.NotNil(t, short.Fine)
	assert.Equal(t, spec.OutOfSpec, short.Fine.Verdict.Outcome)
	assert.Equal(t, 1, short.Fine.Verdict.Worst)
	assert.InDelta(t, 0.12/(3-0.12), short.Fine.Verdict.Value, 1e-6)
	assert.Less(t, short.Fine.Half, short.Fine.Most)
	assert.Less(t, short.Fine.Most, 0.13)
	assert.Equal(t, spec.OutOfSpec, parts(short)[check.ChargeWinding].Outcome)
	require.NotNil(t, short.Winding)
	assert.True(t, short.Winding.ByDrops)
	assert.False(t, short.Winding.Sound)
	assert.NotEmpty(t, short.Winding.Fits)
}

// What the ohm range could not tell no longer counts where drops told it.
func TestABetterMethodCountsInPlaceOfTheCoarse(t *testing.T) {
	sound := opened(t, withDrops(starShort(check.VoltAmp), "180.0", "180.3", "179.8")...).Report()
	assert.Equal(t, spec.CannotTell, sound.Balance.Verdict.Outcome)
	assert.Equal(t, spec.InSpec, sound.Fine.Verdict.Outcome)
	assert.Equal(t, assess.PartResult{Part: check.ChargeWinding, Outcome: spec.InSpec, Tested: 9, Of: 9}, parts(sound)[check.ChargeWinding])

	// One pair of drops missing: the fine balance does not count yet.
	e := withDrops(starShort(check.VoltAmp), "180.0", "180.3", "179.8")
	assert.Equal(t, spec.CannotTell, parts(opened(t, e[:len(e)-1]...).Report())[check.ChargeWinding].Outcome)

	// A pair too small for the ohm range, and the same pair by drops.
	low := []session.Entry{withMethods(2, known47(), check.VoltAmp), read("lead-zero", "0.2"), read("charge-pair-1-2", "0.3"),
		read("charge-core-1", "OL"), read("charge-core-2", "OL")}
	assert.Equal(t, spec.CannotTell, parts(opened(t, low...).Report())[check.ChargeWinding].Outcome)
	assert.Equal(t, spec.InSpec, parts(opened(t, append(low, drops("1-2", "141.0", "30.0")...)...).Report())[check.ChargeWinding].Outcome)

	// A verdict that was given stays, whatever the drops say.
	broken := []session.Entry{withMethods(2, known47(), check.VoltAmp), read("lead-zero", "0.2"), read("charge-pair-1-2", "OL")}
	assert.Equal(t, spec.OutOfSpec, parts(opened(t, append(broken, drops("1-2", "141.0", "30.0")...)...).Report())[check.ChargeWinding].Outcome)
}

func TestWhatALiveReadingTellsWithOthers(t *testing.T) {
	judged := func(id check.ID, text string, e ...session.Entry) (assess.Line, bool) {
		b := opened(t, append([]session.Entry{withMethods(3, known47(), check.VoltAmp, check.HotWinding)}, e...)...)
		c, ok := check.Find(b.Plan, id)
		require.True(t, ok, id)
		return b.WorkedOut(b.Judge(c, session.Reading{Check: id, Text: text}))
	}
	pair := drops("1-2", "141.0", "180.0")
	for _, c := range []struct {
		id     check.ID
		text   string
		before session.Entry
		want   check.ID
		value  float64
	}{
		{"volt-amp-winding-1-2", "180.0", pair[0], "volt-amp-1-2", 0.600},
		{"volt-amp-known-1-2", "141.0", pair[1], "volt-amp-1-2", 0.600},
		{"hot-pickup", "393", read("pickup", "300"), "heat-of-pickup", 99},
	} {
		l, ok := judged(c.id, c.text, c.before)
		require.True(t, ok, c.id)
		assert.Equal(t, c.want, l.Check.ID)
		assert.InDelta(t, c.value, l.Measured.Value, 0.2)
		assert.True(t, l.Judged())
		assert.Equal(t, spec.InSpec, l.Verdict.Outcome)
		_, ok = judged(c.id, c.text)
		assert.False(t, ok, "%s alone", c.id)
		_, ok = judged(c.id, "1,234", c.before)
		assert.False(t, ok, "%s unread", c.id)
	}
	_, ok := judged("pickup", "300")
	assert.False(t, ok, "counts by itself")
	_, ok = judged("volt-amp-known-2-3", "141.0", pair[1])
	assert.False(t, ok, "the drop of another pair")
}
