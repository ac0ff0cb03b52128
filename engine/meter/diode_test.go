package meter_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

func TestADiodeRangeIsReadInWhatItsDisplayCounts(t *testing.T) {
	for _, c := range []struct {
		m     meter.Meter
		text  string
		volts float64
		half  float64 // of the data sheet's bound
	}{
		{meter.Cheap(), "523", 0.523, 0.03*0.523 + 0.005},
		{meter.Cheap(), "0.523 V", 0.523, 0.03*0.523 + 0.005},
		{meter.Auto6000(), "0.523", 0.523, 0.015*0.523 + 0.005},
		{meter.Auto6000(), "523 mV", 0.523, 0.015*0.523 + 0.005},
	} {
		dial, ok := c.m.Highest(meter.Diode)
		require.True(t, ok)
		typed, err := quantity.Parse(meter.Diode.Kind(), c.text, dial.Unit)
		require.NoError(t, err, c.text)
		got := c.m.Measure(meter.Diode, c.m.RangeOf(meter.Diode, dial, typed), typed, meter.Conditions{Source: 1e6})
		assert.InDelta(t, c.volts, got.Value, 1e-9, c.text)
		assert.InDelta(t, c.half, got.Bound, 1e-9, "%s: nothing is loaded, no leads are taken off", c.text)
		assert.Equal(t, "diode", got.Range.Label)
	}
}

func TestTheDriveOfADiodeRangePassesItsTop(t *testing.T) {
	for _, m := range meter.Bundled() {
		top, _ := m.Highest(meter.Diode)
		assert.Greater(t, float64(m.Drive.Volts), top.Full, "%s: an open line must show over-range", m.ID)
		assert.InEpsilon(t, m.Drive.Amps, float64(m.Drive.Volts)/float64(m.Drive.Ohms()), 1e-12)
		assert.InDelta(t, 1e-3, m.Drive.Amps, 0.5e-3, m.ID)
	}
}

// A data sheet that was stored before the diode range had a line describes a
// meter without one.
func TestASheetWithoutADiodeLineHasNoDiodeRange(t *testing.T) {
	const stored = `{"class":"cheap","counts":1999,"auto":false,"lines":[{"function":"ohms","nominal":200,"percent":0.8,"digits":5}],` +
		`"acLowHz":40,"acHighHz":400,"inputDCOhms":1e6,"inputACOhms":450000}`
	var s meter.Sheet
	require.NoError(t, json.Unmarshal([]byte(stored), &s))
	m, err := s.Meter()
	require.NoError(t, err)
	_, ok := m.Highest(meter.Diode)
	assert.False(t, ok)

	s.Lines = append(s.Lines, meter.Line{Function: "diode", Nominal: 2, Accuracy: meter.Accuracy{Percent: 2, Digits: 3}})
	m, err = s.Meter()
	require.NoError(t, err)
	r, ok := m.Highest(meter.Diode)
	require.True(t, ok)
	assert.Equal(t, meter.Range{Label: "diode", Nominal: 2, Full: 1.999, Step: 1e-3, Unit: quantity.Millivolts, Accuracy: meter.Accuracy{Percent: 2, Digits: 3}}, r)
	assert.Equal(t, meter.Cheap().Drive, m.Drive)
}
