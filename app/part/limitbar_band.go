package part

import (
	"math"

	"coilbook/app/drawing"
	"coilbook/engine/spec"
)

// sides are the two ends of a limit. A limit on a fraction holds both ways.
func sides(l spec.Limit) (low, high float64) {
	if l.Ratio {
		return -l.High, l.High
	}
	return l.Low, l.High
}

// ends are the places of the sides; an open side runs to the end of the line.
func ends(l spec.Limit, s scale) (a, b float64) {
	low, high := sides(l)
	a, b = barLeft, barRight
	if !math.IsInf(low, 0) {
		a = s.x(low)
	}
	if !math.IsInf(high, 0) {
		b = s.x(high)
	}
	return a, b
}

// ground is the line, and the room above it that the limit allows.
func ground(l spec.Limit, s scale) []drawing.Shape {
	a, b := ends(l, s)
	return []drawing.Shape{
		drawing.Rect{Class: "bar-zone", X: a, Y: zoneTop, W: b - a, H: barY - zoneTop},
		drawing.Path{Class: "bar-axis", Width: 2, Steps: level(barLeft, barRight, barY)},
	}
}

// band marks on the line what the limit allows: a post where it ends, an arrow
// where it goes on.
func band(l spec.Limit, s scale) []drawing.Shape {
	a, b := ends(l, s)
	low, high := sides(l)
	return []drawing.Shape{
		drawing.Path{Class: "bar-band", Width: 5, Steps: level(a, b, barY)},
		bandEnd(a, -1, math.IsInf(low, 0)), bandEnd(b, 1, math.IsInf(high, 0)),
	}
}

func bandEnd(x, outward float64, open bool) drawing.Shape {
	if open {
		return drawing.Path{Class: "bar-band", Width: 3, Steps: arrowHead(x+4*outward, barY, 6, outward)}
	}
	return drawing.Path{Class: "bar-band", Width: 2.5, Steps: upright(x, zoneTop, barY+4)}
}
