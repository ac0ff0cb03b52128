package part

import (
	"math"

	"coilbook/app/drawing"
	"coilbook/engine/spec"
)

// reading is the value with its doubt, or an arrow to where it lies.
func reading(v spec.Verdict, s scale) []drawing.Shape {
	switch {
	case overRange(v):
		return away(v, barRight, 1)
	case !v.HasValue:
		return nil
	case s.before(v.Value):
		return away(v, barLeft, -1)
	case !s.shows(v.Value):
		return away(v, barRight, 1)
	}
	return doubt(v, s)
}

// overRange reports a display that showed more than its range, where that
// decides: the value lies off the right end.
func overRange(v spec.Verdict) bool {
	switch v.Reason {
	case spec.OpenAsMust, spec.LineBroken, spec.PastRange, spec.Above:
		return !v.HasValue
	}
	return false
}

// away is an arrow off an end of the line.
func away(v spec.Verdict, end, outward float64) []drawing.Shape {
	const y = (bellTop + barY) / 2
	class := "bar-line-" + Tone(v.Outcome)
	return []drawing.Shape{
		drawing.Path{Class: class, Width: 4.5, Steps: level(end-28*outward, end+3*outward, y)},
		drawing.Path{Class: class, Width: 4.5, Steps: arrowHead(end+4*outward, y, 7, outward)},
	}
}

// doubt is the bell: filled inside the limit, hatched outside. It stays hollow
// where the probability says nothing.
func doubt(v spec.Verdict, s scale) []drawing.Shape {
	line := "bar-line-" + Tone(v.Outcome)
	b := bellOf(v, s)
	if b.plain() {
		return []drawing.Shape{drawing.Path{Class: line, Width: 3, Steps: upright(s.x(v.Value), dotTop, barY)}}
	}
	shapes := b.area("bar-beside", b.left, b.right)
	if chanceKnown(v) {
		low, high := ends(v.Limit, s)
		shapes = append(shapes, b.area("bar-inside-"+Tone(v.Outcome), low, high)...)
		shapes = append(shapes, b.hatch(line, b.left, low)...)
		shapes = append(shapes, b.hatch(line, high, b.right)...)
	}
	return append(shapes, drawing.Path{Class: line, Width: 2, Steps: b.curve(b.left, b.right)})
}

// dotTop is where a dot on a stem stands.
const dotTop = zoneTop + 8

// marks are the value, a dot, and what the display showed, a hollow pointer
// where it stands elsewhere.
func marks(v spec.Verdict, s scale) []drawing.Shape {
	if !v.HasValue || !s.shows(v.Value) {
		return nil
	}
	dot := drawing.Circle{Class: "bar-point-" + Tone(v.Outcome), Center: drawing.Point{X: s.x(v.Value), Y: barY}, R: 5, Width: 2}
	if bellOf(v, s).plain() {
		dot.Center.Y, dot.R = dotTop, 6
	}
	const elsewhere = 6
	if !v.HasShown || !s.shows(v.Shown) || math.Abs(s.x(v.Shown)-dot.Center.X) < elsewhere {
		return []drawing.Shape{dot}
	}
	return []drawing.Shape{pointer(s.x(v.Shown)), dot}
}

// pointer is a hollow triangle with its tip on the line.
func pointer(x float64) drawing.Shape {
	const half, high = 5, 9
	steps := []drawing.Step{moveTo(x, barY), lineTo(x-half, barY-high), lineTo(x+half, barY-high), {Op: 'Z'}}
	return drawing.Path{Class: "bar-shown", Width: 1.8, Steps: steps}
}
