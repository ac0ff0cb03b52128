package words_test

import (
	"strings"
	"testing"
	"time"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/session"
	"coilbook/specs"
)

// selfCheck is a session of the cheap meter's self-check with a 100 Ω resistor
// of 1 %; readings are "check: text unit".
func selfCheck(t *testing.T, readings ...string) assess.Bench {
	t.Helper()
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	set := session.Setup{
		Aim: check.SelfCheck, Build: check.DefaultBuild(), Meter: session.OwnMeter,
		Own:     &session.Own{Sheet: meter.SheetOf(meter.Cheap())},
		Methods: []check.Method{check.ResistorCheck}, Kit: &session.Kit{ResistorOhms: 100, ResistorPercent: 1},
	}
	s := session.Session{ID: uuid.New()}.Append(session.Entry{ID: uuid.New(), At: time.Unix(1, 0), Setup: &set})
	for i, r := range readings {
		id, rest, _ := strings.Cut(r, ": ")
		text, unit, _ := strings.Cut(rest, " ")
		s = s.Append(session.Entry{ID: uuid.New(), At: time.Unix(int64(i+2), 0), Reading: &session.Reading{Check: check.ID(id), Text: text, Unit: unit}})
	}
	return assess.Open(s.Fold(), profiles)
}

func told(b assess.Bench) string {
	var all []string
	for _, card := range words.WhatMeterTold(b) {
		all = append(all, card.Title)
		all = append(all, card.Sentences...)
	}
	return strings.Join(all, "\n")
}

func TestNothingIsToldBeforeTheFirstReading(t *testing.T) {
	cards := words.WhatMeterTold(selfCheck(t))
	require.Len(t, cards, 1)
	assert.Equal(t, "Nothing read yet", cards[0].Title)
	assert.True(t, cards[0].Open)
}

func TestWhatASelfCheckTells(t *testing.T) {
	for _, c := range []struct {
		name     string
		readings []string
		want     []string
	}{
		{"good leads alone", []string{"lead-zero: 0.3 Ω"}, []string{"Good: less than 1 Ω", "Battery\nNot read", "takes the battery on the DC range", "the known resistor was not read"}},
		{"worn leads", []string{"lead-zero: 2.3 Ω"}, []string{"Worn: more than 1 Ω"}},
		{"open leads", []string{"lead-zero: OL Ω"}, []string{"Open line: a lead is broken"}},
		{"leads near the limit", []string{"lead-zero: 1.1 Ω"}, []string{"too near the limit of 1 Ω"}},
		{"behind a capacitor", []string{"battery-dc: 12.60 V", "battery-ac: 0.0 V", "battery-ac-swapped: 0.0 V"},
			[]string{"The DC range reads 12.60 V.", "A capacitor keeps DC out", "a battery cannot tell", "this meter can show it", "no ordinary AC range shows their height"}},
		{"one diode", []string{"battery-dc: 12.60 V", "battery-ac: 27.4 V", "battery-ac-swapped: 0.0 V"},
			[]string{"about double one way and nothing the other", "never judge it with this meter"}},
		{"DC gets in", []string{"battery-dc: 12.60 V", "battery-ac: 14.0 V", "battery-ac-swapped: 14.0 V"},
			[]string{"about 11 % too high", "never judge it with this meter"}},
		{"no kind fits", []string{"battery-dc: 12.60 V", "battery-ac: 60.0 V", "battery-ac-swapped: 60.0 V"},
			[]string{"fit no kind of AC range", "do not judge it"}},
		{"resistor agrees", []string{"lead-zero: 0.0 Ω", "known-resistor: 100.2 Ω"}, []string{"Agrees: 100.2 Ω"}},
		{"resistor off", []string{"lead-zero: 0.0 Ω", "known-resistor: 112.0 Ω"}, []string{"Reads 12 % too high: 112.0 Ω.", "is widened to 12 %", "fresh battery in the meter"}},
	} {
		got := told(selfCheck(t, c.readings...))
		for _, part := range c.want {
			assert.Contains(t, got, part, c.name)
		}
		for _, sentence := range strings.Split(got, "\n") {
			assert.NotContains(t, sentence, "  ", c.name)
		}
	}
}

func TestALineSaysWhatWasLearnt(t *testing.T) {
	behind := []meter.Detector{meter.AverageAC, meter.TrueRMS}
	for want, l := range map[string]*meter.Learned{
		"Not checked yet.": nil,
		"Leads good, no DC gets into the AC range, ohms agree.": {Leads: meter.LeadsGood, Detectors: behind, Resistor: meter.ResistorAgrees},
		"A single diode on AC, ohms read 6.0 % too low.":        {Detectors: []meter.Detector{meter.HalfWave}, Resistor: meter.ResistorOff, Deviation: -0.06},
		"Leads worn, AC range of an unknown kind.":              {Leads: meter.LeadsWorn, NoneFits: true},
		"AC range not told for sure.":                           {Detectors: []meter.Detector{meter.AverageAC, meter.HalfWave}},
	} {
		assert.Equal(t, want, words.LearnedLine(l))
	}
}

func TestADataSheetIsRefusedInItsOwnersWords(t *testing.T) {
	nominal := words.RangeName(meter.Ohms, "200 Ω")
	for want, spoil := range map[string]func(*meter.Sheet){
		"200 Ω range, percent: type 0 to 20.":         func(s *meter.Sheet) { s.Lines[0].Percent = 21 },
		"200 Ω range, digits: type 1 to 100.":         func(s *meter.Sheet) { s.Lines[0].Digits = 0 },
		"Name: keep it to one line of 60 characters.": func(s *meter.Sheet) { s.Name = strings.Repeat("x", 61) },
		"AC accuracy, from: type 1 to 1000 Hz.":       func(s *meter.Sheet) { s.ACLow = 0 },
		"AC accuracy, up to: type 41 to 1000000 Hz.":  func(s *meter.Sheet) { s.ACHigh = 1 },
		words.BadInputDC: func(s *meter.Sheet) { s.InputDC = 1 },
		words.BadInputAC: func(s *meter.Sheet) { s.InputAC = 1 },
		words.NoOhms:     func(s *meter.Sheet) { s.Lines = nil },
	} {
		s := meter.SheetOf(meter.Cheap())
		spoil(&s)
		var e *meter.FieldError
		require.ErrorAs(t, s.Valid(), &e, want)
		assert.Equal(t, want, words.SheetProblem(e, nominal))
	}
}

func TestEveryClassAndFunctionHasWords(t *testing.T) {
	var ids []string
	for _, m := range meter.Bundled() {
		ids = append(ids, m.ID)
	}
	allDiffer(t, "meter in a line", ids, words.MeterHint)
	for _, f := range meter.Functions() {
		assert.NotEmpty(t, words.Function(f))
	}
	assert.NotEqual(t, words.RangeName(meter.VoltsDC, "200 V"), words.RangeName(meter.VoltsAC, "200 V"))
}
