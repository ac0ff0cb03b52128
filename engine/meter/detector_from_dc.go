package meter

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// DCTest is what a battery on the AC range tells about the meter.
type DCTest struct {
	// Fits are the detectors that would have shown what was read.
	Fits []Detector
	// Polarity is 1 for a half-wave detector that sees what is plus at the red
	// lead, -1 for one that sees what is minus, 0 when that was not learnt.
	Polarity int
}

// Detector is the only one that fits. Behind a capacitor average and true RMS
// look alike, and a battery too weak for the range's digits tells nothing.
func (t DCTest) Detector() (d Detector, ok bool) {
	if len(t.Fits) != 1 {
		return 0, false
	}
	return t.Fits[0], true
}

// BlocksDC reports that a capacitor keeps DC out: only ripple is shown.
func (t DCTest) BlocksDC() bool {
	for _, d := range t.Fits {
		if d == AverageDC || d == HalfWave {
			return false
		}
	}
	return len(t.Fits) > 0
}

const (
	// No data sheet states an accuracy for DC on an AC range. The extra bound,
	// in percent of the reading: an assumption, no source.
	dcOnACPercent = 5
	// diodeLoss bounds what the single diode of the crudest detector keeps for
	// itself. Common practice for silicon, no source.
	diodeLoss = 0.7
	// coverage99 is how many standard uncertainties still agree: the two-sided
	// 99 % quantile of the normal distribution (JCGM 100:2008, table G.1, from
	// memory).
	coverage99 = 2.575829
)

// DetectorFromDC takes what the AC range showed for a battery, the red lead on
// plus and then the leads swapped, and what the DC range shows for it (minus if
// red was on minus). 12 V shows 26.7 V one way and nothing the other on the
// half-wave detector, 13.3 V both ways on a DC-coupled average, nothing behind a
// capacitor.
//
// A meter that shows the true 12 V both ways fits none of these detectors, and
// where its digits are coarse cannot be told from a DC-coupled average.
func DetectorFromDC(forward, reversed, battery Measurement) DCTest {
	var out DCTest
	if battery.State != quantity.Number {
		return out
	}
	swapped := battery
	swapped.Value = -battery.Value
	for d := AverageAC; d <= TrueRMS; d++ {
		plus := d.agrees(forward, battery) && d.agrees(reversed, swapped)
		minus := d.agrees(forward, swapped) && d.agrees(reversed, battery)
		if !plus && !minus {
			continue
		}
		out.Fits = append(out.Fits, d)
		switch {
		case plus && !minus:
			out.Polarity = 1
		case minus && !plus:
			out.Polarity = -1
		}
	}
	return out
}

// agrees reports whether the detector could show this for this voltage. A diode
// keeps some for itself and never adds any: between its bounds all agree.
func (d Detector) agrees(shown, battery Measurement) bool {
	most := float64(d.Reading(DC().Times(battery.Value)))
	least := most
	if d == HalfWave {
		least = max(most-HalfWaveFactor*diodeLoss, 0)
	}
	doubt := coverage99 * math.Hypot(shown.Std, d.dcDoubt(most, battery))
	switch shown.State {
	case quantity.Number:
		return shown.Value >= least-doubt && shown.Value <= most+doubt
	case quantity.OverRange:
		return most+doubt >= shown.Range.Full
	}
	return false
}

func (d Detector) dcDoubt(want float64, battery Measurement) float64 {
	if want == 0 {
		return 0
	}
	factor := float64(d.Reading(DC()))
	return math.Hypot(factor*battery.Std, uncertainty.Rectangular(want*dcOnACPercent/100))
}
