package assess_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/engine/winding"
)

// in is a reading with the unit and range that the display showed.
func in(id check.ID, text, unit, dial string) session.Entry {
	return session.Entry{Reading: &session.Reading{Check: id, Text: text, Unit: unit, Range: dial}}
}

// Copper of 0.300 Ω at 20 °C that has 0.393 Ω is at 99 °C: 254.5·1.31 - 234.5.
func TestHeatOfAWinding(t *testing.T) {
	for _, c := range []struct {
		name, cold, hot string
		pair            bool
		want            float64
		outcome         spec.Outcome
		reason          spec.Reason
	}{
		{"milliohms, on tenths of an ohm", "0.300", "0.393", true, 98.9, spec.CannotTell, spec.TooCoarse},
		{"exciter", "300", "393", false, 98.9, spec.InSpec, spec.Within},
		{"too hot", "300", "520", false, 206.6, spec.OutOfSpec, spec.Above},
		{"cooler when hot", "300", "250", false, -22.4, spec.OutOfSpec, spec.CoolerHot},
		{"hardly cooler, and doubtful", "300", "293", false, 14.1, spec.CannotTell, spec.NearLimit},
	} {
		id := check.ID("exciter")
		if c.pair {
			id = "charge-pair-1-2"
		}
		r := opened(t, withMethods(3, nil, check.HotWinding), read("lead-zero", "0.000"), read(id, c.cold), read("hot-"+id, c.hot)).Report()
		require.Len(t, r.Derived, 1, c.name)
		l := derived(t, r, "heat-of-"+id)
		assert.Equal(t, spec.WindingHeat, l.Check.Measures, c.name)
		assert.InDelta(t, c.want, l.Measured.Value, 0.1, c.name)
		assert.Equal(t, c.outcome, l.Verdict.Outcome, c.name)
		assert.Equal(t, c.reason, l.Verdict.Reason, c.name)
	}
}

func TestHeatNeedsBothReadings(t *testing.T) {
	for _, e := range [][]session.Entry{
		{read("exciter", "300")}, {read("hot-exciter", "393")},
		{read("exciter", "OL"), read("hot-exciter", "OL")}, {read("exciter", "won't settle"), read("hot-exciter", "393")},
		{read("exciter", "300"), skipped("hot-exciter")}, {read("exciter", "0"), read("hot-exciter", "393")},
		{read("pickup", "300"), read("hot-exciter", "393")},
	} {
		assert.Empty(t, opened(t, append([]session.Entry{withMethods(3, nil, check.HotWinding)}, e...)...).Report().Derived, "%v", e)
	}
}

// A winding that conducts cold and not hot is broken where it warms up; a range
// that the heat alone would overflow says nothing.
func TestAWindingThatOpensWhenHot(t *testing.T) {
	for _, c := range []struct {
		hot     session.Entry
		outcome spec.Outcome
		reason  spec.Reason
	}{
		{in("hot-pickup", "OL", "Ω", "2 kΩ"), spec.OutOfSpec, spec.LineBroken},
		{in("hot-pickup", "OL", "Ω", "200 Ω"), spec.CannotTell, spec.RangeTooLow},
		{read("hot-pickup", "won't settle"), spec.CannotTell, spec.WontSettle},
	} {
		r := opened(t, withMethods(3, nil, check.HotWinding), read("lead-zero", "0.2"), read("pickup", "150"), c.hot).Report()
		l := derived(t, r, "heat-of-pickup")
		assert.Equal(t, c.outcome, l.Verdict.Outcome, c.reason)
		assert.Equal(t, c.reason, l.Verdict.Reason)
		assert.Equal(t, c.outcome, parts(r)[check.Pickup].Outcome, c.reason)
	}
}

// One last digit on a coarse range is no shorted turn.
func TestASmallColdReadingAccusesNothing(t *testing.T) {
	r := opened(t, withMethods(3, nil, check.HotWinding), read("lead-zero", "0.3"), read("charge-pair-1-2", "0.8"), read("hot-charge-pair-1-2", "0.7")).Report()
	assert.Equal(t, spec.CannotTell, derived(t, r, "heat-of-charge-pair-1-2").Verdict.Outcome)
}

// What was read cold stays cold when the set-up says later that it is hot.
func TestWarmthBelongsToTheReading(t *testing.T) {
	cold, hot := withMethods(3, nil, check.HotWinding), withMethods(3, nil, check.HotWinding)
	hot.Setup.Winding = spec.JustStopped
	r := opened(t, cold, read("lead-zero", "0.2"), read("pickup", "212"), hot, read("hot-pickup", "268")).Report()
	l := derived(t, r, "heat-of-pickup")
	assert.InDelta(t, 87, l.Measured.Value, 2)
	assert.Equal(t, spec.AirAt(20), l.Air)
}

