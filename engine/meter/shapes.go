package meter

import (
	"math"

	"coilbook/engine/quantity"
)

// The shapes below have an amplitude of 1 V; Times makes them larger. Their
// averages are integrals worked out by hand and tested against the midpoint
// rule. A parameter that has no such shape gives no waveform.

func shape(a Averages, at func(phase float64) float64, corners ...float64) Waveform {
	return Waveform{at: at, corners: corners, closed: &a, times: 1}
}

// even is a shape whose second half mirrors its first: its mean is zero.
func even(peak, rectified, rms float64, at func(phase float64) float64, corners ...float64) Waveform {
	r := quantity.Volt(rectified)
	a := Averages{Peak: quantity.Volt(peak), Rectified: r, RectifiedAC: r, RMSAC: quantity.Volt(rms)}
	return shape(a, at, append(corners, 0.5)...)
}

// oneSided is a shape that never falls below zero; deviation is the mean
// magnitude about its mean.
func oneSided(mean, square, deviation float64, at func(phase float64) float64, corners ...float64) Waveform {
	m := quantity.Volt(mean)
	a := Averages{
		Peak: 1, Mean: m, Rectified: m, RectifiedAC: quantity.Volt(deviation),
		RMSAC: quantity.Volt(math.Sqrt(max(square-mean*mean, 0))),
	}
	return shape(a, at, corners...)
}

func sine(phase float64) float64 { return math.Sin(2 * math.Pi * phase) }

// DC is a steady voltage, plus at the red lead.
func DC() Waveform {
	return oneSided(1, 1, 0, func(float64) float64 { return 1 })
}

// Sine is what meters are calibrated with.
func Sine() Waveform { return even(1, 2/math.Pi, math.Sqrt(0.5), sine) }

// FullRectified is a sine behind a full-wave rectifier.
func FullRectified() Waveform {
	const mean = 2 / math.Pi
	return oneSided(mean, 0.5, 2*hump(mean), func(p float64) float64 { return math.Abs(sine(p)) }, 0.5)
}

// HalfRectified is a sine behind one diode.
func HalfRectified() Waveform {
	const mean = 1 / math.Pi
	return oneSided(mean, 0.25, hump(mean), func(p float64) float64 { return max(sine(p), 0) }, 0.5)
}

// hump is twice the mean over a whole period of what one half of a sine rises
// above a level: half of all deviation from a mean lies above it.
func hump(level float64) float64 {
	a := math.Asin(level)
	return (2*math.Cos(a) - level*(math.Pi-2*a)) / math.Pi
}

// Square is up for half of the period and down for the other half.
func Square() Waveform { return BipolarPulse(1) }

// Triangle rises and falls evenly.
func Triangle() Waveform { return Trapezoid(0) }

// UnipolarPulse is up for the share duty of its period and zero else. Duty is
// above 0 and at most 1.
func UnipolarPulse(duty float64) Waveform {
	if !(duty > 0 && duty <= 1) {
		return Waveform{}
	}
	return oneSided(duty, duty, 2*duty*(1-duty), func(p float64) float64 {
		if p < duty {
			return 1
		}
		return 0
	}, duty)
}

// BipolarPulse is up for half of the share duty of its period and, half a
// period later, down for as long. Duty is above 0 and at most 1.
func BipolarPulse(duty float64) Waveform {
	if !(duty > 0 && duty <= 1) {
		return Waveform{}
	}
	return even(1, duty, math.Sqrt(duty), func(p float64) float64 {
		switch {
		case p < duty/2:
			return 1
		case p >= 0.5 && p < 0.5+duty/2:
			return -1
		}
		return 0
	}, duty/2, 0.5+duty/2)
}

// PhaseCut is a sine that is zero until the firing angle of each half period, as
// behind two thyristors with a resistor for load. The angle is at least 0° and
// below 180°.
func PhaseCut(firing float64) Waveform {
	if !(firing >= 0 && firing < 180) {
		return Waveform{}
	}
	a := firing * math.Pi / 180
	peak := math.Sin(max(a, math.Pi/2))
	square := (math.Pi - a + math.Sin(2*a)/2) / (2 * math.Pi)
	return even(peak, (1+math.Cos(a))/math.Pi, math.Sqrt(square), func(p float64) float64 {
		if math.Mod(p*360, 180) < firing {
			return 0
		}
		return sine(p)
	}, firing/360, 0.5+firing/360)
}

// SixPulse is what a three-phase bridge without a capacitor gives: the tops of
// six sines. Its amplitude is the peak between two lines.
func SixPulse() Waveform {
	const mean = 3 / math.Pi
	square := 0.5 + 3*math.Sqrt(3)/(4*math.Pi)
	b := math.Acos(mean)
	deviation := 2 * mean * (2*math.Sin(b) - 2*mean*b)
	return oneSided(mean, square, deviation, func(p float64) float64 {
		return math.Cos((math.Mod(6*p, 1) - 0.5) * math.Pi / 3)
	}, 1.0/6, 2.0/6, 3.0/6, 4.0/6, 5.0/6)
}

// ThirdHarmonic is sin θ + share·sin 3θ. A share above zero flattens the top of
// the sine, one below zero sharpens it.
func ThirdHarmonic(share float64) Waveform {
	at := func(p float64) float64 { return sine(p) + share*math.Sin(6*math.Pi*p) }
	if !(share >= -1.0/3 && share <= 1) { // it crosses zero more than twice
		return Waveform{at: at, times: 1}
	}
	return even(thirdPeak(share), 2/math.Pi*(1+share/3), math.Sqrt((1+share*share)/2), at)
}

// thirdPeak: the slope is zero at the middle and where sin²θ = (1+3k)/12k.
func thirdPeak(k float64) float64 {
	peak := math.Abs(1 - k)
	if q := (1 + 3*k) / (12 * k); q > 0 && q < 1 {
		s := math.Sqrt(q)
		peak = max(peak, math.Abs(s*(1+3*k)-4*k*s*s*s))
	}
	return peak
}

// Trapezoid rises evenly, stays up for flat degrees and falls evenly, then does
// the same below zero. Flat is from 0° (a triangle) to 180° (a square).
func Trapezoid(flat float64) Waveform {
	switch {
	case !(flat >= 0 && flat <= 180):
		return Waveform{}
	case flat == 180:
		return Square() // no ramps to divide by
	}
	top, ramp := flat/180, (180-flat)/2
	return even(1, (1+top)/2, math.Sqrt((1+2*top)/3), func(p float64) float64 {
		up := 1.0
		if p >= 0.5 {
			up, p = -1, p-0.5
		}
		return up * min(1, p*360/ramp, (180-p*360)/ramp)
	}, ramp/360, 0.5-ramp/360, 0.5+ramp/360, 1-ramp/360)
}
