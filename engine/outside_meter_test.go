package engine_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

func init() {
	register(map[string]computation{
		"meter on a waveform": onWaveform,
		"detector from DC":    fromDC,
		"rectified mean over rms of the sine": func(in *inputs) answers {
			rms := meter.TrueRMS.Reading(meter.Sine())
			return only(float64(waveform(in).Averages().Mean / rms))
		},
		"ripple rms over dc": func(in *inputs) answers {
			a := waveform(in).Averages()
			return only(float64(a.RMSAC / a.Mean))
		},
		"reading over true rms, less one": func(in *inputs) answers {
			return only(detector(in).Shows(waveform(in)).OfRMS - 1)
		},
		"peak-hold adapter":             onPeakHold,
		"peak from a peak-hold reading": peakFromReading,
		"largest share of a peak-hold adapter": func(in *inputs) answers {
			return only(peakHold(in, 1, 0).Ceiling())
		},
		"reading over peak, less one": func(in *inputs) answers {
			peak := quantity.Volt(in.number("Vp"))
			return only(float64(adapter(in).Holds(peak).Mean/peak) - 1)
		},
	})
}

func onWaveform(in *inputs) answers {
	w := waveform(in).Times(in.number("peak"))
	a := w.Averages()
	return answers{
		"mean": float64(a.Mean), "rms": float64(a.RMS()), "ff": a.FormFactor(), "crest": a.Crest(),
		"acrms":              float64(meter.TrueRMS.Reading(w)),
		"DCcoupled_full":     float64(meter.AverageDC.Reading(w)),
		"ACcoupled_full":     float64(meter.AverageAC.Reading(w)),
		"halfwave_pos_nocap": float64(meter.HalfWave.Reading(w)),
		"halfwave_neg":       float64(meter.HalfWave.Reading(w.Reversed())),
	}
}

// waveforms without a parameter, as the rows call them.
var waveforms = map[string]func() meter.Waveform{
	"dc": meter.DC, "sine": meter.Sine, "full-rect": meter.FullRectified, "half-rect": meter.HalfRectified,
	"square": meter.Square, "triangle": meter.Triangle, "six-pulse dc": meter.SixPulse,
}

// families of waveforms, by what surrounds their parameter.
var families = map[string]func(float64) meter.Waveform{
	"unipolar pulse D=%g": meter.UnipolarPulse, "bipolar pulse D=%g": meter.BipolarPulse,
	"sin+%g 3rd": meter.ThirdHarmonic, "phase-cut sine fire %gdeg": meter.PhaseCut, "trapezoid %g flat": meter.Trapezoid,
}

func waveform(in *inputs) meter.Waveform {
	name := in.text("waveform")
	if build, plain := waveforms[name]; plain {
		return build()
	}
	for format, build := range families {
		var parameter float64
		if n, _ := fmt.Sscanf(name, format, &parameter); n == 1 && fmt.Sprintf(format, parameter) == name {
			return build(parameter)
		}
	}
	panic("no waveform is called " + name)
}

func detector(in *inputs) meter.Detector {
	name := in.text("detector")
	for d := meter.AverageAC; d <= meter.TrueRMS; d++ {
		if d.String() == name {
			return d
		}
	}
	panic("no detector is called " + name)
}

func fromDC(in *inputs) answers {
	read := func(f meter.Function, dial, reading string) meter.Measurement {
		m := meter.Cheap()
		r, known := m.RangeLabelled(f, in.text(dial))
		in.must(known, "the meter has this range")
		return m.Measure(f, r, typed(f.Kind(), in.text(reading), "V"), meter.Conditions{})
	}
	got := meter.DetectorFromDC(read(meter.VoltsAC, "ac_dial", "forward"), read(meter.VoltsAC, "ac_dial", "reversed"), read(meter.VoltsDC, "dc_dial", "battery"))
	var fits []string
	for _, d := range got.Fits {
		fits = append(fits, d.String())
	}
	return answers{"fits": strings.Join(fits, "; "), "polarity": float64(got.Polarity)}
}

func peakHold(in *inputs, farads meter.Farad, drop quantity.Volt) meter.PeakHold {
	return meter.PeakHold{
		Capacitance: farads, Meter: ohm(in, "Rm"), Source: ohm(in, "Rs"),
		Width: meter.Second(in.number("tp")), Period: meter.Second(in.number("T")), Drop: drop,
	}
}

// adapter has a fixed drop, in place of which a row may name a real diode.
func adapter(in *inputs) meter.PeakHold {
	drop := meter.DiodeDrop
	if in.has("diode") {
		in.must(in.text("diode") == "IS=1n N=1.8 RS=0.1", "the diode is one that drops about as much")
	} else {
		drop = quantity.Volt(in.number("Vf"))
	}
	return peakHold(in, meter.Farad(in.number("C")), drop)
}

func onPeakHold(in *inputs) answers {
	held := adapter(in).Holds(quantity.Volt(in.number("Vp")))
	high, low := float64(held.High), float64(held.Low)
	return answers{"Vh": high, "Vmax": high, "Vl": low, "Vmin": low, "Vavg": float64(held.Mean)}
}

func peakFromReading(in *inputs) answers {
	got, ok := adapter(in).Peak(meter.Measurement{Value: in.number("Vavg")}, meter.PeakHold{})
	in.must(ok, "the reading leads back to a peak")
	return answers{"Vp": float64(got.Value)}
}

func TestMeterRowsRejectWhatTheyCannotMean(t *testing.T) {
	for _, c := range []struct{ row, input, value, why string }{
		{"ngspice_peak_C1u_R10M_T100ms", "diode", `"ideal"`, "does not hold"},
		{"ngspice_peak_C1u_R10M_T100ms", "T", `0.00005`, "got NaN"},
		{"detector from 12 V, half-wave", "ac_dial", `"2 V"`, "does not hold"},
		{"meter_square", "waveform", `"squarish"`, "no waveform"},
		{"meter_unipolar pulse D=0.1", "waveform", `"unipolar pulse D=0.1x"`, "no waveform"},
		{"square reads high", "detector", `"eye"`, "no detector"},
		{"peak from the simulated reading, C1u R1M T10ms", "Vavg", `0`, "does not hold"},
	} {
		doctored := with(rowNamed(t, c.row), func(r *row) { r.Inputs[c.input] = json.RawMessage(c.value) })
		assert.ErrorContains(t, checkRow(doctored), c.why, c.row)
	}
}
