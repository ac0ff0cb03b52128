package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// constants are the values that the source of a package gives to its constants
// of one type, so that a new one without words is found.
func constants(t *testing.T, dir, typeName string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "..", "engine", dir, "*.go"))
	require.NoError(t, err)
	var out []string
	for _, file := range files {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		require.NoError(t, err)
		ast.Inspect(f, func(n ast.Node) bool {
			v, ok := n.(*ast.ValueSpec)
			if name, isIdent := identOf(v, ok); isIdent && name == typeName {
				out = append(out, literals(t, v)...)
			}
			return true
		})
	}
	require.NotEmpty(t, out, "%s.%s", dir, typeName)
	return out
}

func identOf(v *ast.ValueSpec, ok bool) (string, bool) {
	if !ok {
		return "", false
	}
	id, ok := v.Type.(*ast.Ident)
	if !ok {
		return "", false
	}
	return id.Name, true
}

func literals(t *testing.T, v *ast.ValueSpec) (out []string) {
	t.Helper()
	for _, value := range v.Values {
		lit, ok := value.(*ast.BasicLit)
		require.True(t, ok, "%s is no literal", v.Names[0].Name)
		text, err := strconv.Unquote(lit.Value)
		require.NoError(t, err)
		out = append(out, text)
	}
	return out
}

// allDiffer holds a word for each key, none empty, none twice.
func allDiffer(t *testing.T, what string, keys []string, word func(key string) string) {
	t.Helper()
	seen := map[string]string{}
	for _, key := range keys {
		w := word(key)
		assert.NotEmpty(t, w, "%s %q has no words", what, key)
		assert.Equal(t, strings.TrimSpace(w), w, "%s %q", what, key)
		if other, twice := seen[w]; twice {
			assert.Fail(t, "the same words twice", "%s %q and %q", what, key, other)
		}
		seen[w] = key
	}
}

func TestEveryConstantHasWords(t *testing.T) {
	allDiffer(t, "trap", constants(t, "check", "Trap"), func(k string) string { return words.Trap(check.Trap(k)) })
	allDiffer(t, "caution", constants(t, "check", "Caution"), func(k string) string { return words.Caution(check.Caution(k)) })
	allDiffer(t, "part", constants(t, "check", "Part"), func(k string) string { return words.Part(check.Part(k)) })
	allDiffer(t, "remedy", constants(t, "spec", "Remedy"), func(k string) string { return words.Remedy(spec.Remedy(k)) })
	terminals := places(t)
	allDiffer(t, "terminal", terminals, func(k string) string { return words.Terminal(check.Terminal(k)) })
	allDiffer(t, "terminal in short", terminals, func(k string) string { return words.ShortTerminal(check.Terminal(k)) })
	allDiffer(t, "look", constants(t, "check", "Look"), func(k string) string { return words.Look(check.Look(k)) })
	allDiffer(t, "access", constants(t, "check", "Access"), func(k string) string { return words.Access(check.Access(k)) })
	allDiffer(t, "answer", []string{"", "yes"}, func(k string) string { return words.Answer(k != "") })
	allDiffer(t, "outcome", []string{"0", "1", "2"}, func(k string) string {
		n, _ := strconv.Atoi(k)
		return words.Outcome(spec.Outcome(n))
	})
	var meters []string
	for _, m := range meter.Bundled() {
		meters = append(meters, m.ID)
	}
	allDiffer(t, "meter", meters, words.Meter)
}

// places are the points for probes: the constants but for "nowhere", and the
// charge leads.
func places(t *testing.T) []string {
	t.Helper()
	var out []string
	for _, k := range constants(t, "check", "Terminal") {
		if check.Terminal(k) != check.Nowhere {
			out = append(out, k)
		}
	}
	for lead := check.MinChargeLeads; lead <= check.MaxChargeLeads; lead++ {
		out = append(out, string(check.Charge(lead)))
	}
	return out
}

func TestEveryAimHasWords(t *testing.T) {
	for _, a := range constants(t, "check", "Aim") {
		if check.Aim(a) != check.EveryPart {
			assert.NotEmpty(t, words.Aim(check.Aim(a)), a)
			assert.NotEmpty(t, words.AimHint(check.Aim(a)), a)
		}
	}
}

var everyMethod = []check.Method{check.VoltAmp, check.HotWinding, check.PeakHold, check.ResistorCheck}

