package machine

import "math"

// Reach is the share of its flux at the usual gap that a nose still changes at
// its own gap. The field of a toothed rotor falls off as exp(-2π·gap/pitch)
// (Wallace's spacing loss, 1951, from memory); one single nose falls off steeper
// near and shallower far away.
func (r Reluctor) Reach() float64 { return math.Exp(-2 * math.Pi * (r.Gap - r.Usual) / r.Lambda) }
