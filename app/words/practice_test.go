package words_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

func TestEveryFaultHasWords(t *testing.T) {
	var kinds []string
	for _, k := range machine.Kinds() {
		kinds = append(kinds, string(k))
		whole(t, string(k), words.FaultRemedy(k))
	}
	assert.ElementsMatch(t, constants(t, "machine", "Kind"), kinds, "a kind is not listed")
	allDiffer(t, "fault", kinds, func(k string) string { return words.Fault(machine.Kind(k)) })
	parts := map[check.Part]bool{}
	for _, p := range words.FaultGroups() {
		assert.NotEmpty(t, words.Part(p), p)
		parts[p] = true
	}
	for _, k := range machine.Kinds() {
		assert.True(t, parts[k.Part()], "%s is under no part", k)
	}
}

// Every fault as it is drawn, on every build of the benches, makes a sentence.
func TestEveryTruthIsASentence(t *testing.T) {
	builds := map[machine.Build]bool{}
	for seed := range uint32(40) {
		builds[practice.Open(practice.Usual, seed).Build] = true
	}
	assert.Greater(t, len(builds), 3)
	for b := range builds {
		for _, k := range machine.Kinds() {
			f, ok := machine.NewChance(7).Sized(k, b)
			if !ok {
				continue
			}
			told := words.FaultIs(f, b)
			whole(t, string(k), told)
			assert.True(t, strings.HasPrefix(told, words.Fault(k)), told)
			assert.NotContains(t, told, "#", k)
			assert.NotContains(t, told, ",,", k)
		}
	}
}

func TestTruthsSayWhereAndHowMuch(t *testing.T) {
	star, delta := machine.Usual(), machine.Usual()
	delta.Charge = machine.Delta
	half := machine.Usual()
	half.Charge, half.Regulating = machine.GroundedEnd, machine.HalfWave
	for _, c := range []struct {
		f    machine.Fault
		b    machine.Build
		want string
	}{
		{machine.Fault{Kind: machine.PhaseToCore, At: 2, Size: 0.412}, star, "A charge winding touches the core, the one behind lead 2 (41 % along its wire)."},
		{machine.Fault{Kind: machine.PhaseJoint, At: 3, Size: 1.234}, delta, "A solder joint of a charge winding is bad, the one between leads 3 and 1 (1.23 Ω in the joint)."},
		{machine.Fault{Kind: machine.DiodeIsOpen, At: 1}, star, "A diode of the regulator is open, from lead 1 to plus."},
		{machine.Fault{Kind: machine.DiodeIsShorted, At: 5}, star, "A diode of the regulator is shorted, from ground to lead 2."},
		{machine.Fault{Kind: machine.DiodeIsOpen, At: 1}, half, "A diode of the regulator is open, its only one."},
		{machine.Fault{Kind: machine.PickupOpen, HotOnly: true}, star, "The pickup is broken inside, but only when it is warm."},
		{machine.Fault{Kind: machine.GapWide, Size: 1.2e-3}, star, "The pickup's gap is too wide (1.20 mm wider than usual)."},
		{machine.Fault{Kind: machine.Drain, Size: 0.25}, star, "Something drains the battery with the key off (250 mA)."},
		{machine.Fault{Kind: machine.PlugFouled, Size: 47e3}, star, "The spark plug is fouled (47.0 kΩ across its gap)."},
		{machine.Fault{Kind: machine.LowSetPoint, Size: 12.9}, star, "The regulator holds the voltage too low (12.9 V on a battery of 12 V)."},
		{machine.Fault{Kind: machine.PhaseToPhase, At: 2}, star, "Two charge leads touch each other, leads 2 and 3."},
	} {
		assert.Equal(t, c.want, words.FaultIs(c.f, c.b))
	}
}

func TestPracticeHasAWordForEverything(t *testing.T) {
	for _, l := range practice.Levels() {
		assert.NotEmpty(t, words.Level(l))
		whole(t, "level", words.LevelHint(l))
	}
	seen := map[practice.Complaint]bool{}
	for _, l := range practice.Levels() {
		for seed := range uint32(60) {
			b := practice.Open(l, seed)
			seen[b.Complaint] = true
			assert.Regexp(t, `^“[A-Z].*\.”$`, words.Complaint(b), b.Code())
		}
	}
	assert.Len(t, seen, len(constants(t, "practice", "Complaint")), "every complaint was met")
	for o := practice.WrongPart; o <= practice.RightFault; o++ {
		assert.NotEmpty(t, words.Named(o))
	}
	for e := check.Stopped; e <= check.At5000; e++ {
		assert.NotEmpty(t, words.EngineDoes(e, false))
	}
	assert.Equal(t, "kicked", words.EngineDoes(check.Cranking, true))
	assert.Equal(t, "idling", words.EngineDoes(check.Idling, true))
}