// everyCheck visits each check that any build has.
func everyCheck(visit func(check.Check)) {
	seen := map[check.ID]bool{}
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		b := check.DefaultBuild()
		b.ChargeLeads = leads
		for _, aim := range []check.Aim{check.Bench, check.SelfCheck} {
			for _, c := range check.Plan(b, aim, everyMethod...) {
				if !seen[c.ID] {
					seen[c.ID] = true
					visit(c)
				}
			}
		}
	}
	wholeChecks(visit)
}

// wholeChecks visits each check of a whole machine, whether or not a plan has it
// too: there it may ask for another state.
func wholeChecks(visit func(check.Check)) {
	seen := map[check.ID]bool{}
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		for _, exciter := range []bool{true, false} {
			b := check.DefaultBuild()
			b.ChargeLeads, b.Exciter = leads, exciter
			for _, c := range check.Whole(b) {
				if !seen[c.ID] {
					seen[c.ID] = true
					visit(c)
				}
			}
		}
	}
}

func TestEveryCheckIsDescribed(t *testing.T) {
	measured := map[string]bool{}
	questions := map[string]check.ID{}
	names := map[string]check.ID{}
	everyCheck(func(c check.Check) {
		measured[string(c.Measures)] = true
		assert.NotEmpty(t, words.Why(c), c.ID)
		assert.NotEmpty(t, words.CheckQuestion(c), c.ID)
		assert.NotEmpty(t, words.Where(c), c.ID)
		assert.NotEmpty(t, words.Jacks(c), c.ID)
		assert.NotEqual(t, string(c.ID), words.CheckName(c), "an id is no name")
		if other, twice := names[words.CheckName(c)]; twice && other != c.ID {
			assert.Fail(t, "the same name twice", "%s and %s", c.ID, other)
		}
		names[words.CheckName(c)] = c.ID
		if other, twice := questions[words.CheckQuestion(c)]; twice && other != c.ID {
			assert.Fail(t, "the same question twice", "%s and %s", c.ID, other)
		}
		questions[words.CheckQuestion(c)] = c.ID
		for _, m := range meter.Bundled() {
			steps := words.Steps(c, m)
			assert.GreaterOrEqual(t, len(steps), 2, c.ID)
			for _, s := range steps {
				assert.NotContains(t, s, "  ", "%s: a word is missing in %q", c.ID, s)
				assert.NotContains(t, s, " .", "%s: a word is missing in %q", c.ID, s)
				assert.True(t, strings.HasSuffix(s, "."), "%s: %q", c.ID, s)
			}
		}
		for _, trap := range c.Traps {
			assert.NotEmpty(t, words.Trap(trap), "%s: %s", c.ID, trap)
		}
		for _, caution := range c.Cautions {
			assert.NotEmpty(t, words.Caution(caution), "%s: %s", c.ID, caution)
		}
	})
	workedOut := map[spec.Measurand]bool{spec.ChargeBalance: true, spec.FineBalance: true, spec.WindingHeat: true}
	for _, m := range constants(t, "spec", "Measurand") {
		assert.NotEqual(t, workedOut[spec.Measurand(m)], measured[m], "a check measures %s, or it is worked out", m)
	}
}

// A verdict on a limit of each kind, for each reason that a check can get.
func TestEveryReasonHasASentence(t *testing.T) {
	both := spec.Between(spec.ExciterResist, quantity.Resistance, 100, 500)
	ofGroups := map[spec.Reason]bool{spec.AllAlike: true, spec.OneDiffers: true, spec.CannotCompare: true}
	pair := check.Check{Measures: spec.ChargePair, Leads: []int{1, 2}}
	for _, name := range constants(t, "spec", "Reason") {
		v := spec.Verdict{Reason: spec.Reason(name), Value: 300, Std: 10, HasValue: true, Limit: both, HasLimit: true, Probability: 0.5}
		if ofGroups[v.Reason] {
			v.Limit = spec.Limit{High: 0.1, Low: math.Inf(-1), Ratio: true}
			v.Value, v.Std = 0.2, 0.01
			whole(t, name, words.Balance(assess.Balance{Verdict: v, Checks: []check.Check{pair, pair}}))
			continue
		}
		everyCheck(func(c check.Check) {
			if sideReached(c, v.Reason) {
				whole(t, name+" of "+string(c.ID), words.Because(c, v))
				whole(t, name+" of "+string(c.ID), words.Brief(c, v))
			}
		})
	}
	whole(t, "missing pair", words.Balance(assess.Balance{Missing: 1}))
	for _, r := range []spec.Reason{spec.NearLimit, spec.TooCoarse} {
		v := spec.Verdict{Reason: r, Value: 0.1, Std: 0.03, HasValue: true, Limit: spec.Limit{High: 0.1, Ratio: true}}
		whole(t, string(r), words.Balance(assess.Balance{Verdict: v, Checks: []check.Check{pair, pair}}))
	}
}

