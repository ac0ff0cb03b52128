package meter_test

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// The names stand in stored files for ever.
func TestHowWhatWasLearntIsStored(t *testing.T) {
	for stored, l := range map[string]meter.Learned{
		`{}`: {},
		`{"detectors":["average-ac","true-rms"],"resistor":"agrees","deviation":-0.005,"leads":"good"}`: {
			Detectors: []meter.Detector{meter.AverageAC, meter.TrueRMS}, Resistor: meter.ResistorAgrees, Deviation: -0.005, Leads: meter.LeadsGood},
		`{"detectors":["half-wave"],"resistor":"off","deviation":0.1,"bound":0.11,"leads":"worn"}`: {
			Detectors: []meter.Detector{meter.HalfWave}, Resistor: meter.ResistorOff, Deviation: 0.1, Bound: 0.11, Leads: meter.LeadsWorn},
		`{"detectors":["average-dc"],"leads":"open"}`: {Detectors: []meter.Detector{meter.AverageDC}, Leads: meter.LeadsOpen},
		`{"noneFits":true}`:                           {NoneFits: true},
	} {
		got, err := json.Marshal(l)
		require.NoError(t, err)
		assert.Equal(t, stored, string(got))
		var read meter.Learned
		require.NoError(t, json.Unmarshal(got, &read))
		assert.Equal(t, l, read)
		assert.NoError(t, read.Valid(), stored)
	}
}

func TestADetectorOfNoKnownNameIsRefused(t *testing.T) {
	var field *meter.FieldError
	err := json.Unmarshal([]byte(`{"detectors":["half-wave","peak"]}`), &meter.Learned{})
	require.ErrorAs(t, err, &field)
	assert.EqualError(t, field, `detectors: name "peak", which is not known; use average-ac, average-dc, half-wave, true-rms`)
	_, err = json.Marshal(meter.Learned{Detectors: []meter.Detector{9}})
	assert.ErrorAs(t, err, &field)
}

func TestWhatCannotHaveBeenLearnt(t *testing.T) {
	for want, l := range map[string]meter.Learned{
		"noneFits: is true beside detectors that fit; keep one of the two":       {NoneFits: true, Detectors: []meter.Detector{meter.HalfWave}},
		`detectors: name "half-wave" twice; leave one out`:                       {Detectors: []meter.Detector{meter.HalfWave, meter.TrueRMS, meter.HalfWave}},
		`resistor: is "fine"; use one of ["agrees" "off"]`:                       {Resistor: "fine"},
		`leads: is "bad"; use one of ["good" "worn" "open"]`:                     {Leads: "bad"},
		"bound: is 11; use 0 to 10":                                              {Resistor: meter.ResistorOff, Bound: 11},
		"bound: is NaN; use 0 to 10":                                             {Resistor: meter.ResistorOff, Bound: math.NaN()},
		"bound: is -1; use 0 to 10":                                              {Resistor: meter.ResistorOff, Bound: -1},
		"deviation: is +Inf; give a number":                                      {Deviation: math.Inf(1)},
		`bound: is 0 where the resistor says "off"; give one for off alone`:      {Resistor: meter.ResistorOff},
		`bound: is 0.1 where the resistor says "agrees"; give one for off alone`: {Resistor: meter.ResistorAgrees, Bound: 0.1},
	} {
		assert.EqualError(t, l.Valid(), want)
	}
	var field *meter.FieldError
	assert.ErrorAs(t, meter.Learned{Detectors: []meter.Detector{-1}}.Valid(), &field)
}

func TestAMeterWithItsDetectors(t *testing.T) {
	behindC := []meter.Detector{meter.AverageAC, meter.TrueRMS}
	half, rms := []meter.Detector{meter.HalfWave}, []meter.Detector{meter.TrueRMS}
	for _, c := range []struct {
		name            string
		described, want []meter.Detector
		l               meter.Learned
	}{
		{"nothing known before", nil, behindC, meter.Learned{Detectors: behindC}},
		{"the data sheet knows more", rms, rms, meter.Learned{Detectors: behindC}},
		{"the battery knows better", rms, half, meter.Learned{Detectors: half}},
		{"nothing learnt", rms, rms, meter.Learned{}},
		{"like no detector", rms, nil, meter.Learned{NoneFits: true}},
	} {
		m := meter.Cheap()
		m.Detectors = c.described
		assert.Equal(t, c.want, m.With(c.l).Detectors, c.name)
		assert.Equal(t, c.described, m.Detectors, "%s: the meter itself stays", c.name)
	}
}

func off(bound float64) meter.Learned {
	return meter.Learned{Resistor: meter.ResistorOff, Deviation: bound, Bound: bound}
}

// Whatever was learnt: no range gets tighter, only ohms get wider, the meter
// itself stays, and learning the same twice changes nothing more.
func TestNothingLearntTightensADataSheet(t *testing.T) {
	for i, m := range meter.Bundled() {
		for _, l := range []meter.Learned{{}, {Resistor: meter.ResistorAgrees, Deviation: 0.001}, off(0.001), off(0.009), off(0.1), off(10)} {
			with := m.With(l)
			for _, f := range meter.Functions() {
				for k, r := range m.Ranges[f] {
					want := r
					if f == meter.Ohms {
						want.Accuracy.Percent = max(r.Accuracy.Percent, 100*l.Bound)
					}
					assert.Equal(t, want, with.Ranges[f][k], "%s, %+v", m.ID, l)
				}
			}
			assert.Equal(t, meter.Bundled()[i], m, "the meter itself stays")
			assert.Equal(t, with, with.With(l))
		}
	}
	assert.Equal(t, meter.Meter{}, meter.Meter{}.With(off(0.1)), "a meter without ohms")
}

// Once widened, the meter no longer disagrees with the resistor that it saw; below
// a tenth of the print the bound is capped.
func TestAWidenedMeterIsNotOffAgain(t *testing.T) {
	m := meter.Cheap()
	r, _ := m.RangeLabelled(meter.Ohms, "2 kΩ")
	for shown := 105.0; shown < 1999; shown += 7 {
		check := func(m meter.Meter) meter.Learned {
			dial, _ := m.RangeLabelled(meter.Ohms, r.Label)
			got := m.Measure(meter.Ohms, dial, quantity.Typed{Value: shown, Step: 1, Unit: quantity.Ohms}, meter.Conditions{})
			return meter.SelfCheck{Resistor: &got, Known: meter.KnownResistor{Nominal: 1e3, Tolerance: 0.01}}.Learned()
		}
		l := check(m)
		assert.NotEqual(t, meter.ResistorOff, check(m.With(l)).Resistor, "shows %v Ω: %+v", shown, l)
	}
}
