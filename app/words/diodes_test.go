package words_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// What cannot be judged is said: thyristors above read open both ways when sound.
// The harness still carries the battery, and the digits of a cheap meter are
// millivolts.
func TestTheDiodesOfTheRegulatorAreSaidHonestly(t *testing.T) {
	upper, lower := find(t, "diode-plus-2"), find(t, "diode-ground-3")
	above, below := strings.Join(words.Steps(upper, meter.Cheap()), " "), strings.Join(words.Steps(lower, meter.Cheap()), " ")
	assert.Contains(t, above, "open both ways is normal")
	assert.NotContains(t, below, "open both ways")
	for _, all := range []string{above, below} {
		assert.Contains(t, all, "still carries the battery")
		assert.Contains(t, all, "Key off")
		assert.Contains(t, all, "millivolts")
	}
	assert.NotContains(t, strings.Join(words.Steps(upper, meter.Auto6000()), " "), "millivolts")
	assert.Equal(t, "Regulator diode, lead 2 to plus", words.CheckName(upper))
	assert.Equal(t, "Regulator diode, ground to lead 3", words.CheckName(lower))
	assert.Contains(t, words.Brief(upper, spec.Verdict{Reason: spec.MayBlock, Remedies: []spec.Remedy{spec.CompareLeads}}), "other leads")
	assert.Contains(t, words.Because(lower, spec.Verdict{Reason: spec.LineBroken}), "broken")
	assert.Contains(t, words.Where(upper), words.PlugIs(check.RegulatorApart))
	assert.Equal(t, "diode", words.DialAt(meter.Diode, "diode"))
}
