package diagnose_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

// everyLeads is one build for each number of charge leads.
func everyLeads() []check.Build {
	var out []check.Build
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		b := check.DefaultBuild()
		b.ChargeLeads = leads
		out = append(out, b)
	}
	return out
}

func TestBandsAreInOrder(t *testing.T) {
	for _, b := range everyLeads() {
		for name, band := range map[string][]diagnose.Band{"battery": diagnose.SoundBattery(b), "open": diagnose.SoundOpen(b)} {
			require.GreaterOrEqual(t, len(band), 8, "%s of %d leads", name, b.ChargeLeads)
			for i, at := range band {
				require.Less(t, at.Low, at.High, "%s at %v", name, at.RPM)
				if i > 0 {
					require.Greater(t, at.RPM, band[i-1].RPM)
				}
			}
		}
		open := diagnose.SoundOpen(b)
		for i := 1; i < len(open); i++ {
			assert.Greater(t, open[i].Low, open[i-1].Low, "an open winding gives more the faster it turns")
		}
	}
}

// Of other sound machines than those that the band was made of, about nine in ten lie
// in it: at least 80 and at most 97 of 100, with 2,000 of them.
func TestNineInTenSoundMachinesLieInTheBand(t *testing.T) {
	const n = 2000
	for _, b := range everyLeads() {
		for _, at := range diagnose.SoundBattery(b) {
			inside, counted := 0, 0
			for seed := range n {
				m, ok := diagnose.DrawnSound(b, 5000+seed)
				require.True(t, ok)
				s := m.ChargeAt(at.RPM, false)
				counted++
				if s.BatteryVolts >= at.Low && s.BatteryVolts <= at.High {
					inside++
				}
			}
			share := float64(inside) / float64(counted)
			assert.True(t, share > 0.80 && share < 0.97, "%d leads at %v rpm: %.3f", b.ChargeLeads, at.RPM, share)
		}
	}
}

// The usual machine lies inside, one that charges nothing or too much does not.
func TestTheBandTellsSoundFromFaulty(t *testing.T) {
	usual := machine.Usual()
	at := map[float64]diagnose.Band{}
	for _, b := range diagnose.SoundBattery(usual.Known()) {
		at[b.RPM] = b
	}
	within := func(m machine.Machine, rpm float64) bool {
		v := m.ChargeAt(rpm, false).BatteryVolts
		return v >= at[rpm].Low && v <= at[rpm].High
	}
	sound := machine.Typical(usual)
	for rpm := range at {
		assert.True(t, within(sound, rpm), rpm)
	}
	for _, k := range []machine.Kind{machine.NoCharging, machine.NoRegulating, machine.MainFuse} {
		assert.False(t, within(sound.With(machine.Fault{Kind: k}), 5000), k)
	}
	for _, b := range diagnose.SoundOpen(usual.Known()) {
		p := machine.Probing{Red: "charge-1", Black: "charge-2", Function: meter.VoltsAC, State: machine.State{Plug: check.Apart, Engine: check.At3000, Key: true}}
		v := sound.RunningAt(b.RPM).Shows(p, meter.Auto6000()).Value
		assert.True(t, v > b.Low && v < b.High, "%v V at %v", v, b.RPM)
	}
}

func BenchmarkSoundBattery(b *testing.B) {
	for range b.N {
		diagnose.SoundBattery(check.DefaultBuild())
	}
}
