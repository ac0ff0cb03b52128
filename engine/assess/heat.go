package assess

import (
	"math"
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

// heats works out how warm each winding was that was read cold and right after
// a run.
func (b Bench) heats(lines []Line) []Line {
	cold := map[check.ID]Line{}
	for _, l := range lines {
		cold[l.Check.ID] = l
	}
	var out []Line
	for _, hot := range lines {
		if hot.Check.Measures != spec.HotResistance {
			continue
		}
		if l, ok := b.heat(cold[coldOf(hot.Check.ID)], hot); ok {
			out = append(out, l)
		}
	}
	return out
}

func coldOf(hot check.ID) check.ID { return check.ID(strings.TrimPrefix(string(hot), "hot-")) }

// hottest is how many times its cold resistance copper may have in a winding that
// still has its enamel: 2.1 at 300 °C over 20 °C (winding.Copper), with room to
// spare.
const hottest = 2.5

// heat is what a winding read cold and hot tells; ok is false while one of the
// two is missing, or the cold one is no number.
func (b Bench) heat(cold, hot Line) (l Line, ok bool) {
	c, h := cold.Measured, hot.Measured
	if !cold.Read() || !hot.Read() || c.State != quantity.Number || !(c.Value > 0) {
		return Line{}, false
	}
	l = Line{Check: heatCheck(hot.Check), Answered: true, Derived: true, Typed: hot.Typed, Measured: h, Air: cold.Air}
	limit, known := b.Profile.Limit(spec.WindingHeat)
	switch {
	case h.State == quantity.Unsettled:
		l.Verdict = spec.Judge(limit, h, cold.Air)
	case h.State == quantity.OverRange:
		l.Verdict = spec.OpenWhenHot(limit, h.Range.Full >= hottest*c.Value)
	default:
		t := b.warmed(cold, hot)
		l.Measured = t.at
		l.Verdict = spec.NoLimitFor(t.at)
		if known {
			l.Verdict = spec.JudgeHeat(limit, t.at, cold.Air, t.below)
		}
	}
	return l, true
}

func heatCheck(hot check.Check) check.Check {
	hot.ID, hot.Feeds, hot.Measures = "heat-of-"+coldOf(hot.ID), false, spec.WindingHeat
	return hot
}

// warmth is a temperature worked out from two resistances.
type warmth struct {
	at meter.Measurement // in °C
	// below is the probability that the winding was cooler than a temperature.
	// Told by whether the hot reading is more or less than the cold one would have
	// become: a ratio to a small cold reading has no normal doubt, this has.
	below func(celsius float64) float64
}

// warmed compares the two readings. On one range the gain cancels between them
// and what the range shares, leads that were not taken off among it, stands in
// both.
func (b Bench) warmed(cold, hot Line) warmth {
	c, h := cold.Measured, hot.Measured
	cov := uncertainty.Independent(c.Own, h.Own, uncertainty.Rectangular(cold.Air.HalfWidth))
	if c.Range.Label == h.Range.Label {
		cov = cov.Plus(uncertainty.Common(1, max(c.Shared, h.Shared), max(c.Shared, h.Shared), 0)).
			Plus(uncertainty.Common(c.Gain, c.Value, h.Value, 0))
	} else {
		cov = cov.Plus(uncertainty.Independent(math.Hypot(c.Shared, c.Gain*c.Value), math.Hypot(h.Shared, h.Gain*h.Value), 0))
	}
	x := []float64{c.Value, h.Value, float64(cold.Air.At)}
	value, std := uncertainty.Propagate(func(x []float64) float64 {
		return float64(winding.Copper.Warmed(quantity.Ohm(x[0]), quantity.Celsius(x[2]), quantity.Ohm(x[1])))
	}, x, cov)
	out := warmth{at: meter.Measurement{State: quantity.Number, Value: value, Shown: value, Std: std, Own: std, Range: h.Range}}
	out.below = func(celsius float64) float64 {
		k := float64(winding.Copper)
		over, u := uncertainty.Propagate(func(x []float64) float64 { return x[1]*(k+x[2]) - x[0]*(k+celsius) }, x, cov)
		return spec.Conformance(over, u, math.Inf(-1), 0)
	}
	return out
}
