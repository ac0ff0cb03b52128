package part

import (
	"math"

	"coilbook/app/drawing"
	"coilbook/app/words"
	"coilbook/engine/spec"
)

// LimitBar draws a limit as a band on a line, and the value with its doubt (two
// standard uncertainties to either side) over it: 340 by 46.
func LimitBar(v spec.Verdict) drawing.Picture {
	p := drawing.Picture{Width: barWidth, Height: 46, Label: barLabel(v)}
	if !v.HasLimit {
		return p
	}
	s := scaleFor(v)
	p.Shapes = append(p.Shapes, drawing.Path{Class: "bar-axis", Width: 2, Steps: level(barLeft, barRight, barY)})
	p.Shapes = append(p.Shapes, band(v, s)...)
	if v.HasValue {
		p.Shapes = append(p.Shapes, point(v, s)...)
	} else if v.Reason == spec.OpenAsMust || v.Reason == spec.LineBroken || v.Reason == spec.PastRange {
		p.Shapes = append(p.Shapes, beyond(v)...)
	}
	return p
}

const barWidth, barLeft, barRight, barY = 340.0, 6.0, 334.0, 15.0

func barLabel(v spec.Verdict) string {
	if !v.HasValue {
		return words.Limit(v.Limit)
	}
	return words.Doubt(v) + ", " + words.Limit(v.Limit)
}

// scale maps values to places, linear between from and to.
type scale struct{ from, to float64 }

func (s scale) x(v float64) float64 {
	f := (v - s.from) / (s.to - s.from)
	return barLeft + min(max(f, 0), 1)*(barRight-barLeft)
}

func scaleFor(v spec.Verdict) scale {
	low, high := v.Limit.Low, v.Limit.High
	if v.Limit.Ratio {
		low = -high
	}
	points := []float64{}
	for _, p := range []float64{low, high} {
		if !math.IsInf(p, 0) {
			points = append(points, p)
		}
	}
	if !v.Limit.Ratio {
		points = append(points, 0)
	}
	from, to := points[0], points[0]
	for _, p := range points {
		from, to = min(from, p), max(to, p)
	}
	if math.IsInf(high, 1) {
		to = max(to, 2*low)
	}
	// A reading far outside must not squeeze the limit to a hair: it is pinned
	// to the end of the line.
	if v.HasValue {
		span := to - from
		from = max(min(from, v.Value-2*v.Std), from-span)
		to = min(max(to, v.Value+2*v.Std), to+span)
	}
	margin := 0.06 * (to - from)
	if v.Limit.Ratio || from < 0 {
		from -= margin
	}
	return scale{from, to + margin}
}

func band(v spec.Verdict, s scale) []drawing.Shape {
	low, high := v.Limit.Low, v.Limit.High
	if v.Limit.Ratio {
		low = -high
	}
	a, b := barLeft, barRight
	if !math.IsInf(low, 0) {
		a = s.x(low)
	}
	if !math.IsInf(high, 0) {
		b = s.x(high)
	}
	label := drawing.Text{Class: "bar-words", At: drawing.Point{X: min(max((a+b)/2, 92), barWidth-92), Y: 42}, Size: 13.5, Anchor: drawing.Middle, Text: words.Limit(v.Limit)}
	return []drawing.Shape{drawing.Rect{Class: "bar-limit", X: a, Y: barY - 9, W: max(b-a, 3), H: 18, R: 2, Width: 2}, label}
}

func point(v spec.Verdict, s scale) []drawing.Shape {
	tone := Tone(v.Outcome)
	x := s.x(v.Value)
	a, b := s.x(v.Value-2*v.Std), s.x(v.Value+2*v.Std)
	return []drawing.Shape{
		drawing.Path{Class: "bar-doubt-" + tone, Width: 6, Steps: level(a, b, barY)},
		drawing.Path{Class: "bar-doubt-" + tone, Width: 3, Steps: upright(a)},
		drawing.Path{Class: "bar-doubt-" + tone, Width: 3, Steps: upright(b)},
		drawing.Circle{Class: "bar-point-" + tone, Center: drawing.Point{X: x, Y: barY}, R: 6.5},
	}
}

// beyond is an arrow off the right end: more than the range can show.
func beyond(v spec.Verdict) []drawing.Shape {
	tone := Tone(v.Outcome)
	return []drawing.Shape{
		drawing.Path{Class: "bar-doubt-" + tone, Width: 4, Steps: level(barRight-26, barRight-3, barY)},
		drawing.Path{Class: "bar-doubt-" + tone, Width: 4, Steps: []drawing.Step{
			moveTo(barRight-10, barY-7), lineTo(barRight-2, barY), lineTo(barRight-10, barY+7)}},
	}
}

func level(a, b, y float64) []drawing.Step {
	return []drawing.Step{moveTo(a, y), lineTo(b, y)}
}

func upright(x float64) []drawing.Step {
	return []drawing.Step{moveTo(x, barY-6), lineTo(x, barY+6)}
}

func moveTo(x, y float64) drawing.Step {
	return drawing.Step{Op: 'M', P: [3]drawing.Point{2: {X: x, Y: y}}}
}

func lineTo(x, y float64) drawing.Step {
	return drawing.Step{Op: 'L', P: [3]drawing.Point{2: {X: x, Y: y}}}
}
