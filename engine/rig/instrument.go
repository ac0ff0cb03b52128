package rig

import (
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

// Instrument is one meter of a kind, with the errors of its own that its data
// sheet allows: they stay as they are from reading to reading.
type Instrument struct {
	Meter    meter.Meter
	Detector meter.Detector // the one that it has
	Leads    float64        // Ω of the pair
	// Pause, where there is one, is called now and then while a reading is
	// simulated, so that a screen can draw.
	Pause  func()
	errors map[meter.Function][]rangeError
}

type rangeError struct{ gain, digits float64 }

// Exact is a meter without errors and leads, of a kind.
func Exact(m meter.Meter) Instrument {
	d := meter.AverageAC
	if len(m.Detectors) > 0 {
		d = m.Detectors[0]
	}
	return Instrument{Meter: m, Detector: d}
}

// DrawnInstrument is one of a kind: gain and offset of each range anywhere within
// the data sheet's bounds, one of the detectors that it may have.
func DrawnInstrument(m meter.Meter, c machine.Chance) Instrument {
	out := Instrument{Meter: m, Leads: c.Between(float64(m.Leads.Low), float64(m.Leads.High)), errors: map[meter.Function][]rangeError{}}
	may := m.Detectors
	if len(may) == 0 {
		may = []meter.Detector{meter.AverageAC, meter.AverageDC, meter.HalfWave, meter.TrueRMS}
	}
	out.Detector = may[c.Pick(len(may))]
	for _, f := range []meter.Function{meter.Ohms, meter.VoltsDC, meter.VoltsAC, meter.AmpsDC} {
		for _, r := range m.Ranges[f] {
			a := r.Accuracy
			out.errors[f] = append(out.errors[f], rangeError{
				gain: c.Between(-1, 1) * a.Percent / 100, digits: c.Between(-1, 1) * max(a.Digits-0.5, 0),
			})
		}
	}
	own := c.Beside()
	for _, r := range m.Ranges[meter.Diode] {
		out.errors[meter.Diode] = append(out.errors[meter.Diode], rangeError{
			gain: own.Between(-1, 1) * r.Accuracy.Percent / 100, digits: own.Between(-1, 1) * max(r.Accuracy.Digits-0.5, 0),
		})
	}
	out.Meter.Drive.Amps *= own.Between(0.6, 1.4) // no data sheet binds it
	return out
}

// input is what a voltage function loads its source with, in Ω.
func (in Instrument) input(f meter.Function) float64 {
	if f == meter.VoltsAC {
		return float64(in.Meter.InputAC)
	}
	return float64(in.Meter.InputDC)
}

// shown is what a range makes of a true value, before it is rounded.
func (in Instrument) shown(f meter.Function, r meter.Range, value float64) float64 {
	for i, known := range in.Meter.Ranges[f] {
		if known.Label == r.Label && i < len(in.errors[f]) {
			e := in.errors[f][i]
			value = value*(1+e.gain) + e.digits*r.Step
			if f == meter.VoltsAC {
				value = max(value, 0) // there is no sign on this range
			}
			return value
		}
	}
	return value
}
