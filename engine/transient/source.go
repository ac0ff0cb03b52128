package transient

import "math"

// Source is a voltage in time.
type Source interface{ At(t float64) float64 }

// Constant is a voltage that stays.
type Constant float64

// At is the voltage.
func (c Constant) At(float64) float64 { return float64(c) }

// Sine is Volts·sin(2π·Hertz·t + Phase), the phase in radians.
type Sine struct{ Volts, Hertz, Phase float64 }

// At is the voltage at a time.
func (s Sine) At(t float64) float64 { return s.Volts * math.Sin(2*math.Pi*s.Hertz*t+s.Phase) }

// Pulse is Volts for Width out of every Period, from Delay on, and zero else. No
// Period is a single pulse.
type Pulse struct{ Volts, Width, Period, Delay float64 }

// At is the voltage at a time; an edge belongs to what follows it.
func (p Pulse) At(t float64) float64 {
	if t < p.Delay || !(p.since(t) < p.Width) {
		return 0
	}
	return p.Volts
}

// since is the time from the beginning of the latest pulse.
func (p Pulse) since(t float64) float64 {
	if p.Period > 0 {
		return math.Mod(t-p.Delay, p.Period)
	}
	return t - p.Delay
}

// hair is a time that no edge is as near to another.
func (p Pulse) hair() float64 { return 1e-9 * p.Width }

// after is the voltage just after a time, which may be an edge rounded down.
func (p Pulse) after(t float64) float64 { return p.At(t + p.hair()) }

// next is the first edge after t, +Inf for none.
func (p Pulse) next(t float64) float64 {
	t += p.hair()
	if t < p.Delay {
		return p.Delay
	}
	begun := t - p.since(t)
	switch {
	case p.Period > 0 && p.Width >= p.Period:
		return math.Inf(1)
	case t < begun+p.Width:
		return begun + p.Width
	case p.Period > 0:
		return begun + p.Period
	}
	return math.Inf(1)
}

// Func is a voltage given by a function. A jump in it is taken as a slope over
// one step.
type Func func(t float64) float64

// At calls the function.
func (f Func) At(t float64) float64 { return f(t) }
