package meter_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

func TestABundledMeterComesBackFromItsSheet(t *testing.T) {
	for _, want := range meter.Bundled() {
		s := meter.SheetOf(want)
		assert.Equal(t, want.ID, s.Class)
		slices.Reverse(s.Lines)
		stored, err := json.Marshal(s)
		require.NoError(t, err)
		var read meter.Sheet
		require.NoError(t, json.Unmarshal(stored, &read))
		assert.Equal(t, s, read)
		got, err := read.Meter()
		require.NoError(t, err)
		assert.Equal(t, meter.OwnID, got.ID)
		got.ID = want.ID
		assert.Equal(t, want, got)
	}
}

// The names stand in stored files for ever.
func TestHowASheetIsStored(t *testing.T) {
	stored, err := json.Marshal(meter.Sheet{
		Name: "the blue one", Class: "cheap", Counts: 1999, Auto: true, ACLow: 40, ACHigh: 400, InputDC: 1e6, InputAC: 450e3,
		Lines: []meter.Line{{Function: "volts-dc", Nominal: 0.2, Accuracy: meter.Accuracy{Percent: 0.5, Digits: 2}}},
	})
	require.NoError(t, err)
	assert.Equal(t, `{"name":"the blue one","class":"cheap","counts":1999,"auto":true,`+
		`"lines":[{"function":"volts-dc","nominal":0.2,"percent":0.5,"digits":2}],`+
		`"acLowHz":40,"acHighHz":400,"inputDCOhms":1000000,"inputACOhms":450000}`, string(stored))
}

func TestASheetIsItsOwnMeter(t *testing.T) {
	s := meter.SheetOf(meter.Cheap())
	s.Class, s.Counts, s.Auto = "auto6000", 19999, true
	s.ACHigh, s.InputDC, s.InputAC = 1e3, 10e6, 2e6
	s.Lines = []meter.Line{
		line("volts-ac", 750, 1, 10), line("ohms", 2e3, 0.4, 4), line("ohms", 200, 0.5, 10), line("volts-ac", 20, 0.8, 10),
	}
	m, err := s.Meter()
	require.NoError(t, err)
	assert.Equal(t, meter.Band{Low: 40, High: 1000}, m.Band)
	assert.InDelta(t, 10e6, float64(m.InputDC), 0)
	assert.InDelta(t, 2e6, float64(m.InputAC), 0)
	assert.True(t, m.Auto)
	assert.Equal(t, 19999, m.Counts)
	assert.Equal(t, meter.Auto6000().Leads, m.Leads, "leads are on no data sheet")
	assert.Equal(t, meter.Auto6000().Detectors, m.Detectors)
	assert.Empty(t, m.Ranges[meter.VoltsDC])
	assert.Equal(t, []meter.Range{
		{Label: "200 Ω", Nominal: 200, Full: 199.99, Step: 0.01, Unit: quantity.Ohms, Accuracy: meter.Accuracy{Percent: 0.5, Digits: 10}},
		{Label: "2 kΩ", Nominal: 2000, Full: 1999.9, Step: 0.1, Unit: quantity.KiloOhms, Accuracy: meter.Accuracy{Percent: 0.4, Digits: 4}},
	}, m.Ranges[meter.Ohms])
	assert.Equal(t, "20 V", m.Ranges[meter.VoltsAC][0].Label, "rising, in whatever order they were typed")
	assert.Equal(t, "750 V", m.Ranges[meter.VoltsAC][1].Label)
}

func line(function string, nominal, percent, digits float64) meter.Line {
	return meter.Line{Function: function, Nominal: nominal, Accuracy: meter.Accuracy{Percent: percent, Digits: digits}}
}

