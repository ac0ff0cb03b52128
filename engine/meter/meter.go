// Package meter says what a multimeter's reading is worth: a meter is described
// by its data sheet (counts, ranges, accuracy, AC band, input resistance, leads)
// and a reading becomes a value with a standard uncertainty.
//
// One reading is modelled as x·(1+g) + o + q: a gain error g shared by every
// reading of one range in a session, an offset o shared likewise, and a
// quantisation q of its own. Gain cancels in a ratio, offset in a difference;
// treating them as independent would be wrong in both directions. Accuracy
// ±(a % + n digits) is a rectangular bound (JCGM 100:2008, 4.3.7, clause from
// memory); its digits already hold the resolution, which is not added again.
package meter

import (
	"math"
	"slices"

	"coilbook/engine/quantity"
)

// Function is what the dial is set to.
type Function int

// The dial functions that the checks ask for.
const (
	Ohms Function = iota
	VoltsDC
	VoltsAC
	AmpsDC
	Diode // the volts that a small current drops
)

var functionNames = [...]string{"ohms", "volts-dc", "volts-ac", "amps-dc", "diode"}

// String is the name that stored data sheets use; it never changes.
func (f Function) String() string {
	if f < 0 || int(f) >= len(functionNames) {
		return "unknown function"
	}
	return functionNames[f]
}

// Functions lists them.
func Functions() []Function { return []Function{Ohms, VoltsDC, VoltsAC, AmpsDC, Diode} }

// FunctionNamed finds a function by that name.
func FunctionNamed(name string) (Function, bool) {
	i := slices.Index(functionNames[:], name)
	return Function(i), i >= 0
}

// Kind is the quantity that a function measures.
func (f Function) Kind() quantity.Kind {
	return [...]quantity.Kind{quantity.Resistance, quantity.VoltageDC, quantity.VoltageAC, quantity.Current, quantity.VoltageDC}[f]
}

// Accuracy is a data sheet's ±(Percent of reading + Digits of the last place).
type Accuracy struct {
	Percent float64 `json:"percent"`
	Digits  float64 `json:"digits"`
}

// HalfWidth is the bound in the reading's unit; step is the weight of one digit.
func (a Accuracy) HalfWidth(reading, step float64) float64 {
	return a.Percent/100*math.Abs(reading) + a.Digits*step
}

// Range is one position of the dial. Full and Step are in SI units.
type Range struct {
	Label    string        // as printed around the dial
	Nominal  float64       // the number in the label, e.g. 200 for 200 Ω
	Full     float64       // largest value shown, e.g. 199.9
	Step     float64       // weight of the last digit
	Unit     quantity.Unit // unit of the digits on the display
	Accuracy Accuracy
}

// Leads describes the pair of test leads.
type Leads struct {
	Low, High quantity.Ohm // resistance of the pair, when it was not measured
	Contact   quantity.Ohm // half width of one contact's repeatability
}

// Drive is what a diode range puts on the probes: a source of Volts that gives
// Amps into a short, behind a resistance that makes it so.
type Drive struct {
	Volts quantity.Volt
	Amps  float64
}

// Ohms is the resistance behind which the source stands.
func (d Drive) Ohms() quantity.Ohm { return quantity.Ohm(float64(d.Volts) / d.Amps) }

// Band is the span of frequencies the AC accuracy is stated for.
type Band struct{ Low, High quantity.Hertz }

// Meter is a described multimeter.
type Meter struct {
	ID        string
	Counts    int
	Ranges    map[Function][]Range // rising
	Band      Band
	InputAC   quantity.Ohm // on the AC voltage ranges, the lowest of them
	InputDC   quantity.Ohm // on the DC voltage ranges, the lowest of them
	Detectors []Detector   // those that it may have; nil when nothing is known
	Leads     Leads
	Drive     Drive // of the diode range
	Auto      bool  // picks its range itself
}

// input is what a voltage function loads its source with.
func (m Meter) input(f Function) quantity.Ohm {
	if f == VoltsDC {
		return m.InputDC
	}
	return m.InputAC
}

// RangeFor picks the lowest range that still shows expected, or the highest
// one. ok is false when the meter lacks the function.
func (m Meter) RangeFor(f Function, expected float64) (r Range, ok bool) {
	ranges := m.Ranges[f]
	for _, r := range ranges {
		if r.Full >= expected {
			return r, true
		}
	}
	if len(ranges) == 0 {
		return Range{}, false
	}
	return ranges[len(ranges)-1], true
}

// RangeLabelled finds a range by its label.
func (m Meter) RangeLabelled(f Function, label string) (Range, bool) {
	for _, r := range m.Ranges[f] {
		if r.Label == label {
			return r, true
		}
	}
	return Range{}, false
}

// RangeShowing finds the range that a reading was taken on from its digits: the
// lowest range whose last place is no finer than the typed step and that
// reaches the value. A manual dial set by the user may differ from the advice.
func (m Meter) RangeShowing(f Function, t quantity.Typed) (Range, bool) {
	for _, r := range m.Ranges[f] {
		if r.shows(t) {
			return r, true
		}
	}
	return Range{}, false
}

// shows reports whether the digits can have stood on the display on this range.
func (r Range) shows(t quantity.Typed) bool { return r.reaches(t) && t.Step >= r.Step*0.999 }

func (r Range) reaches(t quantity.Typed) bool { return r.Full >= math.Abs(t.Value)*0.9999 }

// Highest is the top range of a function.
func (m Meter) Highest(f Function) (Range, bool) {
	return m.RangeFor(f, math.Inf(1))
}
