package meter_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

var detectors = []meter.Detector{meter.AverageAC, meter.AverageDC, meter.HalfWave, meter.TrueRMS}

func TestAllDetectorsAgreeOnASine(t *testing.T) {
	for _, d := range detectors {
		got := d.Shows(meter.Sine().Times(325))
		assert.InDelta(t, 325/math.Sqrt2, float64(got.Reading), 1e-9, d.String())
		assert.InDelta(t, 1, got.OfRMS, 1e-12, d.String())
		assert.InDelta(t, math.Sqrt(0.5), got.OfPeak, 1e-12, d.String())
		assert.False(t, got.NotPeak)
	}
}

func TestReadingsScaleAndSwap(t *testing.T) {
	for name, w := range shapes() {
		for _, d := range detectors {
			one := float64(d.Reading(w))
			assert.InDelta(t, 47*one, float64(d.Reading(w.Times(47))), 1e-8, "%s, %v", name, d)
			assert.InDelta(t, d.Shows(w).OfPeak, d.Shows(w.Times(47)).OfPeak, 1e-9, "%s, %v", name, d)
			if d != meter.HalfWave {
				assert.InDelta(t, one, float64(d.Reading(w.Reversed())), 1e-9, "%s, %v: leads do not matter", name, d)
			}
		}
		// The two directions of the half-wave detector together are full-wave.
		both := meter.HalfWave.Reading(w) + meter.HalfWave.Reading(w.Reversed())
		assert.InDelta(t, 2*float64(meter.AverageDC.Reading(w)), float64(both), 1e-9, name)
		// What has no mean reads alike on a capacitor and without.
		if math.Abs(float64(w.Averages().Mean)) < 1e-12 {
			assert.InDelta(t, float64(meter.AverageDC.Reading(w)), float64(meter.AverageAC.Reading(w)), 1e-9, name)
			assert.InDelta(t, float64(meter.AverageDC.Reading(w)), float64(meter.HalfWave.Reading(w)), 1e-9, name)
		}
		assert.LessOrEqual(t, float64(meter.AverageAC.Reading(w)), meter.FullWaveFactor*float64(meter.TrueRMS.Reading(w))+1e-12,
			"%s: an average never passes the rms by more than a square's 11 %%", name)
		assert.LessOrEqual(t, meter.TrueRMS.Shows(w).OfRMS, 1+1e-12, name)
	}
}

// The narrower a pulse, the less of its peak any detector shows; and as the
// duty nears 1, what passes a capacitor goes to nothing.
func TestPulsesVanish(t *testing.T) {
	for _, d := range detectors {
		for _, pulse := range []func(float64) meter.Waveform{meter.UnipolarPulse, meter.BipolarPulse} {
			last := math.Inf(1)
			for _, duty := range []float64{0.3, 0.1, 0.01, 1e-3, 1e-5, 1e-9} {
				got := d.Shows(pulse(duty))
				assert.Less(t, got.OfPeak, last, "%v, duty %v", d, duty)
				assert.InDelta(t, 1/math.Sqrt(duty), pulse(duty).Averages().Crest(), 1e-6/math.Sqrt(duty))
				last = got.OfPeak
			}
			assert.Less(t, last, 5e-5, "%v", d)
			assert.True(t, d.Shows(pulse(0.01)).NotPeak, "%v", d)
		}
	}
	wide := meter.UnipolarPulse(1 - 1e-9)
	assert.Less(t, float64(meter.AverageAC.Reading(wide)), 1e-8)
	assert.Less(t, float64(meter.TrueRMS.Reading(wide)), 1e-4)
	assert.InDelta(t, meter.FullWaveFactor, float64(meter.AverageDC.Reading(wide)), 1e-8)
	assert.InDelta(t, meter.HalfWaveFactor, float64(meter.HalfWave.Reading(wide)), 1e-8)
	// As duty goes to nothing, each to its own limit: D, 2D, and √D.
	small := 1e-6
	w := meter.UnipolarPulse(small)
	assert.InEpsilon(t, 2*small*meter.FullWaveFactor, float64(meter.AverageAC.Reading(w)), 2e-6)
	assert.InEpsilon(t, small*meter.FullWaveFactor, float64(meter.AverageDC.Reading(w)), 2e-6)
	assert.InEpsilon(t, small*meter.HalfWaveFactor, float64(meter.HalfWave.Reading(w)), 2e-6)
	assert.InEpsilon(t, math.Sqrt(small), float64(meter.TrueRMS.Reading(w)), 2e-6)
}