// The doubt of the start grows with the ratio; gain cancels on one range only.
func TestDoubtOfHeat(t *testing.T) {
	heat := func(cold, hot session.Entry) float64 {
		e := withMethods(3, nil, check.HotWinding)
		return derived(t, opened(t, e, read("lead-zero", "0.0"), cold, hot).Report(), "heat-of-pickup").Measured.Std
	}
	one := heat(in("pickup", "150.0", "Ω", "200 Ω"), in("hot-pickup", "190.0", "Ω", "200 Ω"))
	two := heat(in("pickup", "150.0", "Ω", "200 Ω"), in("hot-pickup", "250", "Ω", "2 kΩ"))
	assert.InDelta(t, 5/1.7320508*190/150, one, 0.1, "next to nothing but the air")
	assert.Greater(t, two, 6.5, "of 424 K, two gains of 0.8 %/√3 are 2.8 K, the offset of the 2 kΩ range 4.4 K, the air 4.8 K")
}

func peakLine(t *testing.T, m string, microfarads float64, id check.ID, text string) assess.Line {
	t.Helper()
	e := withMethods(3, nil, check.PeakHold)
	e.Setup.Meter = m
	if microfarads > 0 { // an adapter that is known, with next to no bleeder
		e.Setup.Kit = &session.Kit{AdapterMicrofarads: microfarads, BleederMegohms: session.MaxBleeder}
	}
	return line(t, opened(t, e, in(id, text, "V", "")), id)
}

// A good meter with an adapter that is known decides both ways; a poor one
// passes only what passes as it stands, and condemns nothing.
func TestPeaks(t *testing.T) {
	good := meter.Auto6000().ID
	for _, c := range []struct {
		name, meter string
		microfarads float64
		check       check.ID
		text        string
		outcome     spec.Outcome
		reason      spec.Reason
	}{
		{"10 MΩ, adapter known, strong", good, 0.47, "exciter-peak", "150", spec.InSpec, spec.Within},
		{"10 MΩ, adapter known, weak", good, 0.47, "exciter-peak", "50", spec.OutOfSpec, spec.Below},
		{"10 MΩ, adapter known, at the limit", good, 0.47, "exciter-peak", "78.5", spec.CannotTell, spec.NearLimit},
		{"10 MΩ, adapter known, pickup without a pulse", good, 0.47, "pickup-peak", "0.0", spec.CannotTell, spec.PeakHidden},
		{"adapter turned round", good, 0.47, "box-peak", "-160", spec.CannotTell, spec.PeakHidden},
		{"10 MΩ, bleeder unknown, box weak", good, 0, "box-peak", "60", spec.CannotTell, spec.PeakHidden},
		{"10 MΩ, adapter known, box weak", good, 0.47, "box-peak", "50", spec.OutOfSpec, spec.Below},
		{"1 MΩ, adapter unknown, weak", "cheap", 0, "exciter-peak", "50", spec.CannotTell, spec.PeakHidden},
		{"1 MΩ, adapter unknown, passes as read", "cheap", 0, "exciter-peak", "100", spec.InSpec, spec.AtLeastRead},
		{"1 MΩ, adapter small", "cheap", 0.1, "box-peak", "50", spec.CannotTell, spec.PeakHidden},
		{"1 MΩ, adapter small, passes as read", "cheap", 0.1, "box-peak", "300", spec.InSpec, spec.AtLeastRead},
		{"the diode is most of it", good, 0.47, "pickup-peak", "0.30", spec.CannotTell, spec.PeakHidden},
		{"the diode is a large part", good, 0.47, "pickup-peak", "1.50", spec.InSpec, spec.AtLeastRead},
		{"more than the meter shows", "cheap", 0.47, "exciter-peak", "OL", spec.InSpec, spec.PastRange},
		{"won't settle", good, 0.47, "exciter-peak", "won't settle", spec.CannotTell, spec.WontSettle},
	} {
		l := peakLine(t, c.meter, c.microfarads, c.check, c.text)
		require.NoError(t, l.Unread, c.name)
		assert.Equal(t, c.outcome, l.Verdict.Outcome, c.name)
		assert.Equal(t, c.reason, l.Verdict.Reason, c.name)
		assert.False(t, l.NotPeak, c.name)
	}
}

