package words_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/engine/winding"
	"coilbook/specs"
)

// benchOf is a bench with a set-up of its own and readings, "check text unit".
func benchOf(t *testing.T, set session.Setup, readings ...string) assess.Bench {
	t.Helper()
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	st := session.Session{}.Fold()
	st.Setup = set
	for _, r := range readings {
		f := strings.Fields(r)
		e := session.Entry{Reading: &session.Reading{Check: check.ID(f[0]), Text: f[1], Unit: f[2], Again: len(f) > 3, Winding: set.Winding}}
		if !e.Reading.Again {
			st.Runs[e.Reading.Check] = nil
		}
		st.Runs[e.Reading.Check] = append(st.Runs[e.Reading.Check], e)
		st.Current[e.Reading.Check] = e
	}
	return assess.Open(st, profiles)
}

func detailsOf(t *testing.T, b assess.Bench, id check.ID) string {
	t.Helper()
	r := b.Report()
	for _, l := range append(r.Lines, r.Derived...) {
		if l.Check.ID == id {
			var out []string
			for _, d := range words.Details(b, l) {
				out = append(out, d.Label+": "+d.Text)
			}
			return strings.Join(out, "\n")
		}
	}
	t.Fatalf("no line %s", id)
	return ""
}

func TestEveryStepToAVerdictIsTold(t *testing.T) {
	warm := session.DefaultSetup()
	warm.Winding = spec.EngineWarm
	for _, c := range []struct {
		name     string
		set      session.Setup
		readings []string
		check    check.ID
		says     []string
		hides    []string
	}{
		{"leads taken off", session.DefaultSetup(), []string{"lead-zero 0.3 Ω", "charge-pair-1-2 0.9 Ω"}, "charge-pair-1-2",
			[]string{"Shown: 0.9 Ω on the 200 Ω range", "Leads: less 0.300 Ω, as your probes read", "At 20 °C: 0.60 Ω", "20 ± 15 °C", "covers about 95 %", "common practice", "How sure: over 99 %"},
			[]string{"Insulation", "Not a peak", "Repeats"}},
		{"usual leads", session.DefaultSetup(), []string{"charge-pair-1-2 0.9 Ω"}, "charge-pair-1-2", []string{"as leads usually have (0.1 to 0.4 Ω)"}, nil},
		{"a warm winding", warm, []string{"lead-zero 0.3 Ω", "pickup 212 Ω"}, "pickup", []string{"55 ± 25 °C", "temperature"}, nil},
		{"repeats", session.DefaultSetup(), []string{"lead-zero 0.3 Ω", "charge-pair-1-2 0.9 Ω", "charge-pair-1-2 1.0 Ω again"}, "charge-pair-1-2",
			[]string{"0.95 Ω on average", "2 readings", "spread 0.10 Ω"}, nil},
		{"an open line to the core", session.DefaultSetup(), []string{"charge-core-1 OL MΩ"}, "charge-core-1",
			[]string{"Insulation: Open line means more than 2 MΩ", "IEEE 43", "neither passes nor fails"}, []string{"How sure"}},
		{"a leak", session.DefaultSetup(), []string{"charge-core-1 0.34 MΩ"}, "charge-core-1", []string{"This is below it."}, nil},
		{"cranking", session.DefaultSetup(), []string{"exciter-cranking 61.5 V"}, "exciter-cranking", []string{"Not a peak", "Frequency: perhaps outside of the 40 to 400 Hz"}, nil},
	} {
		got := detailsOf(t, benchOf(t, c.set, c.readings...), c.check)
		for _, want := range c.says {
			assert.Contains(t, got, want, c.name)
		}
		for _, no := range c.hides {
			assert.NotContains(t, got, no, c.name)
		}
	}
}

func TestAPulseIsWorkedBackInWords(t *testing.T) {
	set := session.DefaultSetup()
	set.Meter, set.Methods = "auto6000", []check.Method{check.PeakHold}
	set.Kit = &session.Kit{AdapterMicrofarads: 0.47}
	got := detailsOf(t, benchOf(t, set, "exciter-peak 120.0 V"), "exciter-peak")
	assert.Contains(t, got, "Pulse: the adapter holds about")
	assert.Contains(t, got, "worked back")
}

func TestHeatNamesTheRise(t *testing.T) {
	set := session.DefaultSetup()
	set.Methods = []check.Method{check.HotWinding}
	got := detailsOf(t, benchOf(t, set, "lead-zero 0.2 Ω", "exciter 300 Ω", "hot-exciter 393 Ω"), "heat-of-exciter")
	assert.Contains(t, got, "Rise: about 79 K over 20 ± 15 °C")
}

