package spec_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

func TestWhatWasLostCouldOnlyAdd(t *testing.T) {
	limit := spec.Between(spec.ExciterPeak, quantity.VoltageDC, 80, inf)
	v := spec.AtLeast(spec.Judge(limit, measured(t, meter.VoltsDC, "200 V", "120.0", ""), spec.AirUnknown()))
	assert.Equal(t, spec.InSpec, v.Outcome)
	assert.Equal(t, spec.AtLeastRead, v.Reason)
	seen(v.Reason)
}

func TestALostPulseDecidesNothing(t *testing.T) {
	limit := spec.Between(spec.ExciterPeak, quantity.VoltageDC, 80, inf)
	v := spec.PeakLost(spec.Judge(limit, measured(t, meter.VoltsDC, "200 V", "20.0", ""), spec.AirUnknown()))
	assert.Equal(t, spec.CannotTell, v.Outcome)
	assert.Equal(t, spec.PeakHidden, v.Reason)
	assert.Equal(t, spec.HigherInput, v.Remedies[0])
	assert.InDelta(t, 0.5, v.Probability, 0)
	seen(v.Reason)
}

// Class 155 of IEC 60085, from memory.
func TestAWindingCannotCoolInARun(t *testing.T) {
	limit := spec.Between(spec.WindingHeat, quantity.Temperature, math.Inf(-1), 155)
	for _, c := range []struct {
		at, std float64
		outcome spec.Outcome
		reason  spec.Reason
	}{
		{95, 8, spec.InSpec, spec.Within},
		{190, 8, spec.OutOfSpec, spec.Above},
		{-40, 8, spec.OutOfSpec, spec.CoolerHot},
		{150, 8, spec.CannotTell, spec.NearLimit},
		{80, 200, spec.CannotTell, spec.TooCoarse},
	} {
		below := func(celsius float64) float64 { return spec.Conformance(c.at, c.std, math.Inf(-1), celsius) }
		v := spec.JudgeHeat(limit, meter.Measurement{Value: c.at, Shown: c.at, Std: c.std}, spec.AirUnknown(), below)
		assert.Equal(t, c.outcome, v.Outcome, "%v", c.at)
		assert.Equal(t, c.reason, v.Reason, "%v", c.at)
		assert.Equal(t, c.outcome == spec.CannotTell, len(v.Remedies) > 0, "%v", c.at)
		assert.NotContains(t, v.Remedies, spec.VoltAmp)
		seen(v.Reason)
	}
	assert.Equal(t, spec.OutOfSpec, spec.OpenWhenHot(limit, true).Outcome)
	unsure := spec.OpenWhenHot(limit, false)
	assert.Equal(t, spec.CannotTell, unsure.Outcome)
	assert.Equal(t, []spec.Remedy{spec.HigherRange}, unsure.Remedies)
}

func TestARemedyComesFirstOnce(t *testing.T) {
	v := spec.Verdict{Remedies: []spec.Remedy{spec.Repeat, spec.BetterMeter}}
	assert.Equal(t, []spec.Remedy{spec.BetterMeter, spec.Repeat}, spec.First(spec.BetterMeter, v).Remedies)
	assert.Equal(t, []spec.Remedy{spec.RetakeOne, spec.Repeat, spec.BetterMeter}, spec.First(spec.RetakeOne, v).Remedies)
	assert.Equal(t, []spec.Remedy{spec.Repeat, spec.BetterMeter}, v.Remedies, "the verdict at hand stays")
}

func TestTemperatureOfAWinding(t *testing.T) {
	air := quantity.Celsius(31)
	assert.Equal(t, spec.AirAt(31), spec.TemperatureOf(spec.Cold, &air))
	assert.Equal(t, spec.AirUnknown(), spec.TemperatureOf(spec.Cold, nil))
	last := spec.AirUnknown()
	for _, w := range spec.Warmths()[1:] {
		warm := spec.TemperatureOf(w, &air)
		assert.Greater(t, warm.At, last.At, "%s", w)
		assert.Greater(t, warm.HalfWidth, last.HalfWidth, "%s: the warmer, the less is known", w)
		assert.True(t, warm.Known, "no thermometer of the air would help")
		last = warm
	}
}

