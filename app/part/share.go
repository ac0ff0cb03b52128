package part

import (
	"math"

	"coilbook/app/drawing"
)

// Size of the bar of a probability.
const shareW, shareH = 300.0, 8.0

// Share is the bar of a probability; its figure stands beside it in words.
func Share(p float64) drawing.Picture {
	if !(p > 0) {
		p = 0
	}
	full := math.Max(math.Min(p, 1)*shareW, 3)
	return drawing.Picture{Width: shareW, Height: shareH, Shapes: []drawing.Shape{
		drawing.Rect{Class: "share-rest", X: 0, Y: 0, W: shareW, H: shareH, R: shareH / 2},
		drawing.Rect{Class: "share-full", X: 0, Y: 0, W: full, H: shareH, R: math.Min(shareH, full) / 2},
	}}
}

// Rungs are steps that rise, the first on of them filled: a likelihood as a shape.
func Rungs(on, of int) drawing.Picture {
	const side, gap = 24.0, 2.0
	p := drawing.Picture{Width: side, Height: side}
	w := (side - gap*float64(of-1)) / float64(of)
	for i := range of {
		class := "rung"
		if i < on {
			class = "rung-on"
		}
		h := side * (0.25 + 0.75*float64(i+1)/float64(of)) * 0.9
		p.Shapes = append(p.Shapes, drawing.Rect{Class: class, Width: 1.5, X: float64(i)*(w+gap) + 0.75, Y: side - h, W: w - 1.5, H: h - 1, R: 1})
	}
	return p
}
