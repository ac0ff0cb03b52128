package words

import (
	"fmt"
	"strconv"

	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
	"coilbook/engine/winding"
)

// Choice is one of several answers.
type Choice struct{ ID, Name string }

// Figure is a number that is asked for.
type Figure struct{ ID, Name, Hint string }

// Ways to a wire, and the figures that they ask for.
const (
	WireByTurns    = "turns"
	WireByWeight   = "weight"
	WireByDiameter = "diameter"

	WireTurns    = "turns"
	WireTurn     = "turn"
	WireWeight   = "weight"
	WireDiameter = "diameter"
	WireInHand   = "in-hand"
)

// WireWays are the ways on offer.
var WireWays = []Choice{{WireByTurns, "Turns"}, {WireByWeight, "Weight of the copper"}, {WireByDiameter, "Thickness of the wire"}}

// WireFigures are the figures that a way asks for.
func WireFigures(way string) []Figure {
	inHand := Figure{WireInHand, "Wires side by side", "1"}
	switch way {
	case WireByWeight:
		return []Figure{{WireWeight, "Weight of the bare copper, g", ""}, inHand}
	case WireByDiameter:
		return []Figure{{WireDiameter, "Bare wire, mm thick", "without its enamel"}, inHand}
	}
	return []Figure{{WireTurns, "Turns between these leads", ""}, {WireTurn, "Length of one turn, mm", "round the middle of the coil"}, inHand}
}

// Words of the wire estimate.
const (
	WireTitle     = "What wire is it wound with?"
	WireHint      = "The ohms and one more thing that you know give length and thickness of the wire. It is an estimate, for a rewind or a comparison."
	AskCoil       = "Which reading"
	AskWay        = "What you know of it"
	NoCoil        = "Take an ohm reading of a winding first."
	WireBadInHand = "Wires side by side: type a whole number from 1."
	ToWire        = "What wire is it wound with?"
)

// WireMissing asks for a figure.
func WireMissing(name string) string { return name + ": type a number above zero." }

// WireProblem says what is wrong with a figure.
func WireProblem(field, reason, wayOut string) string {
	return fmt.Sprintf("%s %s: %s.", upperFirst(field), reason, wayOut)
}

// Wire says what a coil is wound with.
func Wire(w winding.Wire) string {
	out := "About " + length(w.Length, w.LengthStd, 1, "m") + " of wire, " + length(w.Diameter, w.DiameterStd, 1e-3, "mm") + " thick without enamel"
	if w.HasGauge {
		out += ", nearest to AWG " + strconv.Itoa(int(w.Gauge))
		if w.GaugeStd > 0.5 {
			out += fmt.Sprintf(" give or take %.0f", 2*w.GaugeStd)
		}
	}
	return out + "."
}

// WireAs says how a reading of two of three leads is taken.
func WireAs(c check.Check) string {
	if c.Measures != spec.ChargePair {
		return ""
	}
	return " With three leads this takes the winding for a star, two phases in a row; of a delta it says nothing."
}

func length(v, std quantity.Metre, unit float64, name string) string {
	value, doubt := float64(v)/unit, 2*float64(std)/unit
	n := quantity.DecimalsFor(doubt, value)
	return quantity.Decimal(value, n) + " ± " + quantity.Decimal(doubt, n) + " " + name
}
