package machine_test

import (
	"math"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
)

// builds are architectures of every kind.
func builds() map[string]machine.Build {
	out := map[string]machine.Build{"usual": machine.Usual()}
	change := func(name string, f func(*machine.Build)) {
		b := machine.Usual()
		f(&b)
		out[name] = b
	}
	change("delta, series, battery-fed", func(b *machine.Build) {
		b.Charge, b.Regulating, b.Ignition, b.GroundLead = machine.Delta, machine.Series, machine.BatteryFed, false
	})
	change("single phase, two pickups", func(b *machine.Build) {
		b.Charge, b.MagnetPoles, b.StatorPoles, b.Pickups, b.Battery = machine.SinglePhase, 8, 8, 2, machine.Flooded
	})
	change("two phases", func(b *machine.Build) { b.Charge, b.Battery = machine.TwoPhase, machine.LFP })
	change("grounded end, 6 V, kick", func(b *machine.Build) {
		b.Charge, b.Regulating, b.Volts, b.Kick, b.Lighting = machine.GroundedEnd, machine.HalfWave, 6, true, true
		b.MagnetPoles, b.StatorPoles, b.Battery = 6, 6, machine.Flooded
	})
	return out
}

func TestBuildsAreSaidToBeWrongInWords(t *testing.T) {
	for name, b := range builds() {
		require.NoError(t, b.Valid(), name)
		assert.Equal(t, b.Charge.Leads(), b.Known().ChargeLeads, name)
	}
	for want, f := range map[string]func(*machine.Build){
		"magnet poles": func(b *machine.Build) { b.MagnetPoles = 7 },
		"stator poles": func(b *machine.Build) { b.StatorPoles = 0 },
		"charge":       func(b *machine.Build) { b.Charge = "zigzag" },
		"regulating":   func(b *machine.Build) { b.Regulating = machine.HalfWave },
		"battery":      func(b *machine.Build) { b.Battery = "lemon" },
		"volts":        func(b *machine.Build) { b.Volts = 24 },
		"ignition":     func(b *machine.Build) { b.Ignition = "magic" },
		"pickups":      func(b *machine.Build) { b.Pickups = 0 },
	} {
		b := machine.Usual()
		f(&b)
		require.ErrorContains(t, b.Valid(), want)
	}
}

// A fault changes the machine where its build has the part, and nothing where
// it has not. Of every kind there is one that suits some build.
func TestEveryFaultStrikes(t *testing.T) {
	for _, k := range machine.Kinds() {
		suited := 0
		for name, b := range builds() {
			sound := machine.Typical(b)
			f, ok := machine.NewChance(1).Sized(k, b)
			struck := sound.With(f)
			struck.Faults = nil
			if !ok {
				require.Equal(t, sound, struck, "%s on %s", k, name)
				continue
			}
			suited++
			require.False(t, reflect.DeepEqual(sound, struck), "%s on %s changes nothing", k, name)
		}
		require.Positive(t, suited, k)
	}
	sound := machine.Typical(machine.Usual())
	assert.False(t, machine.Fault{Kind: "gremlins"}.Suits(sound.Build))
	assert.False(t, machine.Fault{Kind: machine.DiodeIsOpen, At: 7}.Suits(sound.Build))
}

func TestWhatFailsHotIsSoundWhenCold(t *testing.T) {
	m := machine.Typical(machine.Usual()).With(machine.Fault{Kind: machine.PickupOpen, HotOnly: true})
	cold, hot := m.InState(machine.State{}), m.InState(machine.State{Hot: true})
	assert.Zero(t, cold.Pickups[0].Joint)
	assert.True(t, math.IsInf(hot.Pickups[0].Joint, 1))
	// Copper and magnets follow the temperature: 70 K and half of it.
	assert.InDelta(t, m.Phases[0].Ohms*(1+0.00393*70), hot.Phases[0].Ohms, 1e-12)
	assert.InDelta(t, m.Magnets.Flux*(1-0.002*35), hot.Magnets.Flux, 1e-12)
	assert.Equal(t, hot, hot.InState(machine.State{}), "nothing is applied twice at 20 °C")
}

// The same seed gives the same machine for ever: codes of benches are shared.
func TestDrawnMachinesStayAsTheyAre(t *testing.T) {
	a, b := machine.Drawn(machine.Usual(), machine.NewChance(7)), machine.Drawn(machine.Usual(), machine.NewChance(7))
	require.Equal(t, a, b)
	require.NotEqual(t, a, machine.Drawn(machine.Usual(), machine.NewChance(8)))
	assert.InDelta(t, 0.48318, machine.NewChance(7).Uniform(), 5e-6)
	const n = 20000
	c, sum, square := machine.NewChance(3), 0.0, 0.0
	for range n {
		x := c.Normal()
		sum += x
		square += x * x
	}
	assert.InDelta(t, 0, sum/n, 4/math.Sqrt(n))
	assert.InDelta(t, 1, square/n, 4*math.Sqrt(2.0/n))
}

// Two windings for the same leads: a delta has three times the ohms of a star's
// phase and √3 its turns.
func TestDeltaGivesWhatItsStarGives(t *testing.T) {
	delta := machine.Usual()
	delta.Charge = machine.Delta
	s, d := machine.Typical(machine.Usual()).Phases[0], machine.Typical(delta).Phases[0]
	assert.InDelta(t, 3, d.Ohms/s.Ohms, 1e-9)
	assert.InDelta(t, 3, d.Henry/s.Henry, 1e-9)
	assert.InDelta(t, math.Sqrt(3), d.Turns/s.Turns, 1e-9)
}

func TestBatteriesAtRest(t *testing.T) {
	for _, c := range []struct {
		kind   machine.Chemistry
		charge float64
		volts  float64
	}{
		{machine.Flooded, 1, 12.65}, {machine.Flooded, 0.5, 12.24}, {machine.Flooded, 0, 11.89}, {machine.Flooded, 0.125, 11.975},
		{machine.AGM, 1, 12.80}, {machine.AGM, 0.75, 12.60}, {machine.LFP, 1, 13.5}, {machine.LFP, 0.5, 13.18}, {machine.AGM, 2, 12.80},
	} {
		b := machine.Usual()
		b.Battery = c.kind
		m := machine.Typical(b)
		m.Battery.Charge = c.charge
		assert.InDelta(t, c.volts, m.RestVolts(), 1e-9, "%s at %v", c.kind, c.charge)
		dead := m.With(machine.Fault{Kind: machine.CellShorted})
		assert.InDelta(t, c.volts*float64(b.Cells()-1)/float64(b.Cells()), dead.RestVolts(), 1e-9)
	}
}

func TestSpeedsOfARunningEngine(t *testing.T) {
	assert.Zero(t, machine.Running(check.Stopped))
	assert.Zero(t, machine.Running(check.Cranking))
	assert.Less(t, machine.Running(check.Idling), machine.Running(check.At3000))
	assert.Less(t, machine.Running(check.At3000), machine.Running(check.At5000))
}
