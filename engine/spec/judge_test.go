package spec_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

var inf = math.Inf(1)

func ohms(low, high float64) spec.Limit {
	return spec.Between(spec.ExciterResist, quantity.Resistance, low, high)
}

func openFrom(low float64) spec.Limit {
	l := ohms(low, inf)
	l.Open = true
	return l
}

// at compares at 20 °C.
func at(l spec.Limit, source spec.Source) spec.Limit {
	c := quantity.Celsius(20)
	l.Condition.AtCelsius, l.Provenance.Kind = &c, source
	return l
}

// measured is a reading of the cheap meter on the range that its dial says; zero
// is the lead-zero text, empty when none was taken.
func measured(t *testing.T, f meter.Function, dial, text, zero string) meter.Measurement {
	t.Helper()
	m := meter.Cheap()
	r, ok := m.RangeLabelled(f, dial)
	require.True(t, ok, dial)
	c := meter.Conditions{}
	if zero != "" {
		z := m.Measure(f, r, parsed(t, f.Kind(), zero), meter.Conditions{RawLeads: true})
		c.LeadZero = &z
	}
	got := parsed(t, f.Kind(), text)
	return m.Measure(f, m.RangeOf(f, r, got), got, c)
}

func parsed(t *testing.T, k quantity.Kind, text string) quantity.Typed {
	t.Helper()
	got, err := quantity.Parse(k, text, quantity.Units(k)[0])
	require.NoError(t, err)
	return got
}

// What holds back by thyristors in place of the upper diodes reads open line to plus
// when it is sound; below, open line is a broken diode.
func TestJudgeRegulatorDiodes(t *testing.T) {
	for _, c := range []struct {
		m       spec.Measurand
		text    string
		outcome spec.Outcome
		reason  spec.Reason
	}{
		{spec.DiodeToPlus, "0.52", spec.InSpec, spec.Within}, {spec.DiodeFromGround, "0.52", spec.InSpec, spec.Within},
		{spec.DiodeToPlus, "0.001", spec.OutOfSpec, spec.Below}, {spec.DiodeFromGround, "0.001", spec.OutOfSpec, spec.Below},
		{spec.DiodeToPlus, "1.1", spec.OutOfSpec, spec.Above}, {spec.DiodeFromGround, "1.1", spec.OutOfSpec, spec.Above},
		{spec.DiodeToPlus, "OL", spec.CannotTell, spec.MayBlock}, {spec.DiodeFromGround, "OL", spec.OutOfSpec, spec.LineBroken},
	} {
		v := spec.Judge(spec.Between(c.m, quantity.VoltageDC, 0.3, 0.9), measured(t, meter.Diode, "diode", c.text, ""), spec.AirUnknown())
		assert.Equal(t, c.outcome, v.Outcome, "%s %s", c.m, c.text)
		assert.Equal(t, c.reason, v.Reason, "%s %s", c.m, c.text)
		seen(v.Reason)
	}
}

