package words_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// writeIn chooses units for one test.
func writeIn(t *testing.T, c quantity.Chosen) {
	t.Helper()
	words.WriteIn(c)
	t.Cleanup(func() { words.WriteIn(quantity.Chosen{}) })
}

func lineOf(t *testing.T, b assess.Bench, id check.ID) assess.Line {
	t.Helper()
	c, ok := check.Find(b.Plan, id)
	require.True(t, ok, id)
	return b.Line(c)
}

// The same readings, written in both units: 12 thou are 0.3048 mm by definition,
// and what is written never changes what is judged.
func TestAGapInBothUnits(t *testing.T) {
	b := benchOf(t, session.DefaultSetup(), "pickup-gap 12 thou")
	before := lineOf(t, b, "pickup-gap")
	for _, c := range []struct {
		chosen                quantity.Chosen
		reading, doubt, limit string
	}{
		{quantity.Chosen{}, "0.30 mm", "0.305 ± 0.035 mm", "0.15 to 1.3 mm"},
		{quantity.Chosen{Thousandths: true}, "12 thou", "12.0 ± 1.4 thou", "5.91 to 51.2 thou"},
	} {
		writeIn(t, c.chosen)
		l := lineOf(t, b, "pickup-gap")
		require.Equal(t, before.Verdict, l.Verdict)
		require.Equal(t, c.reading, words.Reading(l))
		require.Equal(t, c.doubt, words.Doubt(l.Verdict))
		require.Contains(t, words.Because(l.Check, l.Verdict), words.Doubt(l.Verdict))
		require.Equal(t, c.limit, words.Limit(l.Verdict.Limit))
	}
}

// A winding at 120 ± 10 °C is at 248 ± 18 °F: the doubt has no zero point.
func TestAWarmWindingInBothUnits(t *testing.T) {
	v := spec.Verdict{
		HasLimit: true, HasValue: true, Value: 120, Std: 5, Reason: spec.Above, Outcome: spec.OutOfSpec,
		Limit: spec.Between(spec.WindingHeat, quantity.Temperature, math.Inf(-1), 100),
	}
	require.Equal(t, "120 ± 10 °C", words.Doubt(v))
	require.Equal(t, "at most 100 °C", words.Limit(v.Limit))
	writeIn(t, quantity.Chosen{Fahrenheit: true})
	require.Equal(t, "248 ± 18 °F", words.Doubt(v))
	require.Equal(t, "at most 212 °F", words.Limit(v.Limit))
	v.Value = -160.0 / 9 // zero on the other scale is a temperature like any
	require.Equal(t, "0 ± 18 °F", words.Doubt(v))
}

func TestDetailsFollowTheUnits(t *testing.T) {
	set := session.DefaultSetup()
	b := benchOf(t, set, "pickup 212 Ω", "pickup-gap 0.35 mm")
	require.Contains(t, detailsOf(t, b, "pickup"), "At 20 °C")
	require.Contains(t, detailsOf(t, b, "pickup-gap"), "0.35 mm")
	writeIn(t, quantity.Chosen{Thousandths: true, Fahrenheit: true})
	told := detailsOf(t, b, "pickup")
	require.Contains(t, told, "At 68 °F")
	require.Contains(t, told, "taken to be at 68 ± 27 °F")
	require.NotContains(t, told, "°C")
	told = detailsOf(t, b, "pickup-gap")
	require.Contains(t, told, "13.8 thou")
	require.NotContains(t, told, " mm")
}

func TestSentencesFollowTheUnits(t *testing.T) {
	gapCheck, ok := check.Find(check.Plan(check.DefaultBuild(), check.Bench), "pickup-gap")
	require.True(t, ok)
	wide := machine.Fault{Kind: machine.GapWide, Size: 0.002}
	require.Equal(t, "0.3 to 1.0 mm", words.Span(gapCheck, 0.3e-3, 1.0e-3))
	require.Contains(t, words.FaultIs(wide, machine.Build{}), "2.00 mm")
	writeIn(t, quantity.Chosen{Thousandths: true})
	require.Equal(t, "12 to 39 thou", words.Span(gapCheck, 0.3e-3, 1.0e-3))
	require.Contains(t, words.FaultIs(wide, machine.Build{}), "78.7 thou")
}
