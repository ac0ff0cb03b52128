package words_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

func catalogue(t *testing.T) []fault.Fault {
	t.Helper()
	faults, err := fault.Bundled()
	require.NoError(t, err)
	return faults.Faults
}

func TestEverySuspectHasWords(t *testing.T) {
	byID := map[string]fault.Fault{}
	var ids []string
	for _, f := range catalogue(t) {
		ids = append(ids, string(f.ID))
		byID[string(f.ID)] = f
		assert.NotEmpty(t, words.SuspectPart(f), f.ID)
		whole(t, string(f.ID), words.Leading(diagnose.Suspect{Fault: f, Probability: 0.4}))
	}
	allDiffer(t, "suspect", ids, func(id string) string { return words.Suspect(byID[id]) })
}

func TestEveryFindingIsSaid(t *testing.T) {
	for _, a := range constants(t, "diagnose", "Action") {
		for _, one := range catalogue(t) {
			f := diagnose.Finding{Action: diagnose.Action(a), Parts: one.Parts(), Fault: one.ID, Probability: 0.97, Minutes: 12.5, Checks: 4,
				Faults: []diagnose.Suspect{{Fault: one, Probability: 0.9}}}
			if (f.Action == diagnose.NoFault) != (one.ID == fault.None) && f.Action != diagnose.NotListed && f.Action != diagnose.Open {
				continue
			}
			assert.NotEmpty(t, words.FindingIs(f))
			for _, sentence := range []string{words.FindingChance(f), words.FindingRemedy(f, check.NoCharge), words.FindingRemedy(f, check.Bench), words.FindingSpent(f)} {
				whole(t, a+" "+string(one.ID), sentence)
			}
		}
	}
	for _, one := range catalogue(t) {
		f := diagnose.Finding{Action: diagnose.Open, Parts: one.Parts(), Fault: one.ID, Probability: 0.3, Faults: []diagnose.Suspect{{Fault: one, Probability: 0.2}}}
		assert.Equal(t, words.NotSettled, words.FindingIs(f))
		assert.Contains(t, words.FindingRemedy(f, check.NoSpark), "Buy nothing yet", one.ID)
	}
	empty := diagnose.Finding{}
	assert.Equal(t, words.OffTheList, words.FindingIs(empty))
	whole(t, "empty", words.FindingChance(empty))
	whole(t, "empty", words.FindingRemedy(empty, check.NoSpark))
}

func TestAProbabilityHasAWordAndAStep(t *testing.T) {
	for p, want := range map[float64]int{1: 4, 0.95: 4, 0.94: 3, 0.5: 3, 0.3: 2, 0.1: 2, 0.09: 1, 0.02: 1, 0.01: 0, 0: 0} {
		step, word := words.Likelihood(p)
		assert.Equal(t, want, step, "%v", p)
		assert.NotEmpty(t, word)
	}
	assert.Equal(t, "over 99 %", words.SuspectChance(1))
	assert.Equal(t, "under 1 %", words.SuspectChance(0))
}

func TestEveryCheckCanBeAsked(t *testing.T) {
	wholeChecks(func(c check.Check) {
		assert.True(t, strings.HasSuffix(words.AskOf(c), "?"), c.ID)
		whole(t, string(c.ID), words.Takes(c, c.Minutes))
		whole(t, string(c.ID), words.Takes(c, c.Minutes+3))
	})
	for _, a := range check.Accesses() {
		assert.Regexp(t, `^[A-Z].* \([0-9.]+ min\)$`, words.First(a))
	}
}

func TestProblemsOfAReadingAreOneSentence(t *testing.T) {
	for _, err := range []error{
		&meter.FieldError{Field: "reading", Reason: "is 40 Ω, which leads that work cannot read", WayOut: "try other leads"},
		&quantity.UnreadableError{Text: "12x", Reason: "is no number", WayOut: "type digits"}, errors.New("something else"),
	} {
		whole(t, "problem", words.FindProblem(err))
	}
	assert.Contains(t, words.Growing(3, 58), "3 of 58")
	whole(t, "suspects", words.SuspectsFrom(0, 0))
	whole(t, "slip", words.SlipOf("Battery at rest", 0.97))
	whole(t, "slip", words.SlipReason(0.97))
	whole(t, "again", words.TakenAlong("12.4 V"))
	assert.Equal(t, "12.4 V", words.Together([]string{"12.4 V"}))
	assert.Equal(t, "12.5 V (2 readings)", words.Together([]string{"12.4 V", "12.5 V"}))
	assert.Empty(t, words.Together(nil))
	whole(t, "suspects", words.SuspectsFrom(4.5, 3))
	assert.NotEqual(t, words.FindHeading(check.NoCharge), words.FindHeading(check.NoSpark))
}