func TestWhatIsNoPeak(t *testing.T) {
	for _, c := range []struct {
		name string
		w    meter.Waveform
		no   bool
	}{
		{"sine", meter.Sine(), false}, {"triangle", meter.Triangle(), false}, {"square", meter.Square(), false},
		{"cut at 90°", meter.PhaseCut(90), true}, {"a pickup's pulse of 2 %", meter.BipolarPulse(0.02), true},
		{"nothing at all", meter.Sine().Times(0), true},
	} {
		assert.Equal(t, c.no, meter.AverageAC.Shows(c.w).NotPeak, c.name)
	}
	assert.True(t, math.IsNaN(float64(meter.Detector(9).Reading(meter.Sine()))))
	assert.Equal(t, "unknown detector", meter.Detector(9).String())
}

func onDC(value float64) meter.Measurement {
	m := meter.Cheap()
	r, _ := m.RangeLabelled(meter.VoltsDC, "20 V")
	return m.Measure(meter.VoltsDC, r, quantity.Typed{Value: value, Step: 0.01, Unit: quantity.Volts}, meter.Conditions{})
}

func onAC(value float64) meter.Measurement {
	m := meter.Cheap()
	r, _ := m.RangeLabelled(meter.VoltsAC, "200 V")
	return m.Measure(meter.VoltsAC, r, quantity.Typed{Value: value, Step: 0.1, Unit: quantity.Volts}, meter.Conditions{})
}

func TestDetectorFromDC(t *testing.T) {
	over := meter.Measurement{State: quantity.OverRange, Range: meter.Range{Full: 19.99}}
	restless := meter.Measurement{State: quantity.Unsettled}
	behindC := []meter.Detector{meter.AverageAC, meter.TrueRMS}
	half, average := []meter.Detector{meter.HalfWave}, []meter.Detector{meter.AverageDC}
	for _, c := range []struct {
		name                       string
		forward, reversed, battery meter.Measurement
		fits                       []meter.Detector
		polarity                   int
	}{
		{"crudest", onAC(26.7), onAC(0), onDC(12), half, 1},
		{"crudest, its diode keeping some", onAC(25.3), onAC(0), onDC(12), half, 1},
		{"crudest, diode turned", onAC(0), onAC(26.7), onDC(12), half, -1},
		{"crudest, red lead on minus", onAC(0), onAC(26.7), onDC(-12), half, 1},
		{"crudest, too high for the range", over, onAC(0), onDC(12), half, 1},
		{"DC-coupled", onAC(13.3), onAC(13.3), onDC(12), average, 0},
		{"DC-coupled, on a charged battery", onAC(14.1), onAC(14.2), onDC(12.7), average, 0},
		{"capacitor", onAC(0), onAC(0), onDC(12), behindC, 0},
		{"capacitor, ghost digits", onAC(0.4), onAC(0.2), onDC(12), behindC, 0},
		{"half of it both ways", onAC(6), onAC(6), onDC(12), nil, 0},
		{"26.7 V both ways", onAC(26.7), onAC(26.7), onDC(12), nil, 0},
		{"13.3 V one way", onAC(13.3), onAC(0), onDC(12), nil, 0},
		{"over-range both ways", over, over, onDC(12), nil, 0},
		{"restless", restless, onAC(0), onDC(12), nil, 0},
		{"no battery volts", onAC(26.7), onAC(0), restless, nil, 0},
		{"nothing, and no battery volts", onAC(0), onAC(0), restless, nil, 0},
		{"a cell too weak for the digits", onAC(0.5), onAC(0.2), onDC(0.4), detectors, 0},
	} {
		got := meter.DetectorFromDC(c.forward, c.reversed, c.battery)
		assert.Equal(t, c.fits, got.Fits, c.name)
		assert.Equal(t, c.polarity, got.Polarity, c.name)
		d, ok := got.Detector()
		assert.Equal(t, len(c.fits) == 1, ok, c.name)
		if ok {
			assert.Equal(t, c.fits[0], d, c.name)
		}
		assert.Equal(t, len(c.fits) == 2, got.BlocksDC(), c.name)
	}
}

// Whatever the battery from 9 V up and wherever gain and offset lie in their
// bounds, the right detector is among those that fit, and no wrong one alone.
func TestDetectorFromDCIsNeverWrong(t *testing.T) {
	for _, d := range detectors {
		for volts := 9.0; volts <= 15; volts += 0.5 {
			for _, gain := range []float64{-0.012, 0, 0.012} {
				for _, offset := range []float64{-0.9, 0, 0.9} {
					shows := func(v float64) meter.Measurement {
						exact := float64(d.Reading(meter.DC().Times(v)))
						return onAC(math.Abs(math.Round((exact*(1+gain)+offset)*10) / 10))
					}
					got := meter.DetectorFromDC(shows(volts), shows(-volts), onDC(volts))
					assert.Contains(t, got.Fits, d, "%v V, gain %v, offset %v", volts, gain, offset)
					if only, ok := got.Detector(); ok {
						assert.Equal(t, d, only)
					}
				}
			}
		}
	}
}
