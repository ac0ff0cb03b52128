package words_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/quantity"
)

func checkOf(t *testing.T, id check.ID) check.Check {
	t.Helper()
	k, ok := check.Find(check.Whole(check.DefaultBuild()), id)
	assert.True(t, ok, id)
	return k
}

func TestAReasonNamesReadingUsualAndOdds(t *testing.T) {
	for _, c := range []struct {
		id    check.ID
		value string
		r     diagnose.Reason
		want  string
	}{
		{"charge-pair-1-2", "4.8 Ω", diagnose.Reason{Weight: -3, Low: 0.12, High: 0.51, Answer: diagnose.Evidence{Value: 4.8}},
			"Charge leads 1 and 2: 4.8 Ω. With this fault nine in ten read 0.1 to 0.5 Ω; such an answer comes 8 times as often with the other suspects."},
		{"charge-core-1", "open line", diagnose.Reason{Weight: 1, Open: 0.98},
			"Charge lead 1 to core: open line. With this fault nearly all read open line; such an answer comes 2.0 times as often with it."},
		{"charge-core-1", "300 Ω", diagnose.Reason{Weight: 4.5, Low: 0.1, High: 0.8, Answer: diagnose.Evidence{Value: 300}},
			"Charge lead 1 to core: 300 Ω. With this fault nine in ten read 0.1 to 0.8 Ω; even so, such an answer comes 23 times as often with it."},
		{"battery-5000", "12.4 V", diagnose.Reason{Weight: -1, Low: 12.1, High: 12.9, Answer: diagnose.Evidence{Value: 12.4}},
			"Battery at 5000 rpm: 12.4 V. With this fault nine in ten read 12.1 to 12.9 V too; but such an answer comes 2.0 times as often with the other suspects."},
		{"charge-core-1", "open line", diagnose.Reason{Weight: -7, Open: 0.3, Low: 10, High: 900, Answer: diagnose.Evidence{State: quantity.OverRange}},
			"Charge lead 1 to core: open line. With this fault 30 in 100 read open line, most others 10 to 900 Ω; such an answer comes over 100 times as often with the other suspects."},
		{"fuse", "Yes", diagnose.Reason{Weight: 6, Open: 0.97},
			"The main fuse, by eye: Yes. With this fault 97 in 100 say yes; such an answer comes 64 times as often with it."},
		{"exciter-cranking", "won't settle", diagnose.Reason{Weight: 1, Restless: 0.95},
			"Exciter volts, cranking: won't settle. With this fault nearly all will not settle; such an answer comes 2.0 times as often with it."},
		{"battery-5000", "12.3 V", diagnose.Reason{Weight: 1, Restless: 0.2, Low: 12.1, High: 12.9, Answer: diagnose.Evidence{Value: 12.3}},
			"Battery at 5000 rpm: 12.3 V. With this fault 20 in 100 do not settle, most others read 12.1 to 12.9 V; such an answer comes 2.0 times as often with it."},
		{"battery-5000", "12.3 V", diagnose.Reason{Weight: 1}, "Battery at 5000 rpm: 12.3 V. Such an answer comes 2.0 times as often with it."},
	} {
		got := words.Reason(checkOf(t, c.id), c.value, fault.Fault{ID: "some"}, c.r)
		assert.Equal(t, c.want, got)
		whole(t, string(c.id), got)
	}
}

func TestASoundMachineIsNoFault(t *testing.T) {
	got := words.Reason(checkOf(t, "fuse"), "Yes", fault.Fault{ID: fault.None}, diagnose.Reason{Weight: -6, Open: 0.01})
	assert.Contains(t, got, "Of sound machines 1 in 100 say yes;")
}

func TestSpansAreWrittenAsWidelyAsTheyAre(t *testing.T) {
	for _, c := range []struct {
		id        check.ID
		low, high float64
		want      string
	}{
		{"charge-pair-1-2", 0.12, 0.51, "0.1 to 0.5 Ω"},
		{"charge-pair-1-2", 0.3, 0.3, "about 0.3 Ω"},
		{"exciter", 210, 480, "210 to 480 Ω"},
		{"exciter", 5, 12000, "5.0 Ω to 12 kΩ"},
		{"exciter", 600, 2400, "0.6 to 2.4 kΩ"},
		{"charge-core-1", 2e6, 5e6, "open line"},
		{"battery-rest", 12.42, 12.71, "12.42 to 12.71 V"},
		{"drop-ground", -0.02, 0.08, "−20 to 80 mV"},
	} {
		assert.Equal(t, c.want, words.Span(checkOf(t, c.id), c.low, c.high))
	}
}

