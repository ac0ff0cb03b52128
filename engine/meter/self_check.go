package meter

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// SelfCheck is what was read of things that are known beforehand; nil for what
// was not. All are readings of one meter.
type SelfCheck struct {
	LeadZero         *Measurement // probes held together, the leads kept in
	BatteryDC        *Measurement // minus if red was on minus
	BatteryAC        *Measurement // the same battery and leads on the AC range
	BatteryACSwapped *Measurement // and with the leads swapped
	Resistor         *Measurement // the known resistor, the leads taken off
	Known            KnownResistor
}

// KnownResistor is a resistor with its value printed on it.
type KnownResistor struct {
	Nominal   quantity.Ohm // above zero
	Tolerance float64      // half width, as a fraction from 0 to below 1
}

// LeadState is what a pair of test leads is worth; empty when it is not told.
type LeadState string

// The states of a pair of test leads, as they are stored.
const (
	LeadsGood LeadState = "good"
	LeadsWorn LeadState = "worn"
	LeadsOpen LeadState = "open"
)

// ResistorSays is how an ohms function reads a known resistor; empty when the
// doubt is too large to tell.
type ResistorSays string

// What a known resistor says, as it is stored.
const (
	ResistorAgrees ResistorSays = "agrees"
	ResistorOff    ResistorSays = "off"
)

const (
	// wornLeads is where a pair of leads counts as worn. Common practice, no
	// source.
	wornLeads quantity.Ohm = 1
	// vouching is the largest error, as a fraction, that may stay unseen where a
	// resistor is said to agree. An assumption, no source.
	vouching = 0.05
	// mostWidening caps what a known resistor may add to a data sheet, as a
	// fraction of the reading: at ten times the reading nothing is told any more.
	mostWidening = 10
)

// Learned is what the readings tell of the meter.
func (c SelfCheck) Learned() Learned {
	var l Learned
	l.Leads = leadState(c.LeadZero)
	l.Detectors, l.NoneFits = c.detectors()
	l.Resistor, l.Deviation, l.Bound = c.resistor()
	return l
}

// leadState calls leads good or worn only where the reading's bound lies on one
// side of the limit; a meter's offset alone may look like half an ohm.
func leadState(zero *Measurement) LeadState {
	switch {
	case zero == nil, zero.State == quantity.Unsettled:
		return ""
	case zero.State == quantity.OverRange:
		return LeadsOpen
	}
	offset := zero.Range.Accuracy.Digits * zero.Range.Step
	switch limit := float64(wornLeads); {
	case zero.Value <= limit-offset:
		return LeadsGood
	case zero.Value > limit+offset:
		return LeadsWorn
	}
	return ""
}

// detectors are nil where any would fit: a battery too weak for the digits of
// the range tells nothing.
func (c SelfCheck) detectors() (fits []Detector, none bool) {
	for _, m := range []*Measurement{c.BatteryDC, c.BatteryAC, c.BatteryACSwapped} {
		if m == nil || m.State == quantity.Unsettled {
			return nil, false
		}
	}
	if c.BatteryDC.State != quantity.Number {
		return nil, false
	}
	fits = DetectorFromDC(*c.BatteryAC, *c.BatteryACSwapped, *c.BatteryDC).Fits
	if len(fits) == len(detectorIDs) {
		return nil, false
	}
	return fits, len(fits) == 0
}

// resistor compares the reading with the print; one healthy meter in a hundred at
// most is called off. What is off is taken for a gain error: from one resistor
// an offset cannot be told apart.
func (c SelfCheck) resistor() (says ResistorSays, deviation, bound float64) {
	nominal, tolerance := float64(c.Known.Nominal), c.Known.Tolerance
	known := nominal > 0 && !math.IsInf(nominal, 1) && tolerance >= 0 && tolerance < 1
	if !known || c.Resistor == nil || c.Resistor.State != quantity.Number {
		return "", 0, 0
	}
	deviation = c.Resistor.Value/nominal - 1
	unseen := coverage99 * math.Hypot(c.Resistor.Std/nominal, uncertainty.Rectangular(tolerance))
	switch {
	case math.Abs(deviation) > unseen:
		return ResistorOff, deviation, widening(deviation, tolerance)
	case unseen <= vouching:
		return ResistorAgrees, deviation, 0
	}
	return "", 0, 0
}

// widening is the error as a fraction of the reading, as data sheets state it,
// if the resistor itself is off the other way by all of its tolerance.
func widening(deviation, tolerance float64) float64 {
	reading := 1 + deviation
	if most := math.Abs(deviation) + tolerance; most < mostWidening*reading {
		return most / reading
	}
	return mostWidening
}
