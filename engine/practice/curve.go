package practice

import "coilbook/engine/machine"

// Output is what a machine gives at a speed, with its fault and without.
type Output struct {
	RPM         float64 // 1/min
	Sound, With machine.Supply
}

// curveSpeeds are those of the curves, in rpm.
var curveSpeeds = []float64{1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500}

// Curve is the hidden machine over speed with its fault, beside the same machine
// without it, both by formula: warm where the fault shows only then. Where the
// Known is an estimate.
func (b Bench) Curve() []Output {
	out := make([]Output, len(curveSpeeds))
	for i, rpm := range curveSpeeds {
		out[i] = Output{rpm, b.sound.ChargeAt(rpm, b.fault.HotOnly), b.hidden.ChargeAt(rpm, b.fault.HotOnly)}
	}
	return out
}
