package assess

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// adapter is what is taken to stand behind a peak-hold reading, and how far each
// of its values may lie from that.
type adapter struct{ at, within meter.PeakHold }

// An adapter whose capacitor is not known holds 0.1 to 1 µF; one that is printed
// keeps within a tenth. Common practice, no source.
const (
	usualCapacitor  meter.Farad = 0.55e-6
	usualBound      meter.Farad = 0.45e-6
	printedFraction             = 0.1
)

// pulses are what a part gives while the starter turns, at 150 to 600 per
// minute. An exciter gives 5 to 50 half-waves a second, pickup and ignition box
// one pulse a turn. Sources and widths: from memory, no source; the bounds are
// as wide as the parts differ.
var pulses = map[spec.Measurand]adapter{
	spec.ExciterPeak: {
		meter.PeakHold{Source: 500, Width: 5e-3, Period: 0.11},
		meter.PeakHold{Source: 400, Width: 4e-3, Period: 0.09},
	},
	spec.PickupPeak: {
		meter.PeakHold{Source: 200, Width: 2e-3, Period: 0.25},
		meter.PeakHold{Source: 150, Width: 1.5e-3, Period: 0.15},
	},
	spec.BoxPeak: {
		meter.PeakHold{Source: 20, Width: 200e-6, Period: 0.25},
		meter.PeakHold{Source: 20, Width: 150e-6, Period: 0.15},
	},
}

func (b Bench) adapter(c check.Check) adapter {
	a := pulses[c.Measures]
	a.at.Capacitance, a.within.Capacitance = usualCapacitor, usualBound
	if k := b.State.Setup.Kit; k != nil && k.AdapterMicrofarads > 0 {
		a.at.Capacitance = meter.Farad(k.AdapterMicrofarads * 1e-6)
		a.within.Capacitance = a.at.Capacitance * printedFraction
	}
	a.at.Meter, a.within.Meter = loaded(b.Meter.InputDC, b.State.Setup.Kit)
	a.at.Drop, a.within.Drop = meter.DiodeDrop, meter.DropBound
	return a
}

// An adapter's bleeder empties it beside the meter. Where it is not known it has
// 1 to 20 MΩ; one that is printed keeps within a tenth. Common practice, no source.
const usualBleederLow, usualBleederHigh quantity.Ohm = 1e6, 20e6

// loaded is what meter and bleeder together draw from the capacitor, and how far
// it may lie from that.
func loaded(input quantity.Ohm, k *session.Kit) (at, within quantity.Ohm) {
	low, high := usualBleederLow, usualBleederHigh
	if k != nil && k.BleederMegohms > 0 {
		stated := quantity.Ohm(k.BleederMegohms * 1e6)
		low, high = stated*(1-printedFraction), stated*(1+printedFraction)
	}
	low, high = beside(input, low), beside(input, high)
	return (low + high) / 2, (high - low) / 2
}

func beside(a, b quantity.Ohm) quantity.Ohm { return a * b / (a + b) }

// decidePeak works back from the reading to the pulse. A correction that is too
// large to be trusted decides nothing, but a pulse is never lower than what the
// adapter shows of it: a reading over the limit passes whatever was lost.
func (b Bench) decidePeak(l *Line, limit spec.Limit, known bool) {
	a := b.adapter(l.Check)
	reading := l.Measured
	peak, ok := a.at.Peak(reading, a.within)
	if ok {
		l.Peak = &peak
		l.Measured.Value, l.Measured.Std = float64(peak.Value), float64(peak.Std)
	}
	if !known {
		l.Verdict = spec.NoLimitFor(l.Measured)
		return
	}
	l.Verdict = spec.Judge(limit, l.Measured, l.Air)
	switch {
	case !ok && reading.State == quantity.Number: // an adapter turned round shows next to nothing too
		l.Verdict = spec.First(spec.TurnAdapter, spec.PeakLost(l.Verdict))
		return
	case !ok || !lost(peak):
		return
	}
	if asRead := spec.Judge(limit, reading, l.Air); asRead.Outcome == spec.InSpec {
		l.Verdict = spec.AtLeast(asRead)
		return
	}
	l.Verdict = spec.PeakLost(l.Verdict)
	if peak.Diode {
		l.Verdict = spec.First(spec.TurnAdapter, l.Verdict)
	}
}

// lost says that the correction decides nothing. A train that is slow for the
// display does not make it so: starters give no faster one, and the part of the
// sawtooth that a display may show is in the doubt.
func lost(p meter.Peak) bool { return p.Droops || p.Vague || p.Diode }