func TestAnswersAndWhatTheyMean(t *testing.T) {
	inf := math.Inf(1)
	ohms, look := checkOf(t, "charge-pair-1-2"), checkOf(t, "fuse")
	for want, c := range map[string]struct {
		k check.Check
		m diagnose.Meaning
	}{
		"Under 0.60 Ω":   {ohms, diagnose.Meaning{Low: -inf, High: 0.6}},
		"0.60 to 1.2 Ω":  {ohms, diagnose.Meaning{Low: 0.6, High: 1.2}},
		"1.2 Ω or more":  {ohms, diagnose.Meaning{Low: 1.2, High: inf}},
		"800 Ω to 12 kΩ": {ohms, diagnose.Meaning{Low: 800, High: 12345}},
		"Any number":     {ohms, diagnose.Meaning{Low: -inf, High: inf}},
		"Open line":      {ohms, diagnose.Meaning{State: quantity.OverRange}},
		"Won't settle":   {ohms, diagnose.Meaning{State: quantity.Unsettled}},
		"Yes":            {look, diagnose.Meaning{Yes: true}},
		"No":             {look, diagnose.Meaning{}},
		"Under 13.2 V":   {checkOf(t, "battery-5000"), diagnose.Meaning{Low: -inf, High: 13.21}},
		"Under 880 mV":   {checkOf(t, "drop-plus"), diagnose.Meaning{Low: -inf, High: 0.877}},
	} {
		assert.Equal(t, want, words.MeaningAnswer(c.k, c.m))
	}
	assert.Equal(t, "Charge winding, 84\u00a0%", words.MeaningTells(diagnose.Meaning{Parts: fault.PartsOf(check.ChargeWinding), Sure: 0.84}))
	assert.Equal(t, "No fault, over\u00a099\u00a0%", words.MeaningTells(diagnose.Meaning{Sure: 1}))
	assert.Equal(t, "expected in 23 %", words.MeaningChance(diagnose.Meaning{Chance: 0.23}))
}

func TestWhyACheckIsNext(t *testing.T) {
	means := []diagnose.Meaning{{Parts: fault.PartsOf(check.Regulator)}, {Parts: fault.PartsOf(check.Battery)}, {Parts: fault.PartsOf(check.Regulator)}, {}}
	got := words.WhyNext(diagnose.Choice{Gain: 0.2, Bits: 0.5}, 0.45, means, true)
	assert.Equal(t, "The likeliest part stands at 45 %; after this check it is expected at 65 %. It tells apart: regulator-rectifier; battery; a sound machine. No other check tells more for its minutes.", got)
	chosen := words.WhyNext(diagnose.Choice{}, 0.6, nil, false)
	assert.Contains(t, chosen, "not expected to change much")
	assert.NotContains(t, chosen, "No other check")
	assert.Contains(t, words.WhyNext(diagnose.Choice{Bits: 0.1}, 0.9, means[:1], true), "rules others out")
	assert.Contains(t, words.WhyNext(diagnose.Choice{Gain: 0.4}, 0.9, nil, true), "expected at over 99 %")
	assert.Equal(t, "Regulator-rectifier: 97 % sure. Read this before you buy or mend anything: something that nobody thought of may look the same.",
		words.WhyConfirm(fault.PartsOf(check.Regulator), 0.97))
}

func TestTheLoudestReadingIsTakenAgain(t *testing.T) {
	for _, a := range []diagnose.Action{diagnose.Replace, diagnose.Repair} {
		for _, c := range []struct {
			id   check.ID
			r    diagnose.Reason
			want string
		}{
			{"fuse", diagnose.Reason{Open: 0.97}, "if the answer is no then"},
			{"spark", diagnose.Reason{Open: 0.03}, "if the answer is yes then"},
			{"exciter", diagnose.Reason{Open: 0.97}, "unless it reads open line again"},
			{"charge-pair-1-2", diagnose.Reason{Low: 0.1, High: 0.5, Answer: diagnose.Evidence{Value: 0.3}}, "well away from 0.1 to 0.5 Ω"},
			{"charge-pair-1-2", diagnose.Reason{Low: 0.1, High: 0.5, Answer: diagnose.Evidence{Value: 9}}, "if it then reads otherwise"},
			{"charge-pair-1-2", diagnose.Reason{}, "if it then reads otherwise"},
		} {
			got := words.RestsOn(checkOf(t, c.id), a, c.r)
			assert.Contains(t, got, c.want)
			whole(t, string(c.id), got)
		}
	}
}

func TestEveryAimHasAHeadingAndProgress(t *testing.T) {
	seen := map[string]bool{}
	for _, a := range check.Aims() {
		heading := words.FindHeading(a)
		assert.False(t, seen[heading], heading)
		seen[heading] = true
	}
	assert.Equal(t, "1 answer so far", words.FindProgress(1))
}
