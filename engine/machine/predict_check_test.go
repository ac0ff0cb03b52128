package machine_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

func find(t *testing.T, m machine.Machine, id check.ID) check.Check {
	t.Helper()
	c, ok := check.Find(everyPlan(m.Build), id)
	require.True(t, ok, id)
	return c
}

func TestChecksWithoutATerminal(t *testing.T) {
	m := usual(func(m *machine.Machine) { m.Reluctor.Gap = 0.7e-3 })
	with := meter.Cheap()
	assert.InDelta(t, 0.25, m.Predict(find(t, m, "lead-zero"), with, kit).Value, 1e-12)
	assert.InDelta(t, 0.7e-3, m.Predict(find(t, m, "pickup-gap"), with, kit).Value, 1e-12)
	assert.InDelta(t, 0.47, m.Predict(find(t, m, "known-resistor"), with, kit).Value, 1e-12)
}

// Supply, bulb, resistor and winding in a row; the drops compare as the ohms do.
func TestVoltAmpDrops(t *testing.T) {
	m := usual(sound)
	with := meter.Auto6000()
	known := m.Predict(find(t, m, "volt-amp-known-1-2"), with, kit).Value
	winding := m.Predict(find(t, m, "volt-amp-winding-1-2"), with, kit).Value
	ohms := m.Phases[0].Ohms + m.Phases[1].Ohms
	assert.InEpsilon(t, ohms/0.47, winding/known, 1e-6)
	assert.InEpsilon(t, 12.5*0.47/(40+0.47+ohms), known, 1e-6)
	cut := m.With(machine.Fault{Kind: machine.PhaseOpen, At: 1})
	assert.Zero(t, cut.Predict(find(t, m, "volt-amp-known-1-2"), with, kit).Value)
	assert.InEpsilon(t, 12.5, cut.Predict(find(t, m, "volt-amp-winding-1-2"), with, kit).Value, 1e-4, "all of it lies over the gap")
}

// An adapter on a pickup and on an exciter, stepped until its charge comes round.
func TestPeaksAgainstASteppedAdapter(t *testing.T) {
	m := usual(func(m *machine.Machine) { m.Pickups[0].Henry, m.Exciter.Henry, m.Starter.Ripple = 0, 0, 0 })
	rpm := m.CrankingSpeed()
	r := m.Reluctor
	in := m.Box.Input + 2*m.Harness.OtherPins.Ohms
	turn, edge := 60/rpm, r.Edge/6/rpm
	pickup := func(s float64) float64 {
		c := math.Cosh((s - turn/4) / edge)
		return m.Pickups[0].Turns * r.Flux / (2 * edge * c * c) * in / (in + m.Pickups[0].Ohms)
	}
	hertz := float64(m.Build.MagnetPoles) * rpm / 120
	exciter := func(s float64) float64 {
		return 2 * math.Pi * hertz * m.Exciter.Turns * machine.WindingFactor * m.Magnets.Flux * max(math.Sin(2*math.Pi*hertz*s), 0)
	}
	for _, a := range []struct{ farads, bleeder float64 }{{0.47e-6, 10e6}, {0.47e-6, 300e3}, {10e-6, 200e3}} {
		for _, with := range []meter.Meter{meter.Cheap(), meter.Auto6000()} {
			k := kit
			k.AdapterFarads, k.BleederOhms = a.farads, a.bleeder
			load := 1 / (1/float64(with.InputDC) + 1/a.bleeder)
			got := m.Predict(find(t, m, "pickup-peak"), with, k).Value
			assert.InEpsilon(t, stepped(pickup, turn, 1/(1/in+1/m.Pickups[0].Ohms), load, a.farads, got), got, 0.02, "%s %v", with.ID, a)
			got = m.Predict(find(t, m, "exciter-peak"), with, k).Value
			assert.InEpsilon(t, stepped(exciter, 1/hertz, m.Exciter.Ohms, load, a.farads, got), got, 0.02, "%s %v", with.ID, a)
		}
	}
	none := kit
	none.AdapterFarads = 0
	assert.False(t, m.Predict(find(t, m, "pickup-peak"), meter.Cheap(), none).Known)
}

// stepped is the mean on the adapter's capacitor once it has come round.
func stepped(pulse func(s float64) float64, period, ohms, load, farads, start float64) (mean float64) {
	const steps, turns = 20000, 80
	dt, v := period/steps, start
	for n := range steps * turns {
		amps := max(pulse(float64(n%steps)*dt)-0.6-v, 0) / ohms
		v += dt / farads * (amps - v/load)
		if n >= steps*(turns-1) {
			mean += v / steps
		}
	}
	return mean
}

// Nothing comes from a box that does not fire; of one that does it is not told.
func TestThePulseOfTheBox(t *testing.T) {
	m := usual(sound)
	c := find(t, m, "box-peak")
	assert.False(t, m.Predict(c, meter.Cheap(), kit).Known)
	for _, k := range []machine.Kind{machine.BoxDead, machine.PickupOpen, machine.KillSwitch} {
		p := m.With(machine.Fault{Kind: k}).Predict(c, meter.Cheap(), kit)
		assert.True(t, p.Known && p.Value == 0, k)
	}
}

// Predictions are asked for thousands of times while causes are ranked.
func BenchmarkShows(b *testing.B) {
	m := machine.Typical(machine.Usual())
	with := meter.Cheap()
	for _, p := range []machine.Probing{
		{Red: "charge-1", Black: "charge-2"},
		{Red: "battery-plus", Black: "core", Function: meter.VoltsDC},
		{Red: "battery-plus", Black: "core", Function: meter.VoltsDC, State: at(check.Cranking, check.Together)},
		{Red: "battery-plus", Black: "core", Function: meter.VoltsDC, State: at(check.At3000, check.Together)},
		{Red: "charge-1", Black: "charge-2", Function: meter.VoltsAC, State: at(check.At3000, check.Apart)},
		{Red: "exciter", Black: "core", Function: meter.VoltsAC, State: at(check.Cranking, check.Together)},
		{Red: "pickup-a", Black: "pickup-b", Function: meter.VoltsAC, State: at(check.Cranking, check.Together)},
	} {
		b.Run(fmt.Sprint(p.Function, " ", p.Red, " engine ", p.Engine), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				m.Shows(p, with)
			}
		})
	}
}

func BenchmarkChargeState(b *testing.B) {
	m := machine.Typical(machine.Usual())
	for b.Loop() {
		m.ChargeState(at(check.At3000, check.Together))
	}
}
