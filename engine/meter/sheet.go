package meter

import (
	"cmp"
	"slices"

	"coilbook/engine/quantity"
)

// OwnID is the ID of a meter that was described by a Sheet.
const OwnID = "own"

// Sheet is a meter's data sheet as a person types it, line by line, and as it is
// stored. What people cannot read off a data sheet comes from the class.
type Sheet struct {
	Name    string         `json:"name,omitempty"` // what its owner calls it
	Class   string         `json:"class"`          // ID of the bundled meter that it started from
	Counts  int            `json:"counts"`         // one of SheetCounts
	Auto    bool           `json:"auto"`           // picks its range itself
	Lines   []Line         `json:"lines"`          // in any order
	ACLow   quantity.Hertz `json:"acLowHz"`
	ACHigh  quantity.Hertz `json:"acHighHz"`
	InputDC quantity.Ohm   `json:"inputDCOhms"`
	InputAC quantity.Ohm   `json:"inputACOhms"`
}

// Line is one range of a data sheet.
type Line struct {
	Function string  `json:"function"` // as Function.String gives it
	Nominal  float64 `json:"nominal"`  // SI, one of Nominals
	Accuracy
}

// SheetOf is the data sheet of a bundled meter, to start from.
func SheetOf(m Meter) Sheet {
	s := Sheet{
		Class: m.ID, Counts: m.Counts, Auto: m.Auto,
		ACLow: m.Band.Low, ACHigh: m.Band.High, InputDC: m.InputDC, InputAC: m.InputAC,
	}
	for _, f := range Functions() {
		for _, r := range m.Ranges[f] {
			s.Lines = append(s.Lines, Line{f.String(), r.Nominal, r.Accuracy})
		}
	}
	return s
}

// Meter is the meter that the data sheet describes, its leads and detectors
// those of the class; the error is a *FieldError for the first thing wrong.
func (s Sheet) Meter() (Meter, error) {
	if err := s.Valid(); err != nil {
		return Meter{}, err
	}
	m, _ := ByID(s.Class)
	m.ID, m.Counts, m.Auto = OwnID, s.Counts, s.Auto
	m.Band, m.InputDC, m.InputAC = Band{s.ACLow, s.ACHigh}, s.InputDC, s.InputAC
	m.Ranges = s.ranges()
	return m, nil
}

func (s Sheet) ranges() map[Function][]Range {
	ranges := map[Function][]Range{}
	for _, l := range slices.SortedFunc(slices.Values(s.Lines), func(a, b Line) int { return cmp.Compare(a.Nominal, b.Nominal) }) {
		f, _ := FunctionNamed(l.Function)
		if f == Diode {
			ranges[f] = diodes(s.Counts, l.Accuracy)
			continue
		}
		base := quantity.Units(f.Kind())[0]
		ranges[f] = append(ranges[f], decades(s.Counts, base, l.Accuracy, l.Nominal)...)
	}
	return ranges
}
