// Package spec holds limits and judges readings against them. A limit carries
// unit, condition and provenance. The verdict follows the conformance
// probability of the true value (JCGM 106:2012, vague prior; the 95 % of
// ISO 14253-1), three-way: in spec, out of spec, or cannot tell with this
// meter. "Cannot tell" is an answer, and it says what would decide it.
package spec

import (
	"math"

	"coilbook/engine/quantity"
)

// Limit is what a measurand must keep to. Values are in SI units.
type Limit struct {
	Measurand  Measurand
	Kind       quantity.Kind
	Low, High  float64 // ±Inf where there is none
	Open       bool    // must read open line, and at least Low where on scale
	Ratio      bool    // High is a fraction of the mean, not an SI value
	Unit       quantity.Unit
	Condition  Condition
	Provenance Provenance
}

// Condition says when a limit holds.
type Condition struct {
	AtCelsius *quantity.Celsius // compare at this winding temperature
	State     string            // "at rest", "cranking"
}

// Provenance says where a limit comes from.
type Provenance struct {
	Kind Source
	Note string
	Date string // YYYY-MM-DD
}

// Source is a kind of provenance.
type Source string

// The kinds of provenance.
const (
	Manual         Source = "manual"
	OwnUnits       Source = "own known-good units"
	CommonPractice Source = "common practice"
	FromMemory     Source = "from memory"
)

// Profile is a set of limits for one machine or one family of machines.
type Profile struct {
	ID     string
	Name   string
	About  string
	Limits map[Measurand]Limit
}

// Limit finds the limit of a measurand.
func (p Profile) Limit(m Measurand) (Limit, bool) {
	l, ok := p.Limits[m]
	return l, ok
}

// Between makes a limit from SI values; use ±Inf for a side without one.
func Between(m Measurand, k quantity.Kind, low, high float64) Limit {
	return Limit{Measurand: m, Kind: k, Low: low, High: high, Unit: quantity.UnitFor(k, finite(high, low))}
}

func finite(a, b float64) float64 {
	if math.IsInf(a, 0) {
		return b
	}
	return a
}
