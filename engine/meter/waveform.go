package meter

import (
	"math"
	"slices"

	"coilbook/engine/quantity"
)

// Waveform is one period of a voltage between the red lead and the black one.
// The zero Waveform is none: all its averages are NaN.
type Waveform struct {
	at      func(phase float64) float64 // at an amplitude of 1 V
	corners []float64                   // phases of jumps and kinks
	closed  *Averages                   // at an amplitude of 1 V; nil to integrate
	times   float64
}

// Averages is what detectors make of a waveform.
type Averages struct {
	Peak        quantity.Volt // largest magnitude
	Mean        quantity.Volt
	Rectified   quantity.Volt // mean magnitude
	RectifiedAC quantity.Volt // mean magnitude about the mean: behind a capacitor
	RMSAC       quantity.Volt // root mean square about the mean
}

// Period describes a waveform by its voltage at each phase from 0 to 1 and by
// the phases at which it jumps or bends.
//
// Averages of it are integrals by the midpoint rule: within 2e-7 of the peak
// where it is smooth between the corners and swings no more than five times a
// period (tested against closed forms). A jump that is not named costs up to
// 1/20000 of its height, and a pulse narrower than that may be missed.
func Period(at func(phase float64) quantity.Volt, corners ...float64) Waveform {
	return Waveform{times: 1, corners: corners, at: func(phase float64) float64 { return float64(at(phase)) }}
}

// At is the voltage at a phase from 0 to 1.
func (w Waveform) At(phase float64) quantity.Volt {
	if w.at == nil {
		return quantity.Volt(math.NaN())
	}
	return quantity.Volt(w.times * w.at(phase))
}

// Times is the waveform with all its voltages multiplied by k.
func (w Waveform) Times(k float64) Waveform {
	w.times *= k
	return w
}

// Reversed is what the meter sees with its leads swapped.
func (w Waveform) Reversed() Waveform { return w.Times(-1) }

// Averages are exact for the shapes that this package names, except for a third
// harmonic too large to have a short formula; else see Period.
func (w Waveform) Averages() Averages {
	if w.closed != nil {
		return w.closed.times(w.times)
	}
	return w.integrated()
}

func (a Averages) times(k float64) Averages {
	size := quantity.Volt(math.Abs(k))
	return Averages{
		Peak: a.Peak * size, Mean: a.Mean * quantity.Volt(k), Rectified: a.Rectified * size,
		RectifiedAC: a.RectifiedAC * size, RMSAC: a.RMSAC * size,
	}
}

// RMS is the true root mean square, the mean included.
func (a Averages) RMS() quantity.Volt {
	return quantity.Volt(math.Hypot(float64(a.RMSAC), float64(a.Mean)))
}

// FormFactor is the root mean square over the mean magnitude.
func (a Averages) FormFactor() float64 { return float64(a.RMS() / a.Rectified) }

// Crest is the peak over the root mean square.
func (a Averages) Crest() float64 { return float64(a.Peak / a.RMS()) }

// Positive is the mean of what is above zero, zero elsewhere.
func (a Averages) Positive() quantity.Volt { return (a.Rectified + a.Mean) / 2 }

// samples is how many points are taken between two corners.
const samples = 20000

func (w Waveform) integrated() Averages {
	var a Averages
	w.each(func(v, share quantity.Volt) {
		a.Peak = max(a.Peak, magnitude(v))
		a.Mean += v * share
		a.Rectified += magnitude(v) * share
	})
	square := quantity.Volt(0)
	w.each(func(v, share quantity.Volt) {
		a.RectifiedAC += magnitude(v-a.Mean) * share
		square += (v - a.Mean) * (v - a.Mean) * share
	})
	a.RMSAC = quantity.Volt(math.Sqrt(float64(square)))
	return a
}

// each hands out voltages and the share of the period that each stands for. The
// ends of a piece have no share: they are there for the peak.
func (w Waveform) each(use func(v, share quantity.Volt)) {
	from := 0.0
	for _, to := range append(w.inner(), 1) {
		h := (to - from) / samples
		use(w.At(from+h*1e-6), 0)
		use(w.At(to-h*1e-6), 0)
		for i := range samples {
			use(w.At(from+(float64(i)+0.5)*h), quantity.Volt(h))
		}
		from = to
	}
}

// inner holds the corners within the period, rising.
func (w Waveform) inner() []float64 {
	var inner []float64
	for _, c := range w.corners {
		if c > 0 && c < 1 {
			inner = append(inner, c)
		}
	}
	slices.Sort(inner)
	return inner
}

func magnitude(v quantity.Volt) quantity.Volt { return quantity.Volt(math.Abs(float64(v))) }
