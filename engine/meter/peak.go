package meter

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// Peak is the height of a pulse, worked back from a peak-hold reading.
type Peak struct {
	Value quantity.Volt
	Std   quantity.Volt // standard uncertainty, the reading's own part in it
	// Low and High are where the peak lies when all that was said of the adapter
	// is wrong to its bound in one direction, for the reading as it stands.
	Low, High quantity.Volt
	Share     float64 // of the pulse, less the diode's drop, that was shown
	Droops    bool    // so little was shown that the correction is not to be trusted
	Vague     bool    // what is known of the adapter leaves the peak open
	Diode     bool    // the diode's drop is a large part of the peak
	Slow      bool    // pulses come more slowly than the display
}

// Trusted reports that nothing speaks against the correction.
func (p Peak) Trusted() bool { return !p.Droops && !p.Vague && !p.Diode && !p.Slow }

const (
	// leastShown is the share below which the correction is too large: there a
	// source or a width that is wrong by half moves the peak by a tenth, however
	// large the capacitor. An assumption, no source.
	leastShown = 0.8
	// mostVague is the part of the peak that may lie between its middle and its
	// bounds. An assumption, no source.
	mostVague = 0.2
	// mostDiode is the part of the peak that the drop may be: below about 6 V.
	// An assumption, no source.
	mostDiode = 0.1
	// displayTime is what a meter averages over for one number. Common practice,
	// no source.
	displayTime Second = 0.1
	// heldModel is the relative bound on what PeakHold leaves out, above the
	// 0.15 % of its test. An assumption, no source.
	heldModel = 0.005
)

// Peak works back from a DC reading. within holds how far each value of p may
// lie from what was stated, in either direction; a field left zero is certain.
// ok is false without a reading above zero or with an adapter that is none.
func (p PeakHold) Peak(reading Measurement, within PeakHold) (peak Peak, ok bool) {
	share := p.Share()
	if reading.State != quantity.Number || !(reading.Value > 0) || !(share > 0) {
		return Peak{}, false
	}
	x := []float64{reading.Value, float64(p.Capacitance), float64(p.Meter), float64(p.Source), float64(p.Width), float64(p.Period), float64(p.Drop)}
	value, u := uncertainty.Propagate(undone, x, uncertainty.Independent(p.doubts(reading, within)...))
	peak = Peak{Value: quantity.Volt(value), Std: quantity.Volt(u), Share: share}
	peak.Low = quantity.Volt(p.moved(within, 1).undo(reading.Value))
	peak.High = quantity.Volt(p.moved(within, -1).undo(reading.Value))
	if !(peak.High >= peak.Value) { // at its bounds the adapter is none
		peak.High = quantity.Volt(math.Inf(1))
	}
	p.judge(&peak)
	return peak, true
}

func (p PeakHold) judge(peak *Peak) {
	peak.Droops = peak.Share < leastShown
	peak.Vague = !(max(peak.High-peak.Value, peak.Value-peak.Low) <= mostVague*peak.Value)
	peak.Diode = p.Drop > mostDiode*peak.Value
	peak.Slow = p.Period > displayTime
}

// undo is the pulse that leads to a mean.
func (p PeakHold) undo(mean float64) float64 { return float64(p.Drop) + mean/p.Share() }

// undone is undo for the law of propagation. A step that the law takes beyond
// what is possible, below a source of zero, must not end it. On such an edge the
// slope counts half; Low and High hold the whole.
func undone(x []float64) float64 {
	p := PeakHold{Farad(x[1]), quantity.Ohm(x[2]), quantity.Ohm(max(x[3], 0)), Second(min(x[4], x[5])), Second(x[5]), quantity.Volt(max(x[6], 0))}
	return p.undo(x[0])
}

// doubts are the standard uncertainties in the order of undone.
func (p PeakHold) doubts(reading Measurement, within PeakHold) []float64 {
	saw := p.Holds(quantity.Volt(p.undo(reading.Value)))
	model := uncertainty.Rectangular(heldModel * reading.Value)
	wander := uncertainty.Rectangular(float64(saw.High-saw.Low) * wanderOf(p.Period))
	u := []float64{norm(reading.Std, model, wander)}
	for _, half := range []float64{
		float64(within.Capacitance), float64(within.Meter), float64(within.Source),
		float64(within.Width), float64(within.Period), float64(within.Drop),
	} {
		u = append(u, uncertainty.Rectangular(half))
	}
	return u
}

// wanderOf is how far a display may be off because it averages over no whole
// number of periods, as a part of the sawtooth: the area of half a tooth over
// the display's time, and never more than half of the tooth.
func wanderOf(period Second) float64 { return min(float64(period/displayTime)/8, 0.5) }

// moved goes to the bounds, all in the direction that shows more of the pulse
// (1) or less (-1).
func (p PeakHold) moved(within PeakHold, more float64) PeakHold {
	p.Capacitance += within.Capacitance * Farad(more)
	p.Meter += within.Meter * quantity.Ohm(more)
	p.Source = max(p.Source-within.Source*quantity.Ohm(more), 0)
	p.Period -= within.Period * Second(more)
	p.Width += within.Width * Second(more)
	if more > 0 {
		p.Width = min(p.Width, p.Period)
	}
	p.Drop = max(p.Drop-within.Drop*quantity.Volt(more), 0)
	return p
}
