package uncertainty

import "math"

// The functions below give the standard uncertainty of a value that is known to
// lie within ±h of a middle, from what is known of where it lies in between.

// Rectangular is for bounds alone: anywhere between them alike (GUM 4.3.7).
func Rectangular(h float64) float64 { return math.Abs(h) / math.Sqrt(3) }

// Triangular is for values that gather in the middle, as the sum of two equal
// rectangular doubts does (GUM 4.3.9).
func Triangular(h float64) float64 { return math.Abs(h) / math.Sqrt(6) }

// Arcsine is for values that swing like a sine and so stay near the bounds,
// such as a temperature that a thermostat holds (GUM H.1.3.4).
func Arcsine(h float64) float64 { return math.Abs(h) / math.Sqrt2 }

// Resolution is for a display that counts in the given step (GUM F.2.2.1). An
// accuracy that names a number of digits already holds it: do not add it there.
func Resolution(step float64) float64 { return math.Abs(step) / math.Sqrt(12) }
