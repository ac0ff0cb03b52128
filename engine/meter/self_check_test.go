package meter_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// One ohm less or more than the offset of five digits of 0.1 Ω.
func TestLeadStates(t *testing.T) {
	for text, want := range map[string]meter.LeadState{
		"0.3": meter.LeadsGood, "0.5": meter.LeadsGood, "-0.1": meter.LeadsGood,
		"0.6": "", "1.5": "", "won't settle": "",
		"1.6": meter.LeadsWorn, "40.0": meter.LeadsWorn, "0.450 kΩ": meter.LeadsWorn,
		"OL": meter.LeadsOpen,
	} {
		zero := cheapOhms(t, text, nil, true)
		assert.Equal(t, want, meter.SelfCheck{LeadZero: &zero}.Learned().Leads, text)
	}
	assert.Equal(t, meter.Learned{}, meter.SelfCheck{}.Learned(), "nothing read, nothing learnt")
}

func TestWhatTheBatteryReadingsTell(t *testing.T) {
	at := func(m meter.Measurement) *meter.Measurement { return &m }
	restless := &meter.Measurement{State: quantity.Unsettled}
	over := &meter.Measurement{State: quantity.OverRange, Range: meter.Range{Full: 19.99}}
	for _, c := range []struct {
		name            string
		dc, ac, swapped *meter.Measurement
		fits            []meter.Detector
		none, blocks    bool
	}{
		{"half-wave", at(onDC(12)), at(onAC(26.7)), at(onAC(0)), []meter.Detector{meter.HalfWave}, false, false},
		{"DC-coupled", at(onDC(12)), at(onAC(13.3)), at(onAC(13.3)), []meter.Detector{meter.AverageDC}, false, false},
		{"capacitor", at(onDC(12)), at(onAC(0)), at(onAC(0)), []meter.Detector{meter.AverageAC, meter.TrueRMS}, false, true},
		{"none", at(onDC(12)), at(onAC(6)), at(onAC(6)), nil, true, false},
		{"a cell too weak for the digits", at(onDC(0.4)), at(onAC(0.5)), at(onAC(0.2)), nil, false, false},
		{"not swapped", at(onDC(12)), at(onAC(26.7)), nil, nil, false, false},
		{"not on AC", at(onDC(12)), nil, at(onAC(0)), nil, false, false},
		{"not on DC", nil, at(onAC(26.7)), at(onAC(0)), nil, false, false},
		{"restless", at(onDC(12)), at(onAC(26.7)), restless, nil, false, false},
		{"past the DC range", over, at(onAC(26.7)), at(onAC(0)), nil, false, false},
		{"past the AC range", at(onDC(12)), over, at(onAC(0)), []meter.Detector{meter.HalfWave}, false, false},
	} {
		l := meter.SelfCheck{BatteryDC: c.dc, BatteryAC: c.ac, BatteryACSwapped: c.swapped}.Learned()
		assert.Equal(t, c.fits, l.Detectors, c.name)
		assert.Equal(t, c.none, l.NoneFits, c.name)
		assert.Equal(t, c.blocks, l.BlocksDC(), c.name)
		assert.NoError(t, l.Valid(), c.name)
	}
}

// The bound is recomputed by hand: deviation and tolerance over the reading.
func TestWhatAResistorReadingTells(t *testing.T) {
	zero := cheapOhms(t, "0.3", nil, true)
	for _, c := range []struct {
		text               string
		zero               *meter.Measurement
		nominal, tolerance float64
		says               meter.ResistorSays
		deviation, bound   float64
	}{
		{"100.8", &zero, 100, 0.01, meter.ResistorAgrees, 0.005, 0},
		{"101.9", &zero, 100, 0.01, meter.ResistorAgrees, 0.016, 0},
		{"110.3", &zero, 100, 0.01, meter.ResistorOff, 0.1, 0.11 / 1.1},
		{"90.3", &zero, 100, 0.01, meter.ResistorOff, -0.1, 0.11 / 0.9},
		{"90.3", &zero, 100, 0.1, "", 0, 0}, // as far off as the resistor may be
		{"100.3", &zero, 100, 0.1, "", 0, 0},
		{"10.3", nil, 10, 0.01, "", 0, 0}, // no lead zero: half an ohm of offset
		{"20.0", nil, 10, 0.01, meter.ResistorOff, 0.975, 0.985 / 1.975},
		{"0.3", &zero, 100, 0.01, meter.ResistorOff, -1, 10}, // a short: no share of nothing covers it
		{"OL", &zero, 100, 0.01, "", 0, 0},
		{"won't settle", &zero, 100, 0.01, "", 0, 0},
		{"100.3", &zero, 0, 0.01, "", 0, 0},
		{"100.3", &zero, math.Inf(1), 0.01, "", 0, 0},
		{"100.3", &zero, 50, 1, "", 0, 0},
		{"100.3", &zero, 50, math.NaN(), "", 0, 0},
	} {
		got := cheapOhms(t, c.text, c.zero, false)
		l := meter.SelfCheck{Resistor: &got, Known: meter.KnownResistor{Nominal: quantity.Ohm(c.nominal), Tolerance: c.tolerance}}.Learned()
		assert.Equal(t, c.says, l.Resistor, "%+v", c)
		assert.InDelta(t, c.deviation, l.Deviation, 1e-9, "%+v", c)
		assert.InDelta(t, c.bound, l.Bound, 1e-9, "%+v", c)
		assert.NoError(t, l.Valid(), "%+v", c)
	}
}
