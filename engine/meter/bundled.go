package meter

import (
	"math"
	"strconv"

	"coilbook/engine/quantity"
)

// Cheap is the default: a 1999-count manual-range meter with the worst figures
// usual for its kind. Accuracy, band, input and leads: common practice, no
// source; a data sheet at hand is better.
func Cheap() Meter {
	ohm, top := Accuracy{0.8, 5}, Accuracy{1, 5}
	return Meter{
		ID: "cheap", Counts: 1999,
		Ranges: map[Function][]Range{
			Ohms: append(decades(1999, quantity.Ohms, ohm, 200, 2e3, 20e3, 200e3),
				decades(1999, quantity.Ohms, top, 2e6)...),
			VoltsDC: append(decades(1999, quantity.Volts, Accuracy{0.5, 2}, 2, 20, 200),
				Range{Label: "600 V", Nominal: 600, Full: 600, Step: 1, Unit: quantity.Volts, Accuracy: Accuracy{1, 2}}),
			VoltsAC: append(decades(1999, quantity.Volts, Accuracy{1.2, 10}, 200),
				Range{Label: "600 V", Nominal: 600, Full: 600, Step: 1, Unit: quantity.Volts, Accuracy: Accuracy{1.2, 10}}),
			AmpsDC: {{Label: "10 A", Nominal: 10, Full: 10, Step: 0.01, Unit: quantity.Amperes, Accuracy: Accuracy{3, 5}}},
		},
		Band:  Band{40, 400},
		Input: 450e3,
		Leads: Leads{Low: 0.1, High: 0.4, Contact: 0.05},
	}
}

// Auto4000 is a mid-price auto-ranging meter of 3999 counts. All figures:
// common practice, no source.
func Auto4000() Meter {
	m := auto("auto4000", 3999, Accuracy{0.8, 3}, Accuracy{1, 3}, Accuracy{1, 5}, 400, 4)
	m.Band = Band{40, 400}
	m.Leads = Leads{Low: 0.1, High: 0.3, Contact: 0.03}
	return m
}

// Auto6000 is a good auto-ranging meter of 5999 counts and true-RMS. All
// figures: common practice, no source.
func Auto6000() Meter {
	m := auto("auto6000", 5999, Accuracy{0.5, 3}, Accuracy{0.5, 2}, Accuracy{1, 3}, 600, 6)
	m.Band = Band{40, 1000}
	m.Leads = Leads{Low: 0.05, High: 0.2, Contact: 0.02}
	return m
}

// Bundled lists the described meters, the default first.
func Bundled() []Meter { return []Meter{Cheap(), Auto4000(), Auto6000()} }

// ByID finds a bundled meter; ok is false for an unknown id.
func ByID(id string) (Meter, bool) {
	for _, m := range Bundled() {
		if m.ID == id {
			return m, true
		}
	}
	return Meter{}, false
}

func auto(id string, counts int, ohm, dc, ac Accuracy, lowOhm, lowVolt float64) Meter {
	ohms := decades(counts, quantity.Ohms, ohm, lowOhm, lowOhm*10, lowOhm*100, lowOhm*1e3, lowOhm*1e4, lowOhm*1e5)
	return Meter{
		ID: id, Counts: counts, Auto: true, Input: 10e6,
		Ranges: map[Function][]Range{
			Ohms:    ohms,
			VoltsDC: decades(counts, quantity.Volts, dc, lowVolt, lowVolt*10, lowVolt*100),
			VoltsAC: decades(counts, quantity.Volts, ac, lowVolt, lowVolt*10, lowVolt*100),
			AmpsDC:  decades(counts, quantity.Amperes, Accuracy{2, 5}, 10),
		},
	}
}

// decades describes ranges whose label is the round number above full scale.
func decades(counts int, base quantity.Unit, a Accuracy, nominals ...float64) []Range {
	ranges := make([]Range, len(nominals))
	for i, n := range nominals {
		step := math.Pow(10, math.Ceil(math.Log10(n/float64(counts+1))-1e-9))
		ranges[i] = Range{
			Label: label(n, base), Nominal: n, Full: min(float64(counts)*step, n), Step: step,
			Unit: displayUnit(n, base), Accuracy: a,
		}
	}
	return ranges
}

func label(n float64, base quantity.Unit) string {
	prefix := ""
	switch {
	case n >= 1e6:
		n, prefix = n/1e6, "M"
	case n >= 1e3:
		n, prefix = n/1e3, "k"
	}
	return strconv.FormatFloat(n, 'f', -1, 64) + " " + prefix + base.Name
}

// displayUnit is the unit of the digits: a 2 kΩ range usually counts single
// ohms, higher ranges count kΩ and MΩ. Common practice, no source.
func displayUnit(n float64, base quantity.Unit) quantity.Unit {
	switch {
	case base != quantity.Ohms || n < 4e3:
		return base
	case n < 1e6:
		return quantity.KiloOhms
	}
	return quantity.MegaOhms
}
