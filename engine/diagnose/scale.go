package diagnose

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// scale brings the readings of a check to numbers in which errors are about as
// large everywhere: ratios above unit, differences below.
type scale struct {
	unit   float64 // 0 is linear
	errors float64 // standard deviation of what formulas and machines leave out
}

// scaleOf gives the scale of a check. The errors: assumptions, no source; the
// formulas themselves are far nearer to the simulation.
func scaleOf(c check.Check) scale {
	switch {
	case c.Instrument == check.FeelerGauge:
		return scale{50e-6, 0.15}
	case c.PeakHold:
		return scale{0.3, 0.2}
	case c.Function == meter.Ohms:
		return scale{0.15, 0.07}
	case c.Function == meter.AmpsDC:
		return scale{3e-3, 0.4}
	case c.Function == meter.VoltsAC:
		return scale{0.3, 0.15}
	case c.Expected < 5: // a drop
		return scale{0.05, 0.3}
	}
	return scale{0, 0.15}
}

func (s scale) of(v float64) float64 {
	if s.unit == 0 {
		return v
	}
	return math.Asinh(v / s.unit)
}

// back is the value of a scaled number.
func (s scale) back(y float64) float64 {
	if s.unit == 0 {
		return y
	}
	return s.unit * math.Sinh(y)
}

// doubt is the standard deviation of a scaled number for a standard uncertainty of
// its value: half the span from one below to one above. Near zero the scale is
// steep, and no magnitude is below it.
func (s scale) doubt(v, of float64) float64 {
	low := v - of
	if v >= 0 {
		low = math.Max(low, 0)
	}
	return (s.of(v+of) - s.of(low)) / 2
}
