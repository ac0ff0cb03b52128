package spec

import "coilbook/engine/quantity"

// Temperature of a winding with the half width of its doubt, in °C and K.
type Temperature struct {
	At        quantity.Celsius
	HalfWidth float64
	// Known says that a thermometer or a warm engine stands behind it, so that
	// no thermometer would narrow it.
	Known bool
}

// Warmth is how a winding came to its temperature, as a person can tell it.
type Warmth string

// Warmths.
const (
	Cold        Warmth = "" // stood for hours: as warm as the air
	EngineWarm  Warmth = "engine-warm"
	JustStopped Warmth = "just-stopped"
)

// Warmths lists them all, the coldest first.
func Warmths() []Warmth { return []Warmth{Cold, EngineWarm, JustStopped} }

// Half widths for the winding's temperature. Assumptions, no source: a part
// that stood in the shade is within 5 K of the air; without a thermometer the
// air is anywhere from 5 to 35 °C; an engine too warm to leave the hand on has
// windings of 30 to 80 °C, one just stopped 60 to 140 °C.
const (
	knownHalfWidth   = 5
	unknownHalfWidth = 15
)

// AirAt is the temperature of a winding that has cooled to a measured air
// temperature.
func AirAt(t quantity.Celsius) Temperature { return Temperature{t, knownHalfWidth, true} }

// AirUnknown is the temperature of a cold winding without a thermometer.
func AirUnknown() Temperature { return Temperature{20, unknownHalfWidth, false} }

// TemperatureOf is the winding's temperature by its warmth and, where a
// thermometer was read, the air's. An unknown warmth counts as cold.
func TemperatureOf(w Warmth, air *quantity.Celsius) Temperature {
	switch {
	case w == EngineWarm:
		return Temperature{55, 25, true}
	case w == JustStopped:
		return Temperature{100, 40, true}
	case air != nil:
		return AirAt(*air)
	}
	return AirUnknown()
}
