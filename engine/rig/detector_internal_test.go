package rig

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/meter"
)

// What the rig's detectors make of samples is what the meter package works out in
// closed form (whose rows of published factors are checked there), at even and
// uneven steps and with the leads swapped.
func TestDetectorsOnWaveforms(t *testing.T) {
	shapes := map[string]meter.Waveform{
		"sine": meter.Sine(), "square": meter.Square(), "triangle": meter.Triangle(), "cut at 90°": meter.PhaseCut(90), "six-pulse": meter.SixPulse(),
		"pulse": meter.UnipolarPulse(0.1), "pulse up and down": meter.BipolarPulse(0.1), "third harmonic": meter.ThirdHarmonic(0.2), "battery": meter.DC(),
	}
	const n = 40000
	for name, w := range shapes {
		for _, sign := range []float64{1, -1} {
			w := w.Times(17 * sign)
			var samples []sample
			at := 0.0
			for i := range n {
				dt := (1 + 0.5*float64(i%3-1)) / n
				samples = append(samples, sample{float64(w.At(at + dt/2)), dt})
				at += dt
			}
			for d := meter.AverageAC; d <= meter.TrueRMS; d++ {
				assert.InDelta(t, float64(d.Reading(w)), reads(d, samples), 17*2e-3, "%s, %v, %v", name, d, sign)
			}
		}
	}
	assert.Zero(t, reads(meter.AverageAC, nil))
}