func TestACodeProblemIsOneSentence(t *testing.T) {
	for _, code := range []string{"", "1", "00U-000", "000-001", strings.Repeat("x", 80)} {
		_, err := practice.FromCode(code)
		whole(t, code, words.CodeProblem(err))
		assert.Equal(t, 1, strings.Count(words.CodeProblem(err), "."), words.CodeProblem(err))
	}
}

func TestDisplaysAsTheMeterShowsThem(t *testing.T) {
	ohms := rig.Display{Unit: quantity.Ohms}
	with := func(s quantity.State, texts ...string) rig.Display {
		d := ohms
		d.State, d.Texts = s, texts
		return d
	}
	for _, c := range []struct {
		d    rig.Display
		auto bool
		want string
	}{
		{with(quantity.Number, "0.9"), false, "0.9 Ω"},
		{with(quantity.OverRange, ""), false, "1 at the left (over range)"},
		{with(quantity.OverRange, ""), true, "OL (over range)"},
		{with(quantity.Unsettled, "12", "", "15"), true, "12 … OL … 15 Ω, won't settle"},
		{with(quantity.Unsettled, "12", "", "15"), false, "12 … 1 … 15 Ω, won't settle"},
		{rig.Display{Unread: true}, false, "not on this meter"},
	} {
		assert.Equal(t, c.want, words.Shown(c.d, c.auto))
	}
	assert.Empty(t, words.DisplayNote(with(quantity.Number, "1")))
	assert.NotEmpty(t, words.DisplayNote(with(quantity.OverRange, "")))
}

func TestDialPositionsOfEveryMeter(t *testing.T) {
	for _, m := range meter.Bundled() {
		seen := map[string]bool{}
		for _, f := range []meter.Function{meter.Ohms, meter.VoltsDC, meter.VoltsAC} {
			for _, r := range m.Ranges[f] {
				at := words.DialAt(f, r.Label)
				assert.False(t, seen[at], "%s: %s twice", m.ID, at)
				seen[at] = true
			}
		}
	}
	assert.Equal(t, "Ω 2 k", words.DialAt(meter.Ohms, "2 kΩ"))
	assert.Equal(t, "V= 20", words.DialAt(meter.VoltsDC, "20 V"))
	assert.Equal(t, "mV= 200", words.DialAt(meter.VoltsDC, "200 mV"))
	assert.Equal(t, "V~ auto", words.DialAt(meter.VoltsAC, ""))
}

func TestWavesInWords(t *testing.T) {
	sine := func(mean, peak, hertz float64) rig.Trace {
		out := rig.Trace{Step: 1e-4}
		for i := range 600 {
			out.Volts = append(out.Volts, mean+peak*math.Sin(2*math.Pi*hertz*float64(i)*out.Step))
		}
		return out
	}
	assert.Equal(t, "A steady 12.5 V.", words.Wave(sine(12.5, 0.005, 100)))
	assert.Equal(t, "A steady 0 V.", words.Wave(rig.Trace{Step: 1, Volts: make([]float64, 9)}))
	assert.Equal(t, "Mean 0 V, from −20.0 V to 20.0 V, about 100 Hz.", words.Wave(sine(0, 20, 100)))
	assert.Equal(t, "Mean 2.00 V, from 1.00 V to 3.00 V, about 250 Hz.", words.Wave(sine(2, 1, 250)))
	assert.NotContains(t, words.Wave(sine(1, 1, 10)), "Hz", "too seldom to tell")
	assert.Empty(t, words.Wave(rig.Trace{}))
}

func TestAReadingSaysHowItWasTaken(t *testing.T) {
	p := machine.Probing{Red: "charge-1", Black: check.Core, Function: meter.Ohms, State: machine.State{Plug: check.Apart}}
	assert.Equal(t, "Red lead 1, black core, Ω 200, plug apart, stopped", words.Probed(p, "200 Ω", false))
	p = machine.Probing{Red: "regulator-1", Black: check.Frame, Function: meter.VoltsAC, State: machine.State{Plug: check.Together, Engine: check.Cranking, Key: true, Hot: true}}
	assert.Equal(t, "Red reg 1, black frame, V~ auto, plug together, kicked, warm", words.Probed(p, "", true))
}

func TestHowFarReadingsReached(t *testing.T) {
	assert.Equal(t, "No reading yet", words.MinutesSpent(0, 0))
	assert.Equal(t, "1 reading, half a minute", words.MinutesSpent(0.5, 1))
	assert.Equal(t, "3 readings, about 4.5 min", words.MinutesSpent(4.5, 3))
	assert.Equal(t, "0 min", words.StepMinutes(0))
	assert.Equal(t, "Spoke against none of 30 other faults.", words.SpokeAgainst(0, 30))
	for _, left := range [][]machine.Kind{nil, {machine.BoxDead}, {machine.BoxDead, machine.KillWire}} {
		whole(t, "left", words.LeftOver(left))
	}
}
