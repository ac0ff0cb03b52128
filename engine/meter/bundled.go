package meter

import (
	"math"
	"strconv"

	"coilbook/engine/quantity"
)

// Cheap is the default: a 1999-count manual-range meter with the worst figures
// usual for its kind. Accuracy, band, input and leads: common practice, no
// source; a data sheet at hand is better. Detectors differ among meters of this
// kind, so that none is taken as known.
func Cheap() Meter {
	ohm, top := Accuracy{0.8, 5}, Accuracy{1, 5}
	return Meter{
		ID: "cheap", Counts: 1999,
		Ranges: map[Function][]Range{
			Ohms: append(decades(1999, quantity.Ohms, ohm, 200, 2e3, 20e3, 200e3),
				decades(1999, quantity.Ohms, top, 2e6)...),
			VoltsDC: append(decades(1999, quantity.Volts, Accuracy{0.5, 2}, 0.2, 2, 20, 200),
				decades(1999, quantity.Volts, Accuracy{1, 2}, 600)...),
			VoltsAC: decades(1999, quantity.Volts, Accuracy{1.2, 10}, 200, 600),
			AmpsDC:  decades(1999, quantity.Amperes, Accuracy{3, 5}, 10),
			Diode:   diodes(1999, Accuracy{3, 5}),
		},
		Band:    Band{40, 400},
		InputAC: 450e3,
		InputDC: 1e6,
		Leads:   Leads{Low: 0.1, High: 0.4, Contact: 0.05},
		Drive:   usualDrive,
	}
}

// Auto4000 is a mid-price auto-ranging meter of 3999 counts. All figures:
// common practice, no source. The same practice gives it an average behind a
// capacitor, but some of this price show true RMS, so that no detector is taken
// as known.
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
	m.Detectors = []Detector{TrueRMS}
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
		ID: id, Counts: counts, Auto: true, InputAC: 10e6, InputDC: 10e6, Drive: usualDrive,
		Ranges: map[Function][]Range{
			Ohms:    ohms,
			VoltsDC: decades(counts, quantity.Volts, dc, lowVolt/10, lowVolt, lowVolt*10, lowVolt*100),
			VoltsAC: decades(counts, quantity.Volts, ac, lowVolt, lowVolt*10, lowVolt*100),
			AmpsDC:  decades(counts, quantity.Amperes, Accuracy{2, 5}, 10),
			Diode:   diodes(counts, Accuracy{1.5, 5}),
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
			Unit: displayUnit(n, counts, base), Accuracy: a,
		}
	}
	return ranges
}

// label is what stands around the dial: volts are not counted in thousands.
func label(n float64, base quantity.Unit) string {
	prefix := ""
	switch {
	case n >= 1e6:
		n, prefix = n/1e6, "M"
	case n >= 1e3 && base == quantity.Ohms:
		n, prefix = n/1e3, "k"
	case n < 1:
		n, prefix = n*1e3, "m"
	}
	return strconv.FormatFloat(n, 'f', -1, 64) + " " + prefix + base.Name
}

// displayUnit is the unit of the digits. A 2 kΩ range of 1999 counts usually
// counts single ohms, as one that ends just below 1 kΩ does; higher ranges count
// kΩ and MΩ, volts below one count mV. Common practice, no source.
func displayUnit(n float64, counts int, base quantity.Unit) quantity.Unit {
	switch {
	case base == quantity.Volts && n < 1:
		return quantity.Millivolts
	case base != quantity.Ohms, n <= 1e3, n == 2e3 && counts == 1999:
		return base
	case n <= 1e6:
		return quantity.KiloOhms
	}
	return quantity.MegaOhms
}