func TestAPeakIsWorkedBack(t *testing.T) {
	l := peakLine(t, meter.Auto6000().ID, 0.47, "exciter-peak", "150")
	require.NotNil(t, l.Peak)
	assert.Greater(t, l.Measured.Value, 150.0)
	assert.InDelta(t, float64(l.Peak.Value), l.Measured.Value, 1e-9)
	assert.InDelta(t, 150, l.Measured.Shown, 1e-9)
	assert.LessOrEqual(t, l.Peak.Low, l.Peak.Value)
	assert.GreaterOrEqual(t, l.Peak.High, l.Peak.Value)
	lost := peakLine(t, "cheap", 0, "exciter-peak", "50")
	assert.Equal(t, []spec.Remedy{spec.HigherInput, spec.Repeat}, lost.Verdict.Remedies)
	passed := peakLine(t, "cheap", 0, "exciter-peak", "100")
	assert.InDelta(t, 100, passed.Verdict.Value, 1e-9, "judged as it stands")
	assert.Nil(t, peakLine(t, "cheap", 0.47, "exciter-peak", "OL").Peak)

	unknown, printed := peakLine(t, meter.Auto6000().ID, 0, "exciter-peak", "150").Peak, l.Peak
	assert.Greater(t, unknown.High-unknown.Low, 2*(printed.High-printed.Low), "what is printed on the adapter narrows the peak")
	b := opened(t, setup(check.DefaultBuild()), read("exciter-cranking", "75"))
	assert.True(t, line(t, b, "exciter-cranking").NotPeak, "without an adapter no height is read")
}

// The standard asks for 20 MΩ at 20 °C by its stricter rule and 28 MΩ at the
// 15 °C that the winding may have; by the other 6.6 MΩ.
func TestInsulationIsNeverPassed(t *testing.T) {
	high := meter.SheetOf(meter.Cheap())
	high.Lines = append(high.Lines, meter.Line{Function: "ohms", Nominal: 200e6, Accuracy: meter.Accuracy{Percent: 5, Digits: 10}})
	for _, c := range []struct {
		name, meter, text, dial string
		want                    winding.Proof
		shown                   float64
	}{
		{"open line on 2 MΩ", "cheap", "OL", "", winding.ProvesNothing, 2e6},
		{"open line on 60 MΩ", "auto6000", "OL", "", winding.ProvesNoDefect, 60e6},
		{"open line on 200 MΩ", session.OwnMeter, "OL", "200 MΩ", winding.ProvesNoDefect, 200e6},
		{"below by any rule", "cheap", "0.500", "", winding.ProvesFailure, 0.5e6},
		{"between the rules", "auto6000", "10.00", "", winding.ProvesNothing, 10e6},
		{"above the rule, not where it is coldest", "auto6000", "25.00", "", winding.ProvesNothing, 25e6},
		{"above both", "auto6000", "50.00", "", winding.ProvesNoDefect, 50e6},
	} {
		e := setup(check.DefaultBuild())
		e.Setup.Meter = c.meter
		if c.meter == session.OwnMeter {
			e.Setup.Own = &session.Own{Sheet: high}
		}
		b := opened(t, e, in("charge-core-1", c.text, "MΩ", c.dial))
		got, ok := b.InsulationOf(line(t, b, "charge-core-1"))
		require.True(t, ok, c.name)
		assert.Equal(t, c.want, got.Proof, c.name)
		assert.InDelta(t, c.shown, float64(got.Shown), 1, c.name)
		assert.Equal(t, c.text == "OL", got.Open, c.name)
		assert.InDelta(t, 20e6, float64(got.Least), 1e3, c.name)
		assert.InDelta(t, 6.56e6, float64(got.Flattest), 1e4, c.name)
		assert.Equal(t, quantity.Celsius(20), got.At)
	}
}

func TestInsulationIsReadOfOpenLinesAlone(t *testing.T) {
	b := opened(t, setup(check.DefaultBuild()), read("charge-pair-1-2", "1.1"), read("charge-core-1", "won't settle"), skipped("charge-core-2"))
	for _, id := range []check.ID{"charge-pair-1-2", "charge-core-1", "charge-core-2", "charge-core-3"} {
		_, ok := b.InsulationOf(line(t, b, id))
		assert.False(t, ok, id)
	}
}

