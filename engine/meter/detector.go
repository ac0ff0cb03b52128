package meter

import (
	"math"

	"coilbook/engine/quantity"
)

// Detector is how a meter turns an alternating voltage into the number that it
// shows on its AC range. All are calibrated to show the root mean square of a
// sine, and of a sine alone they all show it.
type Detector int

// The detectors in use. Which of them a meter has is common practice by price,
// no source; DetectorFromDC finds out.
const (
	AverageAC Detector = iota // mean magnitude behind a capacitor
	AverageDC                 // mean magnitude, DC included
	HalfWave                  // mean of what is plus at the red lead, DC included: one diode
	TrueRMS                   // root mean square behind a capacitor
)

var detectorNames = [...]string{"average, capacitor-coupled", "average, DC-coupled", "half-wave, no capacitor", "true RMS, capacitor-coupled"}

func (d Detector) String() string {
	if d < 0 || int(d) >= len(detectorNames) {
		return "unknown detector"
	}
	return detectorNames[d]
}

// A sine's root mean square over the mean of its magnitude, and over the mean
// of its upper halves. Calculated.
const (
	FullWaveFactor = math.Pi / (2 * math.Sqrt2)
	HalfWaveFactor = math.Pi / math.Sqrt2
)

// Reading is what the meter shows.
func (d Detector) Reading(w Waveform) quantity.Volt {
	a := w.Averages()
	switch d {
	case AverageAC:
		return FullWaveFactor * a.RectifiedAC
	case AverageDC:
		return FullWaveFactor * a.Rectified
	case HalfWave:
		return HalfWaveFactor * a.Positive()
	case TrueRMS:
		return a.RMSAC
	}
	return quantity.Volt(math.NaN())
}

// leastOfPeak is the share of the peak below which a reading is not taken for a
// measure of it: there it hangs on the width of the pulse. An assumption, no
// source: a sine shows 71 %, a triangle 56 %, a sine cut at 90° 35 %.
const leastOfPeak = 0.5

// Shown is a reading beside the truth.
type Shown struct {
	Reading quantity.Volt
	OfPeak  float64 // reading over peak
	OfRMS   float64 // reading over true root mean square, DC included
	NotPeak bool    // shows so little of the peak that it says nothing about it
}

// Shows compares the reading with what the waveform is.
func (d Detector) Shows(w Waveform) Shown {
	a, reading := w.Averages(), d.Reading(w)
	s := Shown{Reading: reading, OfPeak: float64(reading / a.Peak), OfRMS: float64(reading / a.RMS())}
	s.NotPeak = !(s.OfPeak >= leastOfPeak)
	return s
}
