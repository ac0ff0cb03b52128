package winding

import (
	"math"

	"coilbook/engine/quantity"
)

// Reference is the temperature at which winding resistances are compared.
const Reference quantity.Celsius = 20

// Material is a conductor, given by its k: the straight line of its resistance
// against temperature, drawn on towards the cold, meets zero at -k °C. In K.
//
// The line is good to about 0.5 % from -50 to 200 °C (from memory), which holds
// every winding that still has its enamel.
type Material float64

// Copper has k = 234.5 (seen in a published safety standard's text; also IEEE
// 112 and 118, from memory). It goes with the coefficient 0.00393 per kelvin at
// 20 °C of IEC 60028, which the wire gauge here uses too. IEC 60034-1 has 235
// (from memory); over 20 to 100 °C the two differ by 0.05 % (recomputed).
const Copper Material = 234.5

// Ratio is the resistance of a winding at to over its resistance at from:
// (k + to) / (k + from).
func (m Material) Ratio(from, to quantity.Celsius) float64 {
	return (float64(m) + float64(to)) / (float64(m) + float64(from))
}

// Coefficient is the relative change of resistance per kelvin, seen from at.
func (m Material) Coefficient(at quantity.Celsius) float64 {
	return 1 / (float64(m) + float64(at))
}

// Warmed is the temperature of a winding that had r1 at t1 and has r2 now.
// Resistances must be above zero.
func (m Material) Warmed(r1 quantity.Ohm, t1 quantity.Celsius, r2 quantity.Ohm) quantity.Celsius {
	return quantity.Celsius(float64(r2/r1)*(float64(m)+float64(t1)) - float64(m))
}

// Rise is by how many kelvin that winding is now warmer than the air around it,
// averaged over the wire: its hottest spot is warmer.
func (m Material) Rise(r1 quantity.Ohm, t1 quantity.Celsius, r2 quantity.Ohm, ambient quantity.Celsius) float64 {
	return float64(m.Warmed(r1, t1, r2) - ambient)
}

// ToReference is the resistance at 20 °C of a copper winding that has r at the
// given temperature.
func ToReference(r quantity.Ohm, at quantity.Celsius) quantity.Ohm {
	return r * quantity.Ohm(Copper.Ratio(at, Reference))
}

// At is the resistance at t of a copper winding that has r20 at 20 °C.
func At(r20 quantity.Ohm, t quantity.Celsius) quantity.Ohm {
	return r20 * quantity.Ohm(Copper.Ratio(Reference, t))
}

// RelativeDoubt is the relative standard uncertainty that ToReference adds when
// the winding's temperature is known only to lie within ±halfWidth kelvin,
// anywhere there alike (JCGM 100:2008, 4.3.7). It is meant for half widths up
// to some 50 K and is shared by all coils on one core: it cancels in a balance.
func RelativeDoubt(at quantity.Celsius, halfWidth float64) float64 {
	return math.Abs(halfWidth) / math.Sqrt(3) * Copper.Coefficient(at)
}