// touchEntries are the readings of a winding on the 200 Ω range.
func touchEntries(leads int, zero string, core, between []string) []session.Entry {
	b := check.DefaultBuild()
	b.ChargeLeads = leads
	e := []session.Entry{setup(b), read("lead-zero", zero)}
	for i, text := range core {
		e = append(e, in(check.ID("charge-core-"+string(rune('1'+i))), text, "Ω", "200 Ω"))
	}
	for i, p := range b.Pairs() {
		if i < len(between) {
			e = append(e, in(check.ID("charge-pair-"+string(rune('0'+p[0]))+"-"+string(rune('0'+p[1]))), between[i], "Ω", "200 Ω"))
		}
	}
	return e
}

func TestWhereAWindingTouchesTheCore(t *testing.T) {
	pairs := []string{"40.0", "40.0", "40.0"}
	star := opened(t, touchEntries(3, "0.0", []string{"10.0", "30.0", "30.0"}, pairs)...).Report().Touch
	require.NotNil(t, star)
	assert.Equal(t, winding.TouchInPhase, star.Place)
	assert.Equal(t, 0, star.Phase)
	assert.InDelta(t, 0.5, star.Share, 1e-6)
	single := opened(t, touchEntries(2, "0.0", []string{"6.0", "14.0"}, []string{"20.0"})...).Report().Touch
	require.NotNil(t, single)
	assert.Equal(t, winding.TouchInPhase, single.Place)
	assert.InDelta(t, 0.3, single.Share, 1e-6)

	for name, e := range map[string][]session.Entry{
		"all open":       touchEntries(3, "0.0", []string{"OL", "OL", "OL"}, pairs),
		"not all read":   touchEntries(3, "0.0", []string{"10.0", "30.0"}, pairs),
		"a pair missing": touchEntries(3, "0.0", []string{"10.0", "30.0", "30.0"}, pairs[:2]),
		"won't settle":   touchEntries(3, "0.0", []string{"10.0", "30.0", "won't settle"}, pairs),
		"bad leads":      touchEntries(3, "OL", []string{"10.0", "30.0", "30.0"}, pairs),
		"two windings":   touchEntries(4, "0.0", []string{"10.0", "30.0", "30.0", "30.0"}, pairs[:2]),
	} {
		assert.Nil(t, opened(t, e...).Report().Touch, name)
	}
}

func pairsRead(zero string, texts ...string) []session.Entry {
	return touchEntries(3, zero, nil, texts)
}

func TestCoilsBehindThreeLeads(t *testing.T) {
	w := opened(t, pairsRead("0.00", "0.62", "0.60", "0.64")...).Report().Winding
	require.NotNil(t, w)
	assert.False(t, w.ByDrops)
	assert.True(t, w.Sound)
	assert.Empty(t, w.Fits)
	for i, want := range []float64{0.33, 0.29, 0.31} {
		assert.InDelta(t, want, float64(w.Star.Phases[i]), 1e-9)
		assert.Positive(t, w.Star.Std[i])
	}
	require.Nil(t, w.Delta.None)
	got := []float64{float64(w.Delta.Phases[0]), float64(w.Delta.Phases[1]), float64(w.Delta.Phases[2])}
	for i, want := range []float64{0.92871, 0.87242, 0.99276} {
		assert.InDelta(t, want, got[i], 1e-5, "%v", got)
	}

	open := opened(t, pairsRead("0.0", "20.0", "OL", "OL")...).Report().Winding
	require.NotNil(t, open)
	assert.NotNil(t, open.Star.None)
	assert.NotNil(t, open.Delta.None)
	assert.False(t, open.Sound)
	var kinds []winding.FaultKind
	for _, f := range open.Fits {
		kinds = append(kinds, f.Fault.Kind)
		assert.Equal(t, 2, f.Fault.At, "what leads to C is open")
	}
	assert.Contains(t, kinds, winding.LeadOpen)

	assert.Nil(t, opened(t, pairsRead("0.0", "0.62", "0.60", "won't settle")...).Report().Winding)
	assert.Nil(t, opened(t, pairsRead("OL", "0.62", "0.60", "0.64")...).Report().Winding)
	assert.Nil(t, opened(t, pairsRead("0.0", "0.62", "0.60")...).Report().Winding)

	e := append([]session.Entry{withMethods(3, known47(), check.VoltAmp), read("lead-zero", "OL")}, drops("1-2", "141.0", "186.0")...)
	e = append(append(e, drops("2-3", "141.0", "180.0")...), drops("3-1", "141.0", "192.0")...)
	w = opened(t, e...).Report().Winding
	require.NotNil(t, w, "drops need no good ohm leads")
	assert.True(t, w.ByDrops)
	assert.InDelta(t, 0.33, float64(w.Star.Phases[0]), 1e-9)
}