// Numbers around the dial follow from the counts; common practice, no source.
func TestNominals(t *testing.T) {
	for _, c := range []struct {
		f      meter.Function
		counts int
		want   []float64
	}{
		{meter.Ohms, 1999, []float64{20, 200, 2e3, 20e3, 200e3, 2e6, 20e6, 200e6}},
		{meter.Ohms, 3999, []float64{40, 400, 4e3, 40e3, 400e3, 4e6, 40e6}},
		{meter.Ohms, 5999, []float64{60, 600, 6e3, 60e3, 600e3, 6e6, 60e6}},
		{meter.Ohms, 9999, []float64{100, 1e3, 10e3, 100e3, 1e6, 10e6, 100e6}},
		{meter.VoltsDC, 1999, []float64{0.2, 2, 20, 200, 500, 600, 750, 1000}},
		{meter.VoltsDC, 3999, []float64{0.4, 4, 40, 400, 500, 600, 750, 1000}},
		{meter.VoltsDC, 5999, []float64{0.6, 6, 60, 500, 600, 750, 1000}},
		{meter.VoltsDC, 9999, []float64{0.1, 1, 10, 100, 500, 600, 750, 1000}},
		{meter.VoltsAC, 19999, []float64{2, 20, 200, 500, 600, 750, 1000}},
		{meter.VoltsAC, 9999, []float64{1, 10, 100, 500, 600, 750, 1000}},
		{meter.AmpsDC, 5999, []float64{10}},
		{meter.Diode, 1999, []float64{2}}, {meter.Diode, 9999, []float64{2}},
		{meter.Function(9), 1999, nil}, {meter.Ohms, 2000, nil},
	} {
		assert.Equal(t, c.want, meter.Nominals(c.f, c.counts), "%v, %d counts", c.f, c.counts)
	}
	assert.Equal(t, meter.Nominals(meter.Ohms, 1999), meter.Nominals(meter.Ohms, 19999))
}

// fullSheet has every range that a form offers.
func fullSheet(counts int) meter.Sheet {
	s := meter.SheetOf(meter.Cheap())
	s.Counts, s.Lines = counts, nil
	for _, f := range meter.Functions() {
		for _, n := range meter.Nominals(f, counts) {
			s.Lines = append(s.Lines, line(f.String(), n, 1, 2))
		}
	}
	return s
}

func TestEveryOfferedRangeMakesAMeter(t *testing.T) {
	for _, counts := range meter.SheetCounts() {
		m, err := fullSheet(counts).Meter()
		require.NoError(t, err)
		labels := 0
		for _, f := range meter.Functions() {
			mustRise(t, m, f)
			for _, r := range m.Ranges[f] {
				assert.NotContains(t, r.Label, ".", "%d counts", counts)
				shown := r.Unit.In(r.Full)
				assert.True(t, shown >= 0.99 && shown < 2000, "%d counts: %s shows %v %s", counts, r.Label, shown, r.Unit.Name)
				found, ok := m.RangeLabelled(f, r.Label)
				assert.True(t, ok)
				assert.InDelta(t, r.Nominal, found.Nominal, 0, "%s stands once", r.Label)
				labels++
			}
		}
		assert.Len(t, fullSheet(counts).Lines, labels)
		top, _ := m.Highest(meter.VoltsDC)
		assert.Equal(t, "1000 V", top.Label, "volts are not counted in thousands")
	}
}

func mustRise(t *testing.T, m meter.Meter, f meter.Function) {
	t.Helper()
	below := meter.Range{}
	for _, r := range m.Ranges[f] {
		require.Greater(t, r.Full, below.Full, "%v: %s after %s", f, r.Label, below.Label)
		require.GreaterOrEqual(t, r.Step, below.Step, "%v: %s after %s", f, r.Label, below.Label)
		require.LessOrEqual(t, math.Round(r.Full/r.Step), float64(m.Counts), "%v: %s", f, r.Label)
		below = r
	}
}

