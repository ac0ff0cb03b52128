package diagnose

import (
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

// Band is where nine in ten sound machines read at a speed of the engine.
type Band struct {
	RPM       float64 // 1/min; 0 stands, with the key off
	Low, High float64 // V
}

// soundSpeeds are where a band is worked out, in rpm: in steps small enough that a
// straight line between them is drawn, and one at rest.
var soundSpeeds = []float64{0, 1000, 1500, 2000, 2500, 3000, 4000, 5000, 5500}

// soundSamples is how many machines a band is made of: the shares outside are then
// good to about two percent.
const soundSamples = 2 * samples

// SoundBattery is the band of the battery's volts over speed, of the machines that
// readings of such a build are weighed against (see widened), none of them with a fault.
// The first is at rest. It takes about ten milliseconds.
func SoundBattery(b check.Build) []Band {
	return soundOver(b, soundSpeeds, func(m machine.Machine, rpm float64) (float64, bool) {
		return m.ChargeAt(rpm, false).BatteryVolts, true // an estimate counts, as in the diagnosis
	})
}

// SoundOpen is the band of the volts AC that the unplugged charge leads give over
// speed: between the first two, or of a winding with one end on the core against it.
func SoundOpen(b check.Build) []Band {
	p := machine.Probing{Red: check.Charge(1), Black: check.Charge(2), Function: meter.VoltsAC,
		State: machine.State{Plug: check.Apart, Engine: check.At3000, Key: true}}
	if b.GroundedEnd() {
		p.Black = check.Core
	}
	with := meter.Auto6000()
	return soundOver(b, soundSpeeds[1:], func(m machine.Machine, rpm float64) (float64, bool) {
		shows := m.RunningAt(rpm).Shows(p, with)
		return shows.Value, shows.Known
	})
}

// soundOver draws the sound machines and takes the middle nine tenths of what they
// show at each speed. A speed at which formulas have no answer for most is left out.
func soundOver(b check.Build, speeds []float64, of func(machine.Machine, float64) (float64, bool)) []Band {
	all, sound := builds(b), caseOf{fault: fault.Fault{ID: fault.None}}
	shown := make([][]float64, len(speeds))
	for n := range soundSamples {
		m, _ := sound.machineOf(n, all) // a machine without a fault suits every build
		for i, rpm := range speeds {
			if v, ok := of(m, rpm); ok {
				shown[i] = append(shown[i], v)
			}
		}
	}
	var out []Band
	for i, rpm := range speeds {
		if list := shown[i]; 2*len(list) > soundSamples {
			slices.Sort(list)
			out = append(out, Band{rpm, quantile(list, 0.05), quantile(list, 0.95)})
		}
	}
	return out
}

// quantile of a sorted list, between its neighbours in proportion.
func quantile(sorted []float64, share float64) float64 {
	at := share * float64(len(sorted)-1)
	below := int(math.Floor(at))
	above := min(below+1, len(sorted)-1)
	return sorted[below] + (at-float64(below))*(sorted[above]-sorted[below])
}