func TestTheSmallestShortIsNamedOrNone(t *testing.T) {
	for _, c := range []struct {
		half, most float64
		want       string
	}{
		{0, 0, ""},
		{0.05, 0.0901, "With this meter a short of less than 10 % of one winding cannot be ruled out."},
		{0.6, 1.2, "With this meter a short of less than 60 % of one winding is seen less often than not."},
		{1.1, 2, "With this meter no short of turns within one winding can be seen this way."},
		{math.Inf(1), math.Inf(1), "With this meter no short of turns within one winding can be seen this way."},
	} {
		assert.Equal(t, c.want, words.ShortSeen(assess.Balance{Half: c.half, Most: c.most}))
	}
}

func TestTheWindingIsToldInWords(t *testing.T) {
	b := benchOf(t, session.DefaultSetup(), "lead-zero 0.2 Ω", "charge-pair-1-2 20.2 Ω", "charge-pair-2-3 20.2 Ω", "charge-pair-3-1 20.2 Ω")
	told := strings.Join(words.Winding(*b.Report().Winding), " ")
	assert.Contains(t, told, words.SoundPairs)
	assert.Contains(t, told, "star, its phases have 10.00, 10.00, 10.00 Ω")
	assert.Contains(t, told, "delta, its branches have 30.00, 30.00, 30.00 Ω")
	assert.Contains(t, told, "cannot tell star from delta")

	open := benchOf(t, session.DefaultSetup(), "lead-zero 0.2 Ω", "charge-pair-1-2 OL Ω", "charge-pair-2-3 20.2 Ω", "charge-pair-3-1 OL Ω")
	told = strings.Join(words.Winding(*open.Report().Winding), " ")
	assert.Contains(t, told, "the phase at lead 1 of a star is broken")
	assert.Contains(t, told, "lead 1 is broken")
	assert.NotContains(t, told, "its phases have")

	odd := benchOf(t, session.DefaultSetup(), "lead-zero 0.2 Ω", "charge-pair-1-2 2.2 Ω", "charge-pair-2-3 20.2 Ω", "charge-pair-3-1 90.2 Ω")
	assert.Contains(t, strings.Join(words.Winding(*odd.Report().Winding), " "), words.OddPairs)
}

func TestWhereItTouchesIsToldInWords(t *testing.T) {
	for place, want := range map[winding.TouchPlace]string{
		winding.TouchAtLead: "at lead 2", winding.TouchAtNeutral: "common point", winding.TouchInPhase: "30 % of the way into the winding, counted from lead 2 (± 10 %)",
		winding.TouchContradicts: "two places", winding.TouchSomewhere: "too coarse to say where",
	} {
		assert.Contains(t, words.Touch(winding.Touch{Place: place, Lead: 1, Share: 0.3, ShareStd: 0.05}), want)
	}
	assert.Contains(t, words.Touch(winding.Touch{Place: winding.TouchAtLead, Leak: true}), "leaks")
}

func TestTheWireIsToldInWords(t *testing.T) {
	w, err := winding.Coil{Resistance: 10, ResistanceStd: 0.2, InHand: 1}.FromDiameter(quantity.Metre(0.3e-3), 0.006e-3)
	require.NoError(t, err)
	got := words.Wire(w)
	assert.Contains(t, got, "0.300 ± 0.012 mm thick")
	assert.Contains(t, got, "AWG 29")
	for _, way := range words.WireWays() {
		assert.NotEmpty(t, words.WireFigures(way.ID))
	}
}

func TestWhatIsNotCoveredShrinksWithTheMethods(t *testing.T) {
	assert.Contains(t, words.NotCovered(assess.Report{}), "a few shorted turns")
	told := assess.Report{Fine: &assess.Balance{Verdict: spec.Verdict{Outcome: spec.InSpec}}}
	assert.NotContains(t, words.NotCovered(told), "a few shorted turns")
	assert.Contains(t, words.NotCovered(assess.Report{Fine: &assess.Balance{}}), "a few shorted turns", "nothing was told")
	assert.Contains(t, words.NotCovered(told), "only when hot or at speed")
	cold := assess.Line{Check: check.Check{Measures: spec.HotResistance}}
	hot := assess.Line{Check: check.Check{Measures: spec.WindingHeat}, Verdict: spec.Verdict{Outcome: spec.InSpec}}
	told.Lines, told.Derived = []assess.Line{cold}, []assess.Line{hot}
	assert.NotContains(t, words.NotCovered(told), "only when hot")
	told.Lines = append(told.Lines, cold)
	assert.Contains(t, words.NotCovered(told), "only when hot")
}
