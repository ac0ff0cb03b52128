package winding

import (
	"math"

	"coilbook/engine/quantity"
)

// Gauge is an American wire gauge number (AWG). A higher number is a thinner
// wire; 0, -1, -2 and -3 stand for 1/0, 2/0, 3/0 and 4/0. ASTM B258 goes from -3
// to 56 (from memory); stators use about 12 to 22, exciters and pickups 30 to 44
// (common practice, no source).
type Gauge int

// OhmPerMetre is the resistance of wire by its length.
type OhmPerMetre float64

// Resistivity of annealed copper at 20 °C in Ω·m: 1/58 Ω·mm²/m, which is 100 %
// of the International Annealed Copper Standard (IEC 60028, from memory).
const Resistivity = 1.0 / 58e6

const metresPer1000Feet = 304.8 // exact, international foot of 1959

// Diameter is that of the bare copper (ASTM B258): 0.127 mm at gauge 36, and 92
// times less than at 4/0, in 39 equal ratios. Enamel adds 5 to 15 %, the more
// the thinner the wire (common practice, no source), so a calliper on enamelled
// wire reads about a gauge too thick.
func (g Gauge) Diameter() quantity.Metre {
	return quantity.Metre(0.127e-3 * math.Pow(92, float64(36-g)/39))
}

// OhmPerMetre is the resistance of a metre of the bare copper at 20 °C.
//
// It uses the exact diameter, as the tables of NBS Circular 31 do. Tables built
// on diameters rounded to a tenth of a thousandth of an inch, as those of NBS
// Handbook 100 (from memory), differ by up to 3 % at gauge 40 (recomputed).
func (g Gauge) OhmPerMetre() OhmPerMetre {
	d := float64(g.Diameter())
	return OhmPerMetre(Resistivity / (math.Pi / 4 * d * d))
}

// OhmPer1000Feet is the same as wire tables print it, in Ω per 1000 ft at 20 °C.
func (g Gauge) OhmPer1000Feet() float64 {
	return float64(g.OhmPerMetre()) * metresPer1000Feet
}

// Length is how much single wire of gauge g has the resistance r20 at 20 °C. In
// a coil wound with n wires in hand, each of them is n times as long.
func (g Gauge) Length(r20 quantity.Ohm) quantity.Metre {
	return quantity.Metre(float64(r20) / float64(g.OhmPerMetre()))
}