// Limits here are invented for the test. The outcome follows from the doubt,
// which engine/meter's tests recompute.
func TestJudgeTable(t *testing.T) {
	for _, c := range []struct {
		name             string
		limit            spec.Limit
		f                meter.Function
		dial, text, zero string
		outcome          spec.Outcome
		reason           spec.Reason
		first            spec.Remedy // of the remedies, "" for none
	}{
		{"well inside", ohms(100, 200), meter.Ohms, "200 Ω", "150.0", "0.2", spec.InSpec, spec.Within, ""},
		{"well under", ohms(100, 200), meter.Ohms, "200 Ω", "80.0", "0.2", spec.OutOfSpec, spec.Below, ""},
		{"well over", ohms(50, 90), meter.Ohms, "200 Ω", "120.0", "0.2", spec.OutOfSpec, spec.Above, ""},
		{"just inside", ohms(100, 200), meter.Ohms, "200 Ω", "100.5", "0.2", spec.CannotTell, spec.NearLimit, spec.FactorySpec},
		{"just outside", ohms(100, 200), meter.Ohms, "200 Ω", "99.9", "0.2", spec.CannotTell, spec.NearLimit, spec.FactorySpec},
		{"a manual's limit has no better one", at(ohms(100, 200), spec.Manual), meter.Ohms, "200 Ω", "100.5", "0.2", spec.CannotTell, spec.NearLimit, spec.GiveAmbient},
		{"small and not zeroed", ohms(0.5, 5), meter.Ohms, "200 Ω", "0.8", "", spec.CannotTell, spec.NearLimit, spec.ZeroLeads},
		{"small and zeroed", ohms(0.5, 5), meter.Ohms, "200 Ω", "1.1", "0.2", spec.InSpec, spec.Within, ""},
		{"limits narrower than the doubt", ohms(0.8, 0.9), meter.Ohms, "200 Ω", "1.1", "", spec.CannotTell, spec.TooCoarse, spec.ZeroLeads},
		{"the same, in the very middle", ohms(0.84, 0.86), meter.Ohms, "200 Ω", "1.1", "", spec.CannotTell, spec.TooCoarse, spec.ZeroLeads},
		{"so narrow, zeroed", ohms(0.88, 0.92), meter.Ohms, "200 Ω", "1.1", "0.2", spec.CannotTell, spec.TooCoarse, spec.VoltAmp},
		{"far over narrow limits", ohms(0.88, 0.92), meter.Ohms, "200 Ω", "1.6", "0.2", spec.OutOfSpec, spec.Above, ""},
		{"less than the leads", ohms(0.1, 5), meter.Ohms, "200 Ω", "0.1", "0.6", spec.CannotTell, spec.NegativeOhms, spec.ZeroLeads},
		{"a dead short", ohms(0.5, 5), meter.Ohms, "200 Ω", "0.2", "0.2", spec.OutOfSpec, spec.Below, ""},
		{"as much as the leads", ohms(0.05, 5), meter.Ohms, "200 Ω", "0.2", "0.2", spec.CannotTell, spec.NearLimit, spec.FactorySpec},
		{"less than the leads, at most", ohms(-inf, 1), meter.Ohms, "200 Ω", "0.1", "0.6", spec.InSpec, spec.Within, ""},
		{"digits wander", ohms(100, 200), meter.Ohms, "200 Ω", "won't settle", "0.2", spec.CannotTell, spec.WontSettle, spec.CleanContact},

		{"open line where it must conduct", ohms(0.1, 5), meter.Ohms, "200 Ω", "OL", "0.2", spec.OutOfSpec, spec.LineBroken, ""},
		{"over-range below the limit's end", ohms(100, 500), meter.Ohms, "200 Ω", "OL", "0.2", spec.CannotTell, spec.RangeTooLow, spec.HigherRange},
		{"over-range on a higher range", ohms(100, 500), meter.Ohms, "2 kΩ", "OL", "", spec.OutOfSpec, spec.LineBroken, ""},
		{"over-range at the very end", ohms(100, 198.5), meter.Ohms, "200 Ω", "OL", "", spec.CannotTell, spec.RangeTooLow, spec.HigherRange},

		{"open as it must be", openFrom(2e6), meter.Ohms, "2 MΩ", "OL", "", spec.InSpec, spec.OpenAsMust, ""},
		{"open, on a low range", openFrom(2e6), meter.Ohms, "200 kΩ", "OL", "", spec.CannotTell, spec.RangeTooLow, spec.HigherRange},
		{"on scale", openFrom(2e6), meter.Ohms, "2 MΩ", "0.500 MΩ", "", spec.OutOfSpec, spec.Leaks, ""},
		{"dead short", openFrom(2e6), meter.Ohms, "2 MΩ", "0.000 MΩ", "0.2", spec.OutOfSpec, spec.Leaks, ""},
		{"on scale, nearly open", openFrom(2e6), meter.Ohms, "2 MΩ", "1.990 MΩ", "", spec.CannotTell, spec.NearLimit, spec.CleanContact},
		{"on scale, high enough", openFrom(1e6), meter.Ohms, "2 MΩ", "1.500 MΩ", "", spec.InSpec, spec.Within, ""},
		{"open and wandering", openFrom(2e6), meter.Ohms, "2 MΩ", "jumps", "", spec.CannotTell, spec.WontSettle, spec.CleanContact},

		{"volts at least", spec.Between(spec.ExciterCranking, quantity.VoltageAC, 60, inf), meter.VoltsAC, "200 V", "90.0", "", spec.InSpec, spec.Within, ""},
		{"too few volts", spec.Between(spec.ExciterCranking, quantity.VoltageAC, 60, inf), meter.VoltsAC, "200 V", "31.0", "", spec.OutOfSpec, spec.Below, ""},
		{"more volts than the range shows", spec.Between(spec.ExciterCranking, quantity.VoltageAC, 60, inf), meter.VoltsAC, "200 V", "OL", "", spec.InSpec, spec.PastRange, ""},
		{"more volts, yet enough?", spec.Between(spec.ExciterCranking, quantity.VoltageAC, 250, inf), meter.VoltsAC, "200 V", "OL", "", spec.CannotTell, spec.RangeTooLow, spec.HigherRange},
		{"volts over the top", spec.Between(spec.ExciterCranking, quantity.VoltageAC, 60, 90), meter.VoltsAC, "200 V", "OL", "", spec.OutOfSpec, spec.Above, ""},
	} {
		v := spec.Judge(c.limit, measured(t, c.f, c.dial, c.text, c.zero), spec.AirUnknown())
		assert.Equal(t, c.outcome.String(), v.Outcome.String(), c.name)
		assert.Equal(t, c.reason, v.Reason, c.name)
		first := spec.Remedy("")
		if len(v.Remedies) > 0 {
			first = v.Remedies[0]
		}
		assert.Equal(t, c.first, first, c.name)
		assert.Equal(t, v.Outcome == spec.CannotTell, len(v.Remedies) > 0, "%s: an open verdict, and no other, says what would decide it", c.name)
		seen(v.Reason)
	}
}

