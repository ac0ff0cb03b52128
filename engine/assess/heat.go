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
		before := cold[coldOf(hot.Check.ID)]
		if m, ok := b.warmed(before, hot); ok {
			out = append(out, b.heatLine(hot.Check, m))
		}
	}
	return out
}

func coldOf(hot check.ID) check.ID { return check.ID(strings.TrimPrefix(string(hot), "hot-")) }

// warmed is the temperature of a winding in °C from its resistance cold and hot.
// On one range the gain cancels between the two and what the range shares, leads
// that were not taken off among it, stands in both.
func (b Bench) warmed(cold, hot Line) (meter.Measurement, bool) {
	c, h := cold.Measured, hot.Measured
	if !cold.Read() || !hot.Read() || c.State != quantity.Number || h.State != quantity.Number || !(c.Value > 0) || !(h.Value > 0) {
		return meter.Measurement{}, false
	}
	cov := uncertainty.Independent(c.Own, h.Own, uncertainty.Rectangular(b.Air.HalfWidth))
	if c.Range.Label == h.Range.Label {
		cov = cov.Plus(uncertainty.Common(1, max(c.Shared, h.Shared), max(c.Shared, h.Shared), 0)).
			Plus(uncertainty.Common(c.Gain, c.Value, h.Value, 0))
	} else {
		cov = cov.Plus(uncertainty.Independent(math.Hypot(c.Shared, c.Gain*c.Value), math.Hypot(h.Shared, h.Gain*h.Value), 0))
	}
	value, std := uncertainty.Propagate(func(x []float64) float64 {
		return float64(winding.Copper.Warmed(quantity.Ohm(x[0]), quantity.Celsius(x[2]), quantity.Ohm(x[1])))
	}, []float64{c.Value, h.Value, float64(b.Air.At)}, cov)
	return meter.Measurement{State: quantity.Number, Value: value, Shown: value, Std: std, Own: std, Range: h.Range}, true
}

func (b Bench) heatLine(hot check.Check, m meter.Measurement) Line {
	c := hot
	c.ID, c.Feeds, c.Measures = "heat-of-"+coldOf(hot.ID), false, spec.WindingHeat
	l := Line{Check: c, Answered: true, Derived: true, Measured: m, Verdict: spec.NoLimitFor(m)}
	if limit, ok := b.Profile.Limit(spec.WindingHeat); ok {
		l.Verdict = spec.JudgeHeat(limit, m, b.Air)
	}
	return l
}
