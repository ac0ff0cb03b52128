package words

import (
	"fmt"
	"strings"

	"coilbook/engine/meter"
)

// Words of a meter's data sheet.
const (
	SheetTitle         = "Your meter's data sheet"
	SheetTitleHint     = "The leaflet in the box has a table of ranges with their accuracy. Copy what it says and leave the rest."
	AskMeterName       = "What do you call it?"
	AskClass           = "Start from"
	ClassHint          = "Choosing fills in all lines below anew."
	AskCounts          = "Highest number that it shows"
	AskDial            = "How does it find its range?"
	TurnsDial          = "I turn the dial"
	PicksRange         = "It picks its own range"
	RangesTitle        = "Accuracy, line by line"
	RangesHint         = "Tap a range to add it or leave it out."
	RangeOff           = "not on this meter"
	Percent            = "%"
	Digits             = "digits"
	AskBandLow         = "AC accuracy holds from, Hz"
	AskBandHigh        = "up to, Hz"
	AskInputDC         = "Input resistance on DC volts, MΩ"
	AskInputAC         = "Input resistance on AC volts, MΩ"
	MeterResistorTitle = "A resistor of known value"
	MeterResistorHint  = "Optional: the self-check then shows how true your ohms are. Best is 20 to 190 Ω, 1 % or better."
	AskMeterResistor   = "Value, Ω"
	AskMeterTolerance  = "Tolerance, ± %"
	SaveSheet          = "Save"
	SaveAndCheck       = "Save and check the meter"
)

// Sentences for what cannot be taken in a data sheet.
const (
	NoOhms            = "Ohms: add at least one range. Most checks need it."
	BadInputDC        = "Input resistance on DC volts: type 0.001 to 1000 MΩ."
	BadInputAC        = "Input resistance on AC volts: type 0.001 to 1000 MΩ."
	BadMeterResistor  = "Known resistor, value: type 0.01 Ω to 10 MΩ with a decimal point, or leave it empty."
	BadMeterTolerance = "Known resistor, tolerance: type 0 to 20 %, as its last coloured ring or its print says."
)

// Function names what the dial is set to, as a heading.
func Function(f meter.Function) string {
	return map[meter.Function]string{
		meter.Ohms: "Ohms", meter.VoltsDC: "DC volts", meter.VoltsAC: "AC volts", meter.AmpsDC: "DC amps", meter.Diode: DiodeFunction,
	}[f]
}

// RangeName names a range where more than one function has its label.
func RangeName(f meter.Function, label string) string {
	return label + map[meter.Function]string{meter.VoltsDC: " DC", meter.VoltsAC: " AC"}[f] + " range"
}

// PercentOf and DigitsOf name the two figures of a range.
func PercentOf(rangeName string) string { return rangeName + ", percent" }

// DigitsOf names a range's digits.
func DigitsOf(rangeName string) string { return rangeName + ", digits" }

// RangesOn counts the ranges of a function that the meter has.
func RangesOn(n int) string { return count(n, "range", "ranges") }

// SheetProblem says what is wrong with a data sheet; rangeName names the range
// that the error is about.
func SheetProblem(e *meter.FieldError, rangeName string) string {
	way := strings.Replace(e.WayOut, "use ", "type ", 1)
	switch {
	case strings.HasSuffix(e.Field, ".percent"):
		return PercentOf(rangeName) + ": " + way + "."
	case strings.HasSuffix(e.Field, ".digits"):
		return DigitsOf(rangeName) + ": " + way + "."
	}
	switch e.Field {
	case "name":
		return fmt.Sprintf("Name: keep it to one line of %d characters.", meter.MaxSheetName)
	case "acLowHz":
		return "AC accuracy, from: " + way + " Hz."
	case "acHighHz":
		return "AC accuracy, up to: " + way + " Hz."
	case "inputDCOhms":
		return BadInputDC
	case "inputACOhms":
		return BadInputAC
	case "lines":
		return NoOhms
	}
	return "Data sheet: " + e.Error() + "."
}