// Copper: (234.5+20)/(234.5+32), recomputed; see engine/winding.
func TestWindingsAreComparedAt20Degrees(t *testing.T) {
	limit := at(ohms(100, 200), spec.CommonPractice)
	m := measured(t, meter.Ohms, "200 Ω", "150.0", "0.2")
	warm := spec.Judge(limit, m, spec.AirAt(32))
	assert.InEpsilon(t, 149.8*254.5/266.5, warm.Value, 1e-9)
	assert.InEpsilon(t, math.Hypot(m.Std*254.5/266.5, warm.Value*5/math.Sqrt(3)/266.5), warm.Std, 1e-9)
	blind := spec.Judge(limit, m, spec.AirUnknown())
	assert.InEpsilon(t, 149.8, blind.Value, 1e-12)
	assert.Greater(t, blind.Std, 2*warm.Std, "a temperature that is not known widens the doubt")
	assert.Equal(t, m.Std, spec.Judge(ohms(100, 200), m, spec.AirAt(32)).Std, "a limit without a temperature is left alone")

	zero := spec.Judge(limit, meter.Measurement{Std: 0.1}, spec.AirAt(32))
	assert.InDelta(t, 0, zero.Value, 0)
	assert.InDelta(t, 0.1, zero.Std, 1e-12)
}

func TestHeatIsNamedWhereItDecides(t *testing.T) {
	limit := at(ohms(100, 200), spec.CommonPractice)
	m := measured(t, meter.Ohms, "200 Ω", "102.0", "0.2")
	blind := spec.Judge(limit, m, spec.AirUnknown())
	assert.Equal(t, spec.GiveAmbient, blind.Remedies[0])
	known := spec.Judge(limit, m, spec.AirAt(21))
	assert.Equal(t, spec.LetItCool, known.Remedies[0])
	assert.Contains(t, known.Remedies, spec.FactorySpec)
	assert.NotContains(t, spec.Judge(at(ohms(100, 200), spec.Manual), m, spec.AirAt(21)).Remedies, spec.FactorySpec)
}

func TestNoLimitIsNoVerdict(t *testing.T) {
	v := spec.NoLimitFor(measured(t, meter.Ohms, "200 Ω", "1.1", "0.2"))
	assert.Equal(t, spec.CannotTell, v.Outcome)
	assert.Equal(t, []spec.Remedy{spec.FactorySpec}, v.Remedies)
	assert.True(t, v.HasValue)
	assert.False(t, v.HasLimit)
	assert.False(t, spec.NoLimitFor(measured(t, meter.Ohms, "200 Ω", "OL", "")).HasValue)
	seen(v.Reason)
}

func TestBetweenTakesTheUnitOfItsSize(t *testing.T) {
	assert.Equal(t, "kΩ", ohms(500, 1500).Unit.Name)
	assert.Equal(t, "MΩ", openFrom(2e6).Unit.Name)
	assert.Equal(t, "Ω", ohms(-inf, 1).Unit.Name)
}

// Conformance of a value known without doubt, and the two edges of the rule (95 %
// of ISO 14253-1, from memory). Examples of the standard: see the outside checks.
func TestConformanceAtTheEdges(t *testing.T) {
	for y, want := range map[float64]float64{0.9: 0, 1: 1, 1.5: 1, 2: 1, 2.1: 0} {
		assert.InDelta(t, want, spec.Conformance(y, 0, 1, 2), 0, "%v", y)
	}
	assert.InDelta(t, 0.5, spec.Conformance(1, 0.1, 1, inf), 1e-12)
	assert.Equal(t, spec.InSpec, spec.Decide(0.95))
	assert.Equal(t, spec.CannotTell, spec.Decide(0.9499999))
	assert.Equal(t, spec.CannotTell, spec.Decide(0.0500001))
	assert.Equal(t, spec.OutOfSpec, spec.Decide(0.05))
	o, p := spec.DecideBetween(1, 100, 0.9, 1.1)
	assert.Less(t, p, 0.05)
	assert.Equal(t, spec.CannotTell, o, "in the middle of limits that are too narrow to hit")
	o, _ = spec.DecideBetween(0, 1, 1.6449, inf)
	assert.Equal(t, spec.OutOfSpec, o)
}

func TestNothingCountsThroughBadLeads(t *testing.T) {
	v := spec.LeadsFirst(spec.Verdict{Outcome: spec.InSpec, Probability: 1, Reason: spec.OpenAsMust})
	seen(v.Reason)
	assert.Equal(t, spec.CannotTell, v.Outcome)
	assert.Equal(t, spec.BadLeads, v.Reason)
	assert.Equal(t, []spec.Remedy{spec.MendLeads}, v.Remedies)
}
