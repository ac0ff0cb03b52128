package rig

import (
	"math"

	"coilbook/engine/meter"
)

// sample is a stretch of a waveform: its voltage at the end of a short time.
type sample struct{ volts, dt float64 }

// reads is what a detector makes of a stretch of waveform, sample by sample: a
// capacitor takes the mean off, a rectifier folds, a display averages, and all
// are marked so that a sine shows its root mean square.
func reads(d meter.Detector, w []sample) float64 {
	mean := meanOf(w, func(v float64) float64 { return v })
	folded := func(from float64) float64 { return meanOf(w, func(v float64) float64 { return math.Abs(v - from) }) }
	// A sine of 1 V: 1/√2 V over a folded mean of 2/π, or of one half wave 1/π.
	const fold, half = math.Pi / 2 / math.Sqrt2, math.Pi / math.Sqrt2
	switch d {
	case meter.AverageDC:
		return fold * folded(0)
	case meter.HalfWave:
		return half * meanOf(w, func(v float64) float64 { return max(v, 0) })
	case meter.TrueRMS:
		return math.Sqrt(meanOf(w, func(v float64) float64 { return (v - mean) * (v - mean) }))
	}
	return fold * folded(mean)
}

func meanOf(w []sample, f func(float64) float64) float64 {
	sum, time := 0.0, 0.0
	for _, s := range w {
		sum += f(s.volts) * s.dt
		time += s.dt
	}
	if time == 0 {
		return 0
	}
	return sum / time
}