// The deviation at which "differs" begins to be said is the limit and 1.645 of
// the doubt that is told beside it.
func TestTheDoubtOfADeviationIsThatOfTheRule(t *testing.T) {
	limit := spec.Limit{Measurand: spec.FineBalance, High: 0.03, Ratio: true}
	group := func(off float64) []meter.Measurement {
		mean := 10.0
		var out []meter.Measurement
		for _, share := range []float64{off, -off / 2, -off / 2} {
			out = append(out, meter.Measurement{Value: mean * (1 + share), Own: 0.05, Shared: 0.02, Zeroed: true, Range: meter.Range{Label: "200 Ω"}})
		}
		return out
	}
	u := spec.DeviationDoubt(limit, group(0.05))
	require.Greater(t, u, 0.0)
	at := limit.High + 1.6449*u
	assert.NotEqual(t, spec.OutOfSpec, spec.JudgeBalance(limit, group(at*0.998)).Outcome)
	assert.Equal(t, spec.OutOfSpec, spec.JudgeBalance(limit, group(at*1.002)).Outcome)
	assert.True(t, math.IsNaN(spec.DeviationDoubt(limit, group(0)[:1])))
	for _, r := range spec.JudgeBalance(limit, group(at*0.998)).Remedies {
		assert.NotEqual(t, spec.VoltAmp, r, "it is what was done")
	}
}

func TestAVerdictKeepsWhatWasShown(t *testing.T) {
	m := measured(t, meter.Ohms, "200 Ω", "1.1", "0.2")
	v := spec.Judge(ohms(0.5, 2), m, spec.AirUnknown())
	assert.True(t, v.HasShown)
	assert.InDelta(t, 1.1, v.Shown, 1e-12)
	assert.InDelta(t, 0.9, v.Value, 1e-12)
	assert.False(t, spec.Judge(ohms(0.5, 2), measured(t, meter.Ohms, "200 Ω", "OL", "0.2"), spec.AirUnknown()).HasShown)
}

// Without a limit the reading is kept all the same, where there is one.
func TestAVerdictWithoutALimitKeepsWhatWasShown(t *testing.T) {
	v := spec.NoLimitFor(measured(t, meter.Ohms, "200 Ω", "1.1", "0.2"))
	assert.True(t, v.HasShown)
	assert.InDelta(t, 1.1, v.Shown, 1e-12)
	assert.InDelta(t, 0.9, v.Value, 1e-12)
	open := spec.NoLimitFor(measured(t, meter.Ohms, "200 Ω", "OL", "0.2"))
	assert.False(t, open.HasShown)
	assert.False(t, open.HasValue)
}

// A limit in millivolts is kept in volts, and meets readings typed in either.
func TestALimitInMillivolts(t *testing.T) {
	const limits = `{"format": "coilbook spec profile", "version": 1, "id": "quarry", "name": "Quarry", "about": "", "limits": [
		{"measurand": "pickup-cranking-peak", "low": 100, "high": 180, "unit": "mV", "state": "cranking",
			"provenance": {"kind": "from memory", "note": "", "date": "2026-01-31"}}]}`
	p, err := spec.DecodeProfile([]byte(limits))
	require.NoError(t, err)
	limit, ok := p.Limit(spec.PickupPeak)
	require.True(t, ok)
	assert.Equal(t, quantity.Millivolts, limit.Unit)
	assert.InDelta(t, 0.100, limit.Low, 1e-12)
	assert.InDelta(t, 0.180, limit.High, 1e-12)
	for _, c := range []struct {
		text    string
		outcome spec.Outcome
		reason  spec.Reason
	}{
		{"0.1400", spec.InSpec, spec.Within},
		{"140.0 mV", spec.InSpec, spec.Within},
		{"90.0 mV", spec.OutOfSpec, spec.Below},
		{"195.0 mV", spec.OutOfSpec, spec.Above},
		{"100.1 mV", spec.CannotTell, spec.NearLimit},
	} {
		v := spec.Judge(limit, measured(t, meter.VoltsDC, "200 mV", c.text, ""), spec.AirUnknown())
		assert.Equal(t, c.outcome, v.Outcome, c.text)
		assert.Equal(t, c.reason, v.Reason, c.text)
	}
	_, err = spec.DecodeProfile([]byte(strings.Replace(limits, "pickup-cranking-peak", "exciter-cranking-ac", 1)))
	assert.ErrorContains(t, err, `unit "mV" does not suit`, "no range of volts AC is so low")
}
