package meter

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// Conditions is what is known about how a reading was taken.
type Conditions struct {
	// LeadZero is the reading with the probes held together; nil when it was
	// not taken, and the leads' described resistance is taken off instead.
	LeadZero *Measurement
	// RawLeads keeps the leads in the value: for the lead zero itself.
	RawLeads bool
	// Low and High bound the frequency of an AC reading; zero when unknown.
	Low, High quantity.Hertz
	// Source is the resistance that the meter's input loads, for voltages.
	Source quantity.Ohm
}

// Measurement is what a reading is worth, in SI units. Std² holds all parts;
// Gain, Shared and Own are kept apart because Gain cancels in ratios of one
// range and Shared in differences.
type Measurement struct {
	State  quantity.State
	Value  float64 // best estimate, leads taken off
	Shown  float64 // as the display showed it
	Bound  float64 // what the data sheet says of it, as a half width
	Std    float64 // standard uncertainty
	Gain   float64 // relative, one for all readings of the range
	Shared float64 // absolute, one for all readings of the range
	Own    float64 // absolute, of this reading alone: quantisation and contact
	Range  Range
	Zeroed bool // a lead-zero reading of the same range was taken off
	OffAC  bool // the frequency may lie outside the stated band
}

// Outside its band the accuracy of a cheap AC range is not stated. The extra
// bound is an assumption, no source: 5 % of the reading.
const offBandPercent = 5

// RangeOf is the range a reading was taken on: the dial's, unless the digits
// cannot have come from it, because they reach beyond it or are finer than its
// last place. A meter that picks its range itself takes the lowest that fits,
// and shows over-range only on its highest.
func (m Meter) RangeOf(f Function, dial Range, t quantity.Typed) Range {
	switch {
	case t.State == quantity.OverRange && m.Auto:
		top, _ := m.Highest(f)
		return top
	case t.State != quantity.Number, !m.Auto && dial.shows(t):
		return dial
	}
	if r, ok := m.RangeShowing(f, t); ok {
		return r
	}
	if dial.reaches(t) {
		return dial // more decimals typed than any range has
	}
	r, _ := m.RangeFor(f, math.Abs(t.Value))
	return r
}

// Measure turns a typed reading of function f on range r into a measurement.
func (m Meter) Measure(f Function, r Range, t quantity.Typed, c Conditions) Measurement {
	out := Measurement{State: t.State, Range: r}
	if t.State != quantity.Number {
		return out
	}
	step := max(t.Step, r.Step)
	gain := r.Accuracy.Percent / 100
	if f == VoltsAC && m.outsideBand(c) {
		out.OffAC = true
		gain += offBandPercent / 100.0
	}
	if f == VoltsAC || f == VoltsDC {
		gain += float64(c.Source / m.input(f))
	}
	out.Value, out.Shown = t.Value, t.Value
	out.Gain = uncertainty.Rectangular(gain)
	out.Own = uncertainty.Resolution(step)
	out.Shared = uncertainty.Rectangular(max(r.Accuracy.Digits-0.5, 0) * r.Step)
	half := gain*math.Abs(t.Value) + r.Accuracy.Digits*r.Step + (step-r.Step)/2
	out.Bound = half
	out.Std = uncertainty.Rectangular(half)
	if f == Ohms && !c.RawLeads {
		m.takeOffLeads(&out, c.LeadZero)
	}
	return out
}

func (m Meter) takeOffLeads(out *Measurement, zero *Measurement) {
	contact := uncertainty.Rectangular(float64(m.Leads.Contact))
	rounding := out.Own
	out.Own = math.Hypot(rounding, contact)
	switch {
	case zero == nil || zero.State != quantity.Number:
		spread := uncertainty.Rectangular(float64(m.Leads.High-m.Leads.Low) / 2)
		out.Value -= float64(m.Leads.High+m.Leads.Low) / 2
		out.Shared = math.Hypot(out.Shared, spread)
		out.Std = norm(out.Std, spread, contact)
	case zero.Range.Label == out.Range.Label:
		// The same offset stands in both readings and cancels. Both roundings
		// and both contacts stay, those of the zero in every reading alike. Two
		// roundings are no normal error: their bounds are added, because at a
		// few digits a smaller doubt would judge wrongly too often.
		out.Value -= zero.Value
		out.Shared = math.Hypot(zero.Own, contact)
		out.Zeroed = true
		out.Std = norm(out.Gain*out.Value, contact, contact, rounding+zero.Own)
	default:
		out.Value -= zero.Value
		out.Shared = math.Hypot(out.Shared, zero.Std)
		out.Std = norm(out.Std, zero.Std, contact)
	}
}

func (m Meter) outsideBand(c Conditions) bool {
	return c.High > 0 && (c.Low < m.Band.Low || c.High > m.Band.High)
}

func norm(parts ...float64) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p * p
	}
	return math.Sqrt(sum)
}

// GaugeBound is the bound on a feeler-gauge reading beyond half its step: the
// feel of "light drag" differs between hands. Common practice, no source.
const GaugeBound = 20e-6

// MeasureGap turns a feeler-gauge reading into a measurement in metres.
func MeasureGap(t quantity.Typed) Measurement {
	out := Measurement{State: t.State}
	if t.State == quantity.Number {
		out.Value, out.Shown = t.Value, t.Value
		out.Own = uncertainty.Rectangular(GaugeBound + min(t.Step, GaugeBound)/2)
		out.Std = out.Own
	}
	return out
}
