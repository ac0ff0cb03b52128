package words

import (
	"strings"

	"coilbook/app/tongue"
	"coilbook/engine/meter"
)

// Words of a meter's data sheet.
var (
	SheetTitle         = say("Your meter's data sheet")
	SheetTitleHint     = say("The leaflet in the box has a table of ranges with their accuracy. Copy what it says and leave the rest.")
	AskMeterName       = say("What do you call it?")
	AskClass           = say("Start from")
	ClassHint          = say("Choosing fills in all lines below anew.")
	AskCounts          = say("Highest number that it shows")
	AskDial            = say("How does it find its range?")
	TurnsDial          = say("I turn the dial")
	PicksRange         = say("It picks its own range")
	RangesTitle        = say("Accuracy, line by line")
	RangesHint         = say("Tap a range to add it or leave it out.")
	RangeOff           = say("not on this meter")
	Percent            = "%"
	Digits             = say("digits")
	AskBandLow         = say("AC accuracy holds from, Hz")
	AskBandHigh        = say("up to, Hz")
	AskInputDC         = say("Input resistance on DC volts, MΩ")
	AskInputAC         = say("Input resistance on AC volts, MΩ")
	MeterResistorTitle = say("A resistor of known value")
	MeterResistorHint  = say("Optional: the self-check then shows how true your ohms are. Best is 20 to 190 Ω, 1 % or better.")
	AskMeterResistor   = say("Value, Ω")
	AskMeterTolerance  = say("Tolerance, ± %")
	SaveSheet          = say("Save")
	SaveAndCheck       = say("Save and check the meter")
)

// Sentences for what cannot be taken in a data sheet.
var (
	NotASheet         = say("The data sheet cannot be taken as it is: look at each line again.")
	NoOhms            = say("Ohms: add at least one range. Most checks need it.")
	BadInputDC        = say("Input resistance on DC volts: type 0.001 to 1000 MΩ.")
	BadInputAC        = say("Input resistance on AC volts: type 0.001 to 1000 MΩ.")
	BadMeterResistor  = say("Known resistor, value: type 0.01 Ω to 10 MΩ with a decimal point, or leave it empty.")
	BadMeterTolerance = say("Known resistor, tolerance: type 0 to 20 %, as its last coloured ring or its print says.")
)

// Function names what the dial is set to, as a heading.
func Function(f meter.Function) string {
	return map[meter.Function]string{
		meter.Ohms: say("Ohms"), meter.VoltsDC: say("DC volts"), meter.VoltsAC: say("AC volts"), meter.AmpsDC: say("DC amps"), meter.Diode: DiodeFunction,
	}[f]
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
