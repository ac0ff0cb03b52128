package words

import (
	"strings"

	"coilbook/app/tongue"
	"coilbook/engine/meter"
)

// Words of a meter's data sheet.
var (
	SheetTitle         = text("Your meter's data sheet")
	SheetTitleHint     = text("The leaflet in the box has a table of ranges with their accuracy. Copy what it says and leave the rest.")
	AskMeterName       = text("What do you call it?")
	AskClass           = text("Start from")
	ClassHint          = text("Choosing fills in all lines below anew.")
	AskCounts          = text("Highest number that it shows")
	AskDial            = text("How does it find its range?")
	TurnsDial          = text("I turn the dial")
	PicksRange         = text("It picks its own range")
	RangesTitle        = text("Accuracy, line by line")
	RangesHint         = text("Tap a range to add it or leave it out.")
	RangeOff           = text("not on this meter")
	Percent            = "%"
	Digits             = text("digits")
	AskBandLow         = text("AC accuracy holds from, Hz")
	AskBandHigh        = text("up to, Hz")
	AskInputDC         = text("Input resistance on DC volts, MΩ")
	AskInputAC         = text("Input resistance on AC volts, MΩ")
	MeterResistorTitle = text("A resistor of known value")
	MeterResistorHint  = text("Optional: the self-check then shows how true your ohms are. Best is 20 to 190 Ω, 1 % or better.")
	AskMeterResistor   = text("Value, Ω")
	AskMeterTolerance  = text("Tolerance, ± %")
	SaveSheet          = text("Save")
	SaveAndCheck       = text("Save and check the meter")
)

// Sentences for what cannot be taken in a data sheet.
var (
	NotASheet         = text("The data sheet cannot be taken as it is: look at each line again.")
	NoOhms            = text("Ohms: add at least one range. Most checks need it.")
	BadInputDC        = text("Input resistance on DC volts: type 0.001 to 1000 MΩ.")
	BadInputAC        = text("Input resistance on AC volts: type 0.001 to 1000 MΩ.")
	BadMeterResistor  = text("Known resistor, value: type 0.01 Ω to 10 MΩ with a decimal point, or leave it empty.")
	BadMeterTolerance = text("Known resistor, tolerance: type 0 to 20 %, as its last coloured ring or its print says.")
)

// Function names what the dial is set to, as a heading.
func Function(f meter.Function) string {
	return say(functions.of(f))
}

var functions = table[meter.Function, text]{
	{meter.Ohms, "Ohms"}, {meter.VoltsDC, "DC volts"}, {meter.VoltsAC, "AC volts"}, {meter.AmpsDC, "DC amps"}, {meter.Diode, DiodeFunction},
}

// RangeName names a range where more than one function has its label.
func RangeName(f meter.Function, label string) string {
	label = tongue.Number(label)
	switch f {
	case meter.VoltsDC:
		return say("%s DC range", label)
	case meter.VoltsAC:
		return say("%s AC range", label)
	}
	return say("%s range", label)
}

// PercentOf and DigitsOf name the two figures of a range.
func PercentOf(rangeName string) string { return say("%s, percent", rangeName) }

// DigitsOf names a range's digits.
func DigitsOf(rangeName string) string { return say("%s, digits", rangeName) }

// RangesOn counts the ranges of a function that the meter has.
func RangesOn(n int) string { return count(n, "%d range", "%d ranges") }

// SheetProblem says what is wrong with a data sheet; rangeName names the range
// that the error is about.
func SheetProblem(e *meter.FieldError, rangeName string) string {
	way := told(strings.Replace(e.WayOut, "use ", "type ", 1))
	switch {
	case strings.HasSuffix(e.Field, ".percent"):
		return PercentOf(rangeName) + ": " + way + "."
	case strings.HasSuffix(e.Field, ".digits"):
		return DigitsOf(rangeName) + ": " + way + "."
	}
	switch e.Field {
	case "name":
		return say("Name: keep it to one line of %d characters.", meter.MaxSheetName)
	case "acLowHz":
		return say("AC accuracy, from: %s Hz.", way)
	case "acHighHz":
		return say("AC accuracy, up to: %s Hz.", way)
	case "inputDCOhms":
		return BadInputDC
	case "inputACOhms":
		return BadInputAC
	case "lines":
		return NoOhms
	}
	return say("Data sheet: %s; %s.", told(e.Reason), told(e.WayOut))
}
