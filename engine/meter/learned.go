package meter

import (
	"fmt"
	"maps"
	"math"
	"slices"
)

// Learned is what a meter's self-check told, as it is stored.
type Learned struct {
	Detectors []Detector   `json:"detectors,omitempty"` // those that fit; nil when it is not told
	NoneFits  bool         `json:"noneFits,omitempty"`  // the readings fit no detector
	Resistor  ResistorSays `json:"resistor,omitempty"`
	Deviation float64      `json:"deviation,omitempty"` // of the known resistor's reading, as a fraction of its print
	Bound     float64      `json:"bound,omitempty"`     // least half width of the ohms ranges, as a fraction of the reading; 0 unless off
	Leads     LeadState    `json:"leads,omitempty"`
}

// BlocksDC reports that a capacitor keeps DC out of the AC ranges.
func (l Learned) BlocksDC() bool { return DCTest{Fits: l.Detectors}.BlocksDC() }

// Valid says what is wrong with what was stored, as a *FieldError, or nil.
func (l Learned) Valid() error {
	off := l.Resistor == ResistorOff
	switch {
	case len(l.Detectors) > 0 && l.NoneFits:
		return &FieldError{"noneFits", "is true beside detectors that fit", "keep one of the two"}
	case off != (l.Bound != 0):
		return &FieldError{"bound", fmt.Sprintf("is %v where the resistor says %q", l.Bound, l.Resistor), "give one for off alone"}
	case math.IsNaN(l.Deviation) || math.IsInf(l.Deviation, 0):
		return &FieldError{"deviation", fmt.Sprintf("is %v", l.Deviation), "give a number"}
	}
	return firstOf(
		validDetectors(l.Detectors),
		oneOf("resistor", l.Resistor, "", ResistorAgrees, ResistorOff),
		oneOf("leads", l.Leads, "", LeadsGood, LeadsWorn, LeadsOpen),
		between("bound", l.Bound, 0, mostWidening),
	)
}

func validDetectors(ds []Detector) error {
	for i, d := range ds {
		if d < 0 || int(d) >= len(detectorIDs) {
			return unknownDetector(d.String())
		}
		if slices.Contains(ds[:i], d) {
			return &FieldError{"detectors", fmt.Sprintf("name %q twice", detectorIDs[d]), "leave one out"}
		}
	}
	return nil
}

func oneOf[S ~string](field string, got S, known ...S) error {
	if slices.Contains(known, got) {
		return nil
	}
	return &FieldError{field, fmt.Sprintf("is %q", string(got)), fmt.Sprintf("use one of %q", known[1:])}
}

// With is the meter with what was learnt of it, which must be Valid. A data
// sheet never gets tighter: a resistor that agrees says so of one value on one
// range on one day.
func (m Meter) With(l Learned) Meter {
	switch {
	case l.NoneFits:
		m.Detectors = nil
	case len(l.Detectors) > 0:
		m.Detectors = narrowed(m.Detectors, l.Detectors)
	}
	if ohms := m.Ranges[Ohms]; l.Resistor == ResistorOff && len(ohms) > 0 {
		m.Ranges = maps.Clone(m.Ranges)
		m.Ranges[Ohms] = widened(ohms, 100*l.Bound)
	}
	return m
}

// narrowed keeps those of the described detectors that fit; where none does, the
// battery knows better than the description.
func narrowed(described, fits []Detector) []Detector {
	both := slices.DeleteFunc(slices.Clone(described), func(d Detector) bool { return !slices.Contains(fits, d) })
	if len(both) == 0 {
		return slices.Clone(fits)
	}
	return both
}

func widened(ranges []Range, percent float64) []Range {
	wider := slices.Clone(ranges)
	for i := range wider {
		wider[i].Accuracy.Percent = max(wider[i].Accuracy.Percent, percent)
	}
	return wider
}

// Nothing reports that no part of it was told.
func (l Learned) Nothing() bool {
	return len(l.Detectors) == 0 && !l.NoneFits && l.Resistor == "" && l.Leads == ""
}
