package part

import (
	"math"

	"coilbook/app/drawing"
	"coilbook/engine/spec"
)

// reach is how far a bell is drawn, in standard uncertainties to either side:
// what is left off is three in a thousand.
const reach = 3

// narrow is the width under which a bell becomes a dot on a stem.
const narrow = 8

// bell is a normal curve over a scale, drawn from left to right. On a line even
// by ratio the curve is the density per ratio, so that equal areas stay equal
// probabilities.
type bell struct {
	mean, std   float64
	scale       scale
	left, right float64
	peak        float64
}

func bellOf(v spec.Verdict, s scale) bell {
	b := bell{mean: v.Value, std: v.Std, scale: s, left: s.x(v.Value - reach*v.Std), right: s.x(v.Value + reach*v.Std)}
	top := v.Value
	if s.ratio { // where value times density is largest
		top = (v.Value + math.Sqrt(v.Value*v.Value+4*v.Std*v.Std)) / 2
	}
	b.peak = b.density(top)
	return b
}

// plain reports a doubt that is too small to be drawn as a bell.
func (b bell) plain() bool { return b.right-b.left < narrow }

func (b bell) density(v float64) float64 {
	d := math.Exp(-(v - b.mean) * (v - b.mean) / (2 * b.std * b.std))
	if b.scale.ratio {
		return d * v
	}
	return d
}

// y is where the curve runs at a place.
func (b bell) y(x float64) float64 {
	return barY - (barY-bellTop)*b.density(b.scale.value(x))/b.peak
}

// curve is the line of the bell between two places.
func (b bell) curve(from, to float64) []drawing.Step {
	n := int(math.Ceil(max((to-from)/2, 60*(to-from)/(b.right-b.left), 2)))
	steps := []drawing.Step{moveTo(from, b.y(from))}
	for i := 1; i <= n; i++ {
		x := from + (to-from)*float64(i)/float64(n)
		steps = append(steps, lineTo(x, b.y(x)))
	}
	return steps
}

// area is the bell between two places, down to the line.
func (b bell) area(class string, from, to float64) []drawing.Shape {
	from, to = max(from, b.left), min(to, b.right)
	if to-from < 0.1 {
		return nil
	}
	steps := append(b.curve(from, to), lineTo(to, barY), lineTo(from, barY), drawing.Step{Op: 'Z'})
	return []drawing.Shape{drawing.Path{Class: class, Steps: steps}}
}

// hatch strokes the bell between two places with slanting lines.
func (b bell) hatch(class string, from, to float64) []drawing.Shape {
	const every = 5.0
	from, to = max(from, b.left), min(to, b.right)
	var steps []drawing.Step
	// Feet at fixed places, so that the lines of two pieces meet.
	for foot := every * math.Floor((from-(barY-bellTop))/every); foot < to; foot += every {
		steps = append(steps, b.slant(foot, from, to)...)
	}
	if steps == nil {
		return nil
	}
	return []drawing.Shape{drawing.Path{Class: class, Width: 1.5, Steps: steps}}
}

// slant is what lies under the curve of a line that rises to the right from a
// foot on the line. Pieces too short to be seen as a line are left out.
func (b bell) slant(foot, from, to float64) []drawing.Step {
	const stride, least = 0.5, 2.5
	var steps []drawing.Step
	start := 0.0
	for up := 0.0; up <= barY-bellTop+stride; up += stride {
		x := foot + up
		if x >= from && x <= to && barY-up >= b.y(x) {
			continue
		}
		if up-start > least {
			steps = append(steps, moveTo(foot+start, barY-start), lineTo(x-stride, barY-up+stride))
		}
		start = up + stride
	}
	return steps
}