// sideReached leaves out limits that no profile can have: nothing is too low
// for what must only be low, nor too high for what must be open or strong; and what only counts together with
// others has no limit of its own.
func sideReached(c check.Check, r spec.Reason) bool {
	if c.Instrument == check.Eyes {
		return false
	}
	if c.Feeds {
		return r != spec.Below && r != spec.Above
	}
	switch c.Measures {
	case spec.LeadZero, spec.CoreContinuity:
		return r != spec.Below
	case spec.ChargeToCore, spec.PhaseToPhase:
		return r != spec.Below && r != spec.Above
	case spec.ExciterCranking, spec.ExciterPeak, spec.PickupPeak, spec.BoxPeak:
		return r != spec.Above
	}
	return true
}

func whole(t *testing.T, what, sentence string) {
	t.Helper()
	sentence = strings.TrimSpace(sentence)
	assert.NotEmpty(t, sentence, what)
	assert.True(t, strings.HasSuffix(sentence, "."), "%s: %q breaks off", what, sentence)
	for _, hole := range []string{"  ", "()", "NaN", "Inf", ": ."} {
		assert.NotContains(t, sentence, hole, what)
	}
}

func TestChanceIsNeverMoreCertainThanKnown(t *testing.T) {
	for p, want := range map[float64]string{1: "over 99 %", 0.995: "over 99 %", 0.97: "97 %", 0.5: "50 %", 0.02: "2 %", 0: "under 1 %"} {
		assert.Equal(t, want, words.Chance(spec.Verdict{Probability: p}))
	}
	assert.Equal(t, "98 %", words.Chance(spec.Verdict{Probability: 0.02, Outcome: spec.OutOfSpec}), "of being right")
}

func TestLimitsAreWrittenInTheirUnit(t *testing.T) {
	inf := math.Inf(1)
	open := spec.Between(spec.ChargeToCore, quantity.Resistance, 2e6, inf)
	open.Open = true
	gap := spec.Between(spec.PickupGap, quantity.Length, 11*25.4e-6, 40*25.4e-6)
	gap.Unit = quantity.Thous
	writeIn(t, quantity.Chosen{Thousandths: true}) // of gaps the reader has the choice
	for want, l := range map[string]spec.Limit{
		"100 to 500 Ω":        spec.Between(spec.ExciterResist, quantity.Resistance, 100, 500),
		"0.1 to 1.5 kΩ":       spec.Between(spec.ExciterResist, quantity.Resistance, 100, 1500),
		"at most 1 Ω":         spec.Between(spec.LeadZero, quantity.Resistance, -inf, 1),
		"at least 30 V":       spec.Between(spec.ExciterCranking, quantity.VoltageAC, 30, inf),
		"11 to 40 thou":       gap,
		"must read open line": open,
		"alike within 10 %":   {High: 0.1, Ratio: true},
	} {
		assert.Equal(t, want, words.Limit(l))
	}
}

// What was read for the suspects alone is no test of the generator, and not nothing.
func TestTheHeadlineOfASessionForTheSuspects(t *testing.T) {
	assert.Equal(t, "Nothing measured yet", words.Headline(assess.Report{}, 0))
	assert.Equal(t, "Generator not tested, 1 reading for the suspects", words.Headline(assess.Report{}, 1))
	assert.Equal(t, "Generator not tested, 7 readings for the suspects", words.Headline(assess.Report{}, 7))
	good := assess.Report{Parts: []assess.PartResult{{Part: check.Pickup, Outcome: spec.InSpec, Tested: 1, Of: 1}}}
	assert.Equal(t, "All that was measured is in spec", words.Headline(good, 7))
}
