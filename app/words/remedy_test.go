package words_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/machine"
	"coilbook/engine/session"
)

// setups are the builds that change what must match.
func setups() []session.Setup {
	var out []session.Setup
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		for _, exciter := range []bool{true, false} {
			s := session.DefaultSetup()
			s.Aim = check.NoCharge
			s.Build.ChargeLeads, s.Build.Exciter, s.Build.Pickup = leads, exciter, exciter
			if leads == 3 {
				s.Unsure = []string{"statorPoles", "chargeLeads", "exciter", "pickup"}
			}
			out = append(out, s)
		}
	}
	return out
}

// Every fault of the catalogue says what to buy or fetch, what never to pair, and
// whether one can ride home.
func TestEveryFaultHasItsRemedies(t *testing.T) {
	for _, one := range catalogue(t) {
		if one.Parts().None() {
			continue
		}
		f := diagnose.Finding{Action: diagnose.Replace, Parts: one.Parts(), Fault: one.ID, Probability: 0.97, Faults: []diagnose.Suspect{{Fault: one, Probability: 0.9}}}
		for _, s := range setups() {
			var match, never []string
			for _, k := range one.Kinds() {
				assert.NotEmpty(t, words.Match(k, s), one.ID)
				assert.NotEmpty(t, words.NeverPair(k, s), one.ID)
				match, never = append(match, words.Match(k, s)...), append(never, words.NeverPair(k, s)...)
			}
			for _, sentence := range append(append([]string{words.Home(f, s)}, match...), never...) {
				whole(t, string(one.ID), sentence)
				assert.Equal(t, strings.ToUpper(sentence[:1]), sentence[:1], sentence)
				assert.Less(t, len(sentence), 200, sentence)
			}
		}
	}
	for _, k := range machine.Kinds() {
		assert.NotEmpty(t, words.Match(k, session.DefaultSetup()), k)
	}
	assert.Empty(t, words.Match("", session.DefaultSetup()))
	assert.Empty(t, words.NeverPair("", session.DefaultSetup()))
}

func TestWhatMustMatchFollowsTheBuild(t *testing.T) {
	told := func(k machine.Kind, change func(*session.Setup)) string {
		s := session.DefaultSetup()
		change(&s)
		return strings.Join(append(words.Match(k, s), words.NeverPair(k, s)...), " ")
	}
	three := told(machine.PhaseOpen, func(*session.Setup) {})
	one := told(machine.PhaseOpen, func(s *session.Setup) { s.Build.ChargeLeads, s.Build.Exciter = 1, false })
	assert.Contains(t, three, "12 poles around the core.")
	assert.Contains(t, three, "three-phase")
	assert.Contains(t, three, "Star or delta")
	assert.Contains(t, three, "With an exciter")
	assert.Contains(t, three, "an exciter feeds with a stator that has none")
	assert.NotContains(t, one, "Star or delta")
	assert.Contains(t, one, "Without an exciter")
	assert.Contains(t, one, "would short through the regulator")
	unsure := told(machine.PhaseOpen, func(s *session.Setup) { s.Unsure = []string{"statorPoles"} })
	assert.Contains(t, unsure, "You were not sure: count yours first.")
	assert.Contains(t, told(machine.BoxDead, func(*session.Setup) {}), "Fed by the exciter (AC)")
	assert.Contains(t, told(machine.BoxDead, func(s *session.Setup) { s.Build.Exciter = false }), "Fed by the battery")
	assert.Contains(t, told(machine.NoCharging, func(s *session.Setup) { s.Build.ChargeLeads = 2 }), "2 AC leads, single-phase")
	assert.Contains(t, told(machine.Sulphated, func(*session.Setup) {}), "lithium")
}

func TestTheWayHome(t *testing.T) {
	s := session.DefaultSetup()
	s.Aim = check.NoCharge
	home := func(k machine.Kind, hot bool, s session.Setup) string {
		for _, one := range catalogue(t) {
			if one.Kind == k && one.HotOnly == hot {
				return words.Home(diagnose.Finding{Action: diagnose.Replace, Fault: one.ID, Faults: []diagnose.Suspect{{Fault: one}}}, s)
			}
		}
		return ""
	}
	fed := s
	fed.Build.Exciter = false
	assert.Contains(t, home(machine.NoCharging, false, s), "the exciter feeds the ignition")
	assert.Contains(t, home(machine.NoCharging, false, fed), "the battery feeds the ignition too")
	assert.Contains(t, home(machine.BoxDead, false, s), "No:")
	assert.Contains(t, home(machine.BoxDead, true, s), "in short legs")
	assert.Contains(t, home(machine.KillSwitch, false, s), "another way to stop")
	bench := s
	bench.Aim = check.Bench
	assert.Empty(t, home(machine.PhaseOpen, false, bench), "nothing is ridden")
	for _, a := range []diagnose.Action{diagnose.NoFault, diagnose.NotListed, diagnose.Open} {
		none := catalogue(t)[0]
		whole(t, string(a), words.Home(diagnose.Finding{Action: a, Fault: none.ID, Faults: []diagnose.Suspect{{Fault: none}}}, s))
	}
	whole(t, "empty", words.Home(diagnose.Finding{}, s))
}

func TestWhatStaysUnknownIsSaid(t *testing.T) {
	whole(t, "leave", words.LeaveAlone(check.Battery, 0.14, 0.003, []string{words.ReadingIs(check.Check{ID: "battery-rest", Measures: "battery-rest"}, "12.6 V"), "b"}))
	whole(t, "strange", words.StrangeReadings(0.97))
	whole(t, "unlisted", words.MayBeUnlisted(0.07))
	whole(t, "left", words.WouldHaveTold("Battery at rest", 3.5))
	for p, want := range map[float64]string{0.5: "2", 0.6: "2", 0.67: "3", 0.75: "4", 0.8: "5", 0.9: "10", 0.935: "15", 0.99: "20"} {
		assert.Contains(t, words.OnlyThisMuch(p), "one chance in "+want+" that", "%v", p)
		whole(t, "sure", words.OnlyThisMuch(p))
	}
}
