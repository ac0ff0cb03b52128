package assess_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

func selfCheck(kit *session.Kit, entries ...session.Entry) []session.Entry {
	e := setup(check.DefaultBuild())
	e.Setup.Aim, e.Setup.Kit = check.SelfCheck, kit
	if kit != nil {
		e.Setup.Methods = []check.Method{check.ResistorCheck}
	}
	return append([]session.Entry{e}, entries...)
}

func battery(dc, ac, swapped string) []session.Entry {
	return []session.Entry{read("battery-dc", dc), read("battery-ac", ac), read("battery-ac-swapped", swapped)}
}

func TestWhatASelfCheckTells(t *testing.T) {
	known := &session.Kit{ResistorOhms: 100, ResistorPercent: 1}
	for _, c := range []struct {
		name    string
		kit     *session.Kit
		entries []session.Entry
		want    func(t *testing.T, l meter.Learned)
	}{
		{"nothing read", nil, nil, func(t *testing.T, l meter.Learned) { assert.True(t, l.Nothing()) }},
		{"behind a capacitor", nil, battery("12.60", "0.0", "0.0"), func(t *testing.T, l meter.Learned) {
			assert.ElementsMatch(t, []meter.Detector{meter.AverageAC, meter.TrueRMS}, l.Detectors)
			assert.True(t, l.BlocksDC())
		}},
		{"average with DC", nil, battery("12.60", "14.0", "14.0"), func(t *testing.T, l meter.Learned) {
			assert.Equal(t, []meter.Detector{meter.AverageDC}, l.Detectors)
		}},
		{"one diode", nil, battery("12.60", "28.0", "0.0"), func(t *testing.T, l meter.Learned) {
			assert.Equal(t, []meter.Detector{meter.HalfWave}, l.Detectors)
		}},
		{"one diode, red on minus throughout", nil, battery("-12.60", "0.0", "28.0"), func(t *testing.T, l meter.Learned) {
			assert.Equal(t, []meter.Detector{meter.HalfWave}, l.Detectors)
		}},
		{"no detector reads so", nil, battery("12.60", "60.0", "60.0"), func(t *testing.T, l meter.Learned) { assert.True(t, l.NoneFits) }},
		{"swapped reading missing", nil, battery("12.60", "28.0", "0.0")[:2], func(t *testing.T, l meter.Learned) { assert.Empty(t, l.Detectors) }},
		{"a reading unread", nil, battery("12.60", "28.0", "?"), func(t *testing.T, l meter.Learned) { assert.Empty(t, l.Detectors) }},
		{"good leads", nil, []session.Entry{read("lead-zero", "0.3")}, func(t *testing.T, l meter.Learned) { assert.Equal(t, meter.LeadsGood, l.Leads) }},
		{"worn leads", nil, []session.Entry{read("lead-zero", "2.0")}, func(t *testing.T, l meter.Learned) { assert.Equal(t, meter.LeadsWorn, l.Leads) }},
		{"open leads", nil, []session.Entry{read("lead-zero", "OL")}, func(t *testing.T, l meter.Learned) { assert.Equal(t, meter.LeadsOpen, l.Leads) }},
		{"resistor agrees", known, []session.Entry{read("lead-zero", "0.3"), read("known-resistor", "100.5")}, func(t *testing.T, l meter.Learned) {
			assert.Equal(t, meter.ResistorAgrees, l.Resistor)
			assert.InDelta(t, 0.002, l.Deviation, 1e-9, "the leads are off it")
		}},
		{"resistor off", known, []session.Entry{read("lead-zero", "0.3"), read("known-resistor", "120.3")}, func(t *testing.T, l meter.Learned) {
			assert.Equal(t, meter.ResistorOff, l.Resistor)
			assert.InDelta(t, 0.20, l.Deviation, 1e-9)
			assert.InDelta(t, 0.21/1.20, l.Bound, 1e-9)
		}},
		{"resistor without its print", &session.Kit{}, []session.Entry{read("known-resistor", "120.3")}, func(t *testing.T, l meter.Learned) {
			assert.Empty(t, l.Resistor)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := opened(t, selfCheck(c.kit, c.entries...)...).Learned()
			require.NoError(t, l.Valid())
			c.want(t, l)
		})
	}
}

