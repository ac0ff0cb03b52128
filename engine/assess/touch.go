package assess

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/spec"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

// touch finds where the charge winding touches the core, from the readings of
// each lead to it and between the leads; nil where nothing reads on scale, or
// not all is read.
func (b Bench) touch(lines []Line) *winding.Touch {
	leads := b.State.Setup.Build.ChargeLeads
	c, known := map[int]winding.Connection{2: winding.Single, 3: winding.Star}[leads]
	var core, between []Line
	onScale := false
	for _, l := range lines {
		switch {
		case !l.Read() || l.Measured.State == quantity.Unsettled:
		case l.Check.Measures == spec.ChargeToCore:
			core = append(core, l)
			onScale = onScale || l.Measured.State == quantity.Number
		case l.Check.Measures == spec.ChargePair:
			between = append(between, l)
		}
	}
	if !known || !onScale || b.badLeads || len(core) != leads || len(between) != len(b.State.Setup.Build.Pairs()) {
		return nil
	}
	t := winding.ReadTouch(c, ohmsOf(core), ohmsOf(between), covarianceOf(append(core, between...)))
	return &t
}

func ohmsOf(lines []Line) (out []quantity.Ohm) {
	for _, l := range lines {
		r := quantity.Ohm(l.Measured.Value)
		if l.Measured.State == quantity.OverRange {
			r = quantity.Ohm(math.Inf(1))
		}
		out = append(out, r)
	}
	return out
}

// covarianceOf holds what each reading has of its own, and the offset and gain
// that those of one range share.
func covarianceOf(lines []Line) uncertainty.Covariance {
	own := make([]float64, len(lines))
	ranges := map[string][]int{}
	for i, l := range lines {
		if l.Measured.State == quantity.Number {
			own[i] = l.Measured.Own
			ranges[l.Measured.Range.Label] = append(ranges[l.Measured.Range.Label], i)
		}
	}
	cov := uncertainty.Independent(own...)
	for _, members := range ranges {
		alike, values := make([]float64, len(lines)), make([]float64, len(lines))
		shared, gain := 0.0, 0.0
		for _, i := range members {
			m := lines[i].Measured
			alike[i], values[i] = 1, m.Value
			shared, gain = max(shared, m.Shared), max(gain, m.Gain)
		}
		cov = cov.Plus(uncertainty.Common(shared, alike...)).Plus(uncertainty.Common(gain, values...))
	}
	return cov
}
