package drawing

import "math"

// flywheel is the cup around the stator, with its magnets inside the rim.
func flywheel(c Point, r float64) []Shape {
	out := []Shape{Path{"iron", 0, ringSector(c, r*0.83, r, 0, 360)}}
	for i := range 6 {
		a := 60*float64(i) + 6
		out = append(out, Path{"magnet", 0, ringSector(c, r*0.76, r*0.85, a, a+48)})
	}
	return out
}

// ringSector is the outline of a part of a ring.
func ringSector(c Point, inner, outer, from, to float64) []Step {
	steps := append(arc('M', c, outer, from, to), arc('L', c, inner, to, from)...)
	return append(steps, closed())
}

// turningArrow goes round c clockwise and ends in a head.
func turningArrow(c Point, r, from, to float64) []Shape {
	const head = 11.0 // along the arc
	neck := to - head/r*180/math.Pi
	tip, out, in := polar(c, r, to), polar(c, r+6.5, neck), polar(c, r-6.5, neck)
	return []Shape{
		Path{"accent", 4, arc('M', c, r, from, neck)},
		area("sign-accent", tip.X, tip.Y, out.X, out.Y, in.X, in.Y),
	}
}

// pinion is the starter's gear.
func pinion(c Point, r float64) []Shape {
	var out []Shape
	for i := range 8 {
		out = append(out, Group{Move: c, Turn: 45 * float64(i), Shapes: []Shape{Rect{"iron", -1.8, -r, 3.6, r, 1, 0}}})
	}
	return append(out, Circle{"iron", c, r * 0.76, 0}, Circle{"paper", c, r * 0.27, 0})
}

// pickup points its iron tip to the left; the origin is the end of the tip.
func pickup() []Shape {
	return []Shape{
		Rect{"metal", 0, -7, 14, 14, 1.5, 0},
		Rect{"copper", 12, -14, 20, 28, 3, 0},
		line("turn", 1.3, 16, -13, 16, 13), line("turn", 1.3, 20, -13, 20, 13),
		line("turn", 1.3, 24, -13, 24, 13), line("turn", 1.3, 28, -13, 28, 13),
		Rect{"iron", 32, -20, 12, 40, 3, 0},
		Circle{"paper", Point{38, -13}, 2.6, 0},
		Circle{"paper", Point{38, 13}, 2.6, 0},
	}
}
