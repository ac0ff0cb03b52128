package words

import (
	"math"

	"coilbook/engine/quantity"
)

// units are the reader's. Like the language of the page they belong to whoever
// reads, not to a record, and are chosen once for all sentences.
var units quantity.Chosen

// WriteIn chooses the units that lengths and temperatures are written in from
// now on. It is called on the goroutine of the screens alone.
func WriteIn(c quantity.Chosen) { units = c }

// Units are the units that are written now.
func Units() quantity.Chosen { return units }

// AskAirIn asks for the warmth of the air in the reader's unit.
func AskAirIn() string {
	if units.Fahrenheit {
		return say("Air temperature, °F")
	}
	return AskAir
}

// BadAirIn says which warmth of the air is taken, from −40 to 60 °C.
func BadAirIn() string {
	if units.Fahrenheit {
		return say("Air temperature: type −40 to 140 °F, or leave it empty.")
	}
	return BadAir
}

// Air writes a warmth of the air for its field, given in °C.
func Air(celsius float64) string {
	return Plain(math.Round(units.UnitFor(quantity.Temperature, celsius).In(celsius)*10) / 10)
}

// temperatureAt writes a temperature given in °C, with a doubt in K where it is
// above zero.
func temperatureAt(celsius quantity.Celsius, halfWidth float64) string {
	u, _ := units.Unit(quantity.Temperature)
	out := Plain(u.Figure(float64(celsius), quantity.DegreesC))
	if halfWidth > 0 {
		out += " ± " + Plain(u.Difference().Figure(halfWidth, quantity.DegreesC))
	}
	return out + " " + u.Name
}

// warmer writes a difference of temperatures, given in K.
func warmer(kelvin float64) string {
	if !units.Fahrenheit {
		return decimal(kelvin, 0) + " K"
	}
	return decimal(quantity.DegreesF.Difference().In(kelvin), 0) + " °F"
}

// gap writes a span of gaps, given in m, as rough as common practice is.
func gap(low, high quantity.Metre) string {
	u, _ := units.Unit(quantity.Length)
	return say("%s to %s %s", gapFigure(u, low), gapFigure(u, high), u.Name)
}

// oneGap writes a gap given in m, with two or three figures.
func oneGap(m float64) string {
	u, _ := units.Unit(quantity.Length)
	return short(u.In(m)) + " " + u.Name
}

// gapFigure has a tenth of a mm, or whole thousandths.
func gapFigure(u quantity.Unit, m quantity.Metre) string {
	if u == quantity.Millis {
		return decimal(u.In(float64(m)), 1)
	}
	return decimal(u.In(float64(m)), 0)
}
