package words_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
)

// Every double says why both, in which order they are mended, what can hurt, and
// whether one can ride home; no other fault does.
func TestEveryDoubleHasItsWords(t *testing.T) {
	doubles := 0
	for _, one := range catalogue(t) {
		if !one.Double() {
			assert.Empty(t, words.WhyBoth(one)+strings.Join(words.OrderOfWork(one), "")+strings.Join(words.MendingCautions(one), ""), one.ID)
			continue
		}
		doubles++
		assert.Greater(t, len(words.OrderOfWork(one)), 2, one.ID)
		assert.NotEmpty(t, words.MendingCautions(one), one.ID)
		told := append([]string{words.WhyBoth(one)}, words.OrderOfWork(one)...)
		for _, sentence := range append(told, words.MendingCautions(one)...) {
			whole(t, string(one.ID), sentence)
			assert.Equal(t, strings.ToUpper(sentence[:1]), sentence[:1], sentence)
			assert.Less(t, len(sentence), 200, sentence)
		}
		for _, k := range one.Kinds() {
			assert.NotEqual(t, words.Fault(k), words.Suspect(one), "both are named")
			assert.Contains(t, words.SuspectPart(one), strings.ToLower(words.Part(k.Part()))[1:], one.ID)
		}
	}
	require.GreaterOrEqual(t, doubles, 4)
}

// What is mended first is what would kill the other part's successor.
func TestTheOrderKeepsNewPartsAlive(t *testing.T) {
	for _, one := range catalogue(t) {
		first, second := map[fault.ID]string{
			"phase-to-core-and-diode-shorted": "Stator first", "charge-pin-and-phase-turns": "Plug first",
			"regulator-dead-and-battery-sulphated": "Regulator first", "battery-cell-and-regulator-dead": "Battery out first",
			"regulator-unbound-and-battery-sulphated": "Regulator first", "weak-magnets-and-pickup-gap": "Bearing first",
		}[one.ID], map[fault.ID]string{
			"phase-to-core-and-diode-shorted": "Regulator second", "charge-pin-and-phase-turns": "Stator second",
			"regulator-dead-and-battery-sulphated": "Battery second", "battery-cell-and-regulator-dead": "before the new regulator runs",
			"regulator-unbound-and-battery-sulphated": "Battery second", "weak-magnets-and-pickup-gap": "Flywheel second",
		}[one.ID]
		if !one.Double() {
			continue
		}
		require.NotEmpty(t, first, "%s has no order", one.ID)
		all := strings.Join(words.OrderOfWork(one), " ")
		assert.Contains(t, all, first, one.ID)
		assert.Greater(t, strings.Index(all, second), strings.Index(all, first), one.ID)
	}
}

// A finding of a double names both parts, what is said of one names none but that, and
// a part that may be at fault too is pointed at with its chance.
func TestAFindingNamesBothParts(t *testing.T) {
	two := fault.Fault{ID: "regulator-dead-and-battery-sulphated", Kind: machine.NoCharging, With: machine.Sulphated}
	f := diagnose.Finding{Action: diagnose.Replace, Parts: two.Parts(), Fault: two.ID, Probability: 0.82, Faults: []diagnose.Suspect{{Fault: two, Probability: 0.8}}}
	assert.Equal(t, "Battery, and regulator-rectifier, both: 82 %. By these two faults: 80 %.", words.FindingChance(f))
	assert.Contains(t, words.FindingRemedy(f, check.NoCharge), "in the order below")
	assert.Equal(t, words.Suspect(two), words.FindingIs(f))
	one := fault.Fault{ID: "regulator-dead", Kind: machine.NoCharging}
	f = diagnose.Finding{Action: diagnose.Replace, Parts: one.Parts(), Fault: one.ID, Probability: 0.97, Faults: []diagnose.Suspect{{Fault: one, Probability: 0.9}}}
	assert.NotContains(t, words.FindingChance(f), "both")
	assert.Empty(t, words.PartsTogether(fault.Parts{}))
	for share, want := range map[float64]string{0.05: "1 of 20 such", 0.13: "1 of 8 such", 0.25: "1 of 4 such", 0.34: "1 of 3 such", 0.49: "about half of such"} {
		assert.Contains(t, words.LookAtToo(diagnose.AlsoPart{Part: check.Regulator, Share: share}), want)
	}
	for _, p := range parts(t) {
		said := words.LookAtToo(diagnose.AlsoPart{Part: p, Share: 0.2})
		whole(t, string(p), said)
		assert.Contains(t, said, "Look at the ", "%s has no name inside a sentence", p)
	}
}

// parts are those that a fault of the catalogue is of.
func parts(t *testing.T) []check.Part {
	t.Helper()
	seen := map[check.Part]bool{}
	var out []check.Part
	for _, f := range catalogue(t) {
		for _, p := range f.Parts().List() {
			if !seen[p] {
				seen[p] = true
				out = append(out, p)
			}
		}
	}
	return out
}

// The way home of a double follows the build where the ignition does.
func TestTheWayHomeOfADouble(t *testing.T) {
	two := fault.Fault{ID: "regulator-dead-and-battery-sulphated", Kind: machine.NoCharging, With: machine.Sulphated}
	f := diagnose.Finding{Action: diagnose.Replace, Parts: two.Parts(), Fault: two.ID, Faults: []diagnose.Suspect{{Fault: two}}}
	for _, s := range setups() {
		home := words.Home(f, s)
		assert.Equal(t, s.Build.Exciter, strings.HasPrefix(home, "Perhaps, by daylight"), home)
		assert.Equal(t, !s.Build.Exciter, strings.HasPrefix(home, "No: nothing charges"), home)
	}
}
