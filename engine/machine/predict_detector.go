package machine

import (
	"math"

	"coilbook/engine/meter"
)

// detector is a meter's with formulas for the shapes that a machine gives. Where
// it is not known, the commonest is taken.
type detector struct{ kind meter.Detector }

func detectorOf(m *meter.Meter) detector {
	if len(m.Detectors) == 1 {
		return detector{m.Detectors[0]}
	}
	return detector{meter.AverageAC}
}

// seesMean reports that no capacitor keeps a steady voltage out.
func (d detector) seesMean() bool { return d.kind == meter.AverageDC || d.kind == meter.HalfWave }

// averages are those of a voltage that detectors make numbers of.
type averages struct {
	mean      float64
	magnitude float64 // mean of it
	aside     float64 // mean of the magnitude about the mean
	square    float64 // mean square
}

func (d detector) shows(a averages) float64 {
	switch d.kind {
	case meter.AverageDC:
		return meter.FullWaveFactor * a.magnitude
	case meter.HalfWave:
		return meter.HalfWaveFactor * (a.magnitude + a.mean) / 2
	case meter.TrueRMS:
		return math.Sqrt(max(a.square-a.mean*a.mean, 0))
	}
	return meter.FullWaveFactor * a.aside
}

// of is what it shows of a sinusoid of a given peak upon a steady voltage.
// ∫|D + A sin| is worked out between the zeros of the sum.
func (d detector) of(steady, peak float64) float64 {
	if !d.seesMean() {
		return peak / math.Sqrt2
	}
	magnitude := math.Abs(steady)
	if magnitude < peak {
		magnitude = 2 / math.Pi * (math.Sqrt(peak*peak-steady*steady) + steady*math.Asin(steady/peak))
	}
	return d.shows(averages{mean: steady, magnitude: magnitude})
}
