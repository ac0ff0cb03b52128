package diagnose

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
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
	case c.Function == meter.Diode:
		return scale{0.1, 0.1}
	case c.Function == meter.AmpsDC:
		return scale{3e-3, 0.4}
	case c.Measures == spec.ChargeAC: // the phases of one generator are alike
		return scale{0.3, 0.05}
	case c.Function == meter.VoltsAC:
		return scale{0.3, 0.1}
	case c.Expected < 5: // a drop
		return scale{0.05, 0.3}
	}
	return scale{0, 0.15}
}

// alike is the covariance of two checks' scaled numbers by what formulas and drawn
// machines leave out of both alike: how much a generator or a coil gives at all, how
// far a battery's voltage rises with a current. It widens what is thought of each, and
// leaves what is thought of their difference. Assumptions, no source.
func alike(a, b check.Check) float64 {
	sd := leftOut(a)
	if sd == 0 || leftOut(b) != sd || a.Part != b.Part || a.Function != b.Function || a.PeakHold != b.PeakHold {
		return 0
	}
	return sd * sd
}

func leftOut(c check.Check) float64 {
	switch {
	case c.Instrument != check.Multimeter:
		return 0
	case c.PeakHold:
		return 0.2
	case c.Measures == spec.ChargeAC:
		return 0.25
	case c.Function == meter.VoltsAC && c.Measures != spec.PlugDrop: // pulses of a starter's speed
		return 0.45
	case c.Function == meter.VoltsDC && c.Part == check.Battery && machine.Running(c.Engine) > 0:
		return 0.2
	}
	return 0
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
