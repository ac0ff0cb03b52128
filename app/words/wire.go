package words

import (
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
func WireWays() []Choice {
	return []Choice{{WireByTurns, say("Turns")}, {WireByWeight, say("Weight of the copper")}, {WireByDiameter, say("Thickness of the wire")}}
}

// WireFigures are the figures that a way asks for.
func WireFigures(way string) []Figure {
	inHand := Figure{WireInHand, say("Wires side by side"), "1"}
	switch way {
	case WireByWeight:
		return []Figure{{WireWeight, say("Weight of the bare copper, g"), ""}, inHand}
	case WireByDiameter:
		return []Figure{{WireDiameter, say("Bare wire, mm thick"), say("without its enamel")}, inHand}
	}
	return []Figure{{WireTurns, say("Turns between these leads"), ""}, {WireTurn, say("Length of one turn, mm"), say("round the middle of the coil")}, inHand}
}

// Words of the wire estimate.
var (
	WireTitle     = text("What wire is it wound with?")
	WireHint      = text("The ohms and one more thing that you know give length and thickness of the wire. It is an estimate, for a rewind or a comparison.")
	AskCoil       = text("Which reading")
	AskWay        = text("What you know of it")
	NoCoil        = text("Take an ohm reading of a winding first.")
	WireBadInHand = text("Wires side by side: type a whole number from 1.")
	ToWire        = text("What wire is it wound with?")
)

// WireMissing asks for a figure.
func WireMissing(name string) string { return say("%s: type a number above zero.", name) }

// WireProblem says what is wrong with a figure.
func WireProblem(field, reason, wayOut string) string {
	return say("%s %s: %s.", upperFirst(told(field)), told(reason), told(wayOut))
}

// Wire says what a coil is wound with.
func Wire(w winding.Wire) string {
	long, thick := length(w.Length, w.LengthStd, 1, "m"), length(w.Diameter, w.DiameterStd, 1e-3, "mm")
	switch {
	case w.HasGauge && w.GaugeStd > 0.5:
		return say("About %s of wire, %s thick without enamel, nearest to AWG %d give or take %s.", long, thick, int(w.Gauge), decimal(2*w.GaugeStd, 0))
	case w.HasGauge:
		return say("About %s of wire, %s thick without enamel, nearest to AWG %d.", long, thick, int(w.Gauge))
	}
	return say("About %s of wire, %s thick without enamel.", long, thick)
}

// WireAs says how a reading of two of three leads is taken.
func WireAs(c check.Check) string {
	if c.Measures != spec.ChargePair {
		return ""
	}
	return " " + say("With three leads this takes the winding for a star, two phases in a row; of a delta it says nothing.")
}

func length(v, std quantity.Metre, unit float64, name string) string {
	value, doubt := float64(v)/unit, 2*float64(std)/unit
	n := quantity.DecimalsFor(doubt, value)
	return decimal(value, n) + " ± " + decimal(doubt, n) + " " + name
}