func TestWhatNoSheetMayState(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		change func(*meter.Sheet)
		want   string
	}{
		{func(s *meter.Sheet) { s.Lines[3].Percent = 250 }, "lines[3].percent: is 250; use 0 to 20"},
		{func(s *meter.Sheet) { s.Lines[0].Percent = -0.1 }, "lines[0].percent: is -0.1; use 0 to 20"},
		{func(s *meter.Sheet) { s.Lines[0].Percent = nan }, "lines[0].percent: is NaN; use 0 to 20"},
		{func(s *meter.Sheet) { s.Lines[1].Digits = 0 }, "lines[1].digits: is 0; use 1 to 100"},
		{func(s *meter.Sheet) { s.Lines[1].Digits = inf }, "lines[1].digits: is +Inf; use 1 to 100"},
		{func(s *meter.Sheet) { s.Lines[2].Nominal = 300 },
			"lines[2].nominal: is 300; use 20, 200, 2000, 20000, 200000, 2000000, 20000000, 200000000"},
		{func(s *meter.Sheet) { s.Lines[2].Nominal = nan },
			"lines[2].nominal: is NaN; use 20, 200, 2000, 20000, 200000, 2000000, 20000000, 200000000"},
		{func(s *meter.Sheet) { s.Lines[2].Function = "hertz" }, `lines[2].function: is "hertz"; use ohms, volts-dc, volts-ac, amps-dc, diode`},
		{func(s *meter.Sheet) { s.Lines[2].Function = "" }, `lines[2].function: is ""; use ohms, volts-dc, volts-ac, amps-dc, diode`},
		{func(s *meter.Sheet) { s.Lines = append(s.Lines, s.Lines[1]) }, "lines[14]: is a range that stands twice; keep one of the two lines"},
		{func(s *meter.Sheet) { s.Lines[4].Nominal = s.Lines[0].Nominal }, "lines[4]: is a range that stands twice; keep one of the two lines"},
		{func(s *meter.Sheet) { s.Lines = s.Lines[5:] }, "lines: hold no range of ohms; add one: most checks need it"},
		{func(s *meter.Sheet) { s.Lines = nil }, "lines: hold no range of ohms; add one: most checks need it"},
		{func(s *meter.Sheet) { s.Lines = make([]meter.Line, 41) }, "lines: are more than 40; leave out the rest"},
		{func(s *meter.Sheet) { s.Counts = 2000 }, "counts: is 2000; use 1999, 3999, 5999, 9999, 19999"},
		{func(s *meter.Sheet) { s.Class = meter.OwnID }, `class: is "own", which is not described here; use cheap, auto4000, auto6000`},
		{func(s *meter.Sheet) { s.ACLow = 0 }, "acLowHz: is 0; use 1 to 1000"},
		{func(s *meter.Sheet) { s.ACHigh = 40 }, "acHighHz: is 40; use 41 to 1000000"},
		{func(s *meter.Sheet) { s.ACHigh = quantity.Hertz(nan) }, "acHighHz: is NaN; use 41 to 1000000"},
		{func(s *meter.Sheet) { s.InputDC = 0 }, "inputDCOhms: is 0; use 1000 to 1000000000"},
		{func(s *meter.Sheet) { s.InputAC = quantity.Ohm(inf) }, "inputACOhms: is +Inf; use 1000 to 1000000000"},
		{func(s *meter.Sheet) { s.Name = strings.Repeat("ø", 61) }, "name: is longer than 60 characters; shorten it"},
		{func(s *meter.Sheet) { s.Name = "two\nlines" }, "name: holds a line break or a control character; leave it out"},
		{func(s *meter.Sheet) { s.Name = "two\u2028lines" }, "name: holds a line break or a control character; leave it out"},
		{func(s *meter.Sheet) { s.Name = "\xff" }, "name: holds a line break or a control character; leave it out"},
	} {
		s := meter.SheetOf(meter.Cheap())
		c.change(&s)
		_, err := s.Meter()
		require.EqualError(t, err, c.want)
		var field *meter.FieldError
		assert.ErrorAs(t, err, &field)
		assert.NotEmpty(t, field.WayOut)
	}
	s := meter.SheetOf(meter.Cheap())
	s.Name = strings.Repeat("ø", 60)
	assert.NoError(t, s.Valid(), "a character is one, whatever its bytes")
	s.Lines[0].Percent, s.Lines[0].Digits = 0, 1
	assert.NoError(t, s.Valid())
}
