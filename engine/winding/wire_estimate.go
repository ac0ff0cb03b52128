package winding

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// Kilogram is a mass.
type Kilogram float64

// CopperDensity of annealed copper at 20 °C in kg/m³ (IEC 60028, from memory).
const CopperDensity = 8890.0

// Coil is a coil whose wire is to be estimated.
type Coil struct {
	Resistance    quantity.Ohm // at 20 °C, 1 µΩ to 1 GΩ
	ResistanceStd quantity.Ohm // its standard uncertainty, at most a third of it
	InHand        int          // how many wires are wound side by side, joined at both ends, 1 to 1000
}

// Wire is an estimate of the wire of a coil, with standard uncertainties by the
// law of propagation. They hold what is doubtful of the resistance and of the
// figure that was stated beside it. The resistivity and the density of the copper
// count as known: what is drawn into wire is within some 1 % of both (from memory).
type Wire struct {
	Length, LengthStd     quantity.Metre // from one end of the coil to the other
	Diameter, DiameterStd quantity.Metre // of the bare copper of each wire in hand
	// Gauge is the nearest American wire gauge and GaugeStd its doubt in numbers of
	// the gauge: one of a whole number or more leaves the neighbours possible.
	Gauge    Gauge
	GaugeStd float64
	HasGauge bool // false beyond the ends of the gauge
}

// InputError says which figure about a coil cannot be used, why, and what to do.
type InputError struct {
	Field  string
	Reason string
	WayOut string
}

func (e *InputError) Error() string { return e.Field + ": " + e.Reason + "; " + e.WayOut }

// FromTurns estimates the wire from the number of turns, up to a million, and the
// mean length of one, 0.1 mm to 100 m, each with its standard uncertainty, which
// is at most a third of it. The error is an *InputError.
//
// The length is their product L, and each wire has the cross-section ρ·L/(n·R).
func (c Coil) FromTurns(turns, turnsStd float64, turn, turnStd quantity.Metre) (Wire, error) {
	return c.estimate(byTurns, figure{"turns", turns, turnsStd, 1, 1e6, "", "count the turns"},
		figure{"length of a turn", float64(turn), float64(turnStd), 1e-4, 100, " m", "measure round the middle of the coil"})
}

// FromWeight estimates the wire from the weight of the copper of all wires in
// hand, 1 mg to 1000 kg, with its standard uncertainty, which is at most a third
// of it. Enamel, varnish and bobbin must be off it. The error is an *InputError.
//
// Length times cross-section is m/δ, and one over the other R/ρ: so the length is
// √(m·R/(ρ·δ)) and the cross-section of all wires together √(m·ρ/(R·δ)).
func (c Coil) FromWeight(weight, weightStd Kilogram) (Wire, error) {
	return c.estimate(byWeight, figure{"weight", float64(weight), float64(weightStd), 1e-6, 1000, " kg", "weigh the bare copper"})
}

// FromDiameter estimates the length of wire from the diameter of the bare copper
// of each wire in hand, 1 µm to 100 mm, with its standard uncertainty, which is
// at most a third of it. The error is an *InputError.
//
// The doubt of a diameter counts twice in the length, L = n·R·π·d²/(4·ρ).
func (c Coil) FromDiameter(d, std quantity.Metre) (Wire, error) {
	return c.estimate(byDiameter, figure{"diameter", float64(d), float64(std), 1e-6, 0.1, " m", "measure the bare wire"})
}

// Wire of a gauge is drawn to within ±1 % of its diameter. An assumption, no
// source.
const drawnWithin = 0.01

// FromGauge estimates the length of wire of a known gauge, -3 to 56. The error is
// an *InputError.
func (c Coil) FromGauge(g Gauge) (Wire, error) {
	if g < thickest || g > thinnest {
		return Wire{}, &InputError{"gauge", "is no American wire gauge", "give one from -3 (which is 4/0) to 56"}
	}
	d := g.Diameter()
	return c.FromDiameter(d, quantity.Metre(uncertainty.Rectangular(drawnWithin*float64(d))))
}

// The ends of the gauge (ASTM B258, from memory).
const thickest, thinnest Gauge = -3, 56

// NearestGauge is the gauge whose diameter comes nearest to that of bare copper,
// by ratio; false for one that is beyond the ends by more than half a number, or
// not above zero.
func NearestGauge(d quantity.Metre) (g Gauge, ok bool) {
	number := math.Round(gaugeNumber(float64(d)))
	if !(number >= float64(thickest) && number <= float64(thinnest)) {
		return 0, false
	}
	return Gauge(number), true
}

// gaugeNumber undoes Gauge.Diameter, for gauges in between too.
func gaugeNumber(metres float64) float64 { return 36 - 39*math.Log(metres/0.127e-3)/math.Log(92) }

// wireFrom gives the length, and the cross-section of all wires in hand, from
// the resistance and the figures beside it.
type wireFrom func(r float64, figures []float64, inHand float64) (length, section float64)

func byTurns(r float64, figures []float64, _ float64) (length, section float64) {
	length = figures[0] * figures[1]
	return length, Resistivity * length / r
}

func byWeight(r float64, figures []float64, _ float64) (length, section float64) {
	m := figures[0] / CopperDensity
	return math.Sqrt(m * r / Resistivity), math.Sqrt(m * Resistivity / r)
}

func byDiameter(r float64, figures []float64, inHand float64) (length, section float64) {
	section = inHand * math.Pi / 4 * figures[0] * figures[0]
	return r * section / Resistivity, section
}

// estimate propagates the doubts of all figures through a way to the wire.
func (c Coil) estimate(way wireFrom, figures ...figure) (Wire, error) {
	all := append([]figure{{"resistance", float64(c.Resistance), float64(c.ResistanceStd), 1e-6, 1e9, " Ω",
		"measure it by volts and amperes"}}, figures...)
	x, u, err := usable(all)
	if err != nil {
		return Wire{}, err
	}
	if c.InHand < 1 || c.InHand > 1000 {
		return Wire{}, &InputError{"wires in hand", "must be a whole number from 1 to 1000", "give 1 for a single wire"}
	}
	n := float64(c.InHand)
	length := func(x []float64) float64 { l, _ := way(x[0], x[1:], n); return l }
	diameter := func(x []float64) float64 { _, s := way(x[0], x[1:], n); return math.Sqrt(4 / math.Pi * s / n) }
	number := func(x []float64) float64 { return gaugeNumber(diameter(x)) }
	y, cov := uncertainty.PropagateAll([]func([]float64) float64{length, diameter, number}, x, uncertainty.Independent(u...))
	w := Wire{Length: quantity.Metre(y[0]), LengthStd: quantity.Metre(cov.U(0)),
		Diameter: quantity.Metre(y[1]), DiameterStd: quantity.Metre(cov.U(1)), GaugeStd: cov.U(2)}
	w.Gauge, w.HasGauge = NearestGauge(w.Diameter)
	return w, nil
}