func own(l *meter.Learned) session.Entry {
	sheet := meter.SheetOf(meter.Cheap())
	for i := range sheet.Lines {
		if sheet.Lines[i].Function == meter.VoltsDC.String() {
			sheet.Lines[i].Percent = 0.1
		}
	}
	e := setup(check.DefaultBuild())
	e.Setup.Meter, e.Setup.Own = session.OwnMeter, &session.Own{Sheet: sheet, Learned: l}
	return e
}

func TestAnOwnMeterIsJudgedByItsSheetAndSelfCheck(t *testing.T) {
	b := opened(t, own(nil), read("pickup", "650"))
	assert.Equal(t, meter.OwnID, b.Meter.ID)
	assert.InDelta(t, 0.1, b.Meter.Ranges[meter.VoltsDC][0].Accuracy.Percent, 1e-12)
	assert.InDelta(t, 0.8, b.Meter.Ranges[meter.Ohms][0].Accuracy.Percent, 1e-12)
	assert.Nil(t, b.Meter.Detectors)
	assert.Equal(t, spec.InSpec, line(t, b, "pickup").Verdict.Outcome)

	b = opened(t, own(&meter.Learned{Detectors: []meter.Detector{meter.HalfWave}, Resistor: meter.ResistorOff, Deviation: 0.2, Bound: 0.18}), read("pickup", "650"))
	assert.Equal(t, []meter.Detector{meter.HalfWave}, b.Meter.Detectors)
	assert.InDelta(t, 18, b.Meter.Ranges[meter.Ohms][0].Accuracy.Percent, 1e-9)
	assert.Equal(t, spec.CannotTell, line(t, b, "pickup").Verdict.Outcome, "a meter known to be off decides less")

	bad := own(nil)
	bad.Setup.Own.Sheet.Counts = 7
	assert.Equal(t, "cheap", opened(t, bad).Meter.ID, "a sheet that is none gives way")
	bad.Setup.Own = nil
	assert.Equal(t, "cheap", opened(t, bad).Meter.ID)
}

// A warm winding is known less well, and what would help is other.
func TestWarmWindings(t *testing.T) {
	for _, c := range []struct {
		warmth  spec.Warmth
		air     bool
		text    string
		want    spec.Temperature
		remedy  spec.Remedy
		without spec.Remedy
	}{
		{spec.Cold, false, "700", spec.AirUnknown(), spec.GiveAmbient, spec.LetItCool},
		{spec.Cold, true, "700", spec.AirAt(20), spec.LetItCool, spec.GiveAmbient},
		{spec.EngineWarm, true, "800", spec.Temperature{At: 55, HalfWidth: 25, Known: true}, spec.LetItCool, spec.GiveAmbient},
		{spec.JustStopped, false, "920", spec.Temperature{At: 100, HalfWidth: 40, Known: true}, spec.LetItCool, spec.GiveAmbient},
	} {
		e := setup(check.DefaultBuild())
		e.Setup.Winding = c.warmth
		if !c.air {
			e.Setup.Ambient = nil
		}
		b := opened(t, e, read("pickup", c.text))
		assert.Equal(t, c.want, b.Air, c.warmth)
		v := line(t, b, "pickup").Verdict
		assert.Equal(t, spec.CannotTell, v.Outcome, "%s: %+v", c.warmth, v)
		assert.Contains(t, v.Remedies, c.remedy, c.warmth)
		assert.NotContains(t, v.Remedies, c.without, c.warmth)
		assert.InDelta(t, 700, v.Value, 6, "brought to 20 °C")
	}
}
