package part

import (
	"math"
	"strings"

	"coilbook/app/drawing"
)

// classed are the shapes whose class begins so, in the order they are drawn.
func classed(p drawing.Picture, class string) []drawing.Shape {
	var out []drawing.Shape
	for _, s := range p.Shapes {
		if strings.HasPrefix(classOf(s), class) {
			out = append(out, s)
		}
	}
	return out
}

func classOf(s drawing.Shape) string {
	switch s := s.(type) {
	case drawing.Path:
		return s.Class
	case drawing.Circle:
		return s.Class
	case drawing.Rect:
		return s.Class
	case drawing.Text:
		return s.Class
	}
	return ""
}

// box is where a shape stands: its left, top, right and bottom.
func box(s drawing.Shape) [4]float64 {
	switch s := s.(type) {
	case drawing.Circle:
		r := s.R + s.Width/2
		return [4]float64{s.Center.X - r, s.Center.Y - r, s.Center.X + r, s.Center.Y + r}
	case drawing.Rect:
		return [4]float64{s.X, s.Y, s.X + s.W, s.Y + s.H}
	case drawing.Text:
		w := 0.55 * s.Size * float64(len([]rune(s.Text)))
		x := s.At.X - map[drawing.Anchor]float64{drawing.Middle: w / 2, drawing.End: w}[s.Anchor]
		return [4]float64{x, s.At.Y - 0.75*s.Size, x + w, s.At.Y + 0.2*s.Size}
	}
	p := s.(drawing.Path)
	out := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, q := range corners(p) {
		h := p.Width / 2
		out = [4]float64{min(out[0], q.X-h), min(out[1], q.Y-h), max(out[2], q.X+h), max(out[3], q.Y+h)}
	}
	return out
}

func corners(p drawing.Path) []drawing.Point {
	var out []drawing.Point
	for _, s := range p.Steps {
		if s.Op != 'Z' {
			out = append(out, s.P[2])
		}
	}
	return out
}

// areaOf adds up the outlines of shapes.
func areaOf(shapes []drawing.Shape) float64 {
	sum := 0.0
	for _, s := range shapes {
		c := corners(s.(drawing.Path))
		for i, a := range c {
			b := c[(i+1)%len(c)]
			sum += (a.X*b.Y - b.X*a.Y) / 2
		}
	}
	return math.Abs(sum)
}
