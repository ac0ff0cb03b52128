package drawing

// Parts of the ring that drives a current through a winding.

// wire joins the parts of the ring, through points given as x, y, ...
func wire(xy ...float64) []Shape {
	steps := rounded(6, xy...)
	return []Shape{Path{"casing", 6, steps}, Path{"ink", 2.6, steps}}
}

// fuse stands upright around a point: a glass tube between two caps.
func fuse(at Point) []Shape {
	const half, tube, high = 5.5, 10.0, 6.0
	return []Shape{
		Rect{"case", at.X - half, at.Y - tube, 2 * half, 2 * tube, 2, 1.6},
		line("ink", 1.6, at.X, at.Y-tube, at.X, at.Y+tube),
		Rect{"metal", at.X - half - 1, at.Y - tube - 2, 2*half + 2, high, 1.5, 0},
		Rect{"metal", at.X - half - 1, at.Y + tube + 2 - high, 2*half + 2, high, 1.5, 0},
	}
}

// bulb hangs from its base and is lit.
func bulb(base Point) []Shape {
	const r = 10.5
	c := Point{base.X, base.Y + 6 + r}
	var out []Shape
	for _, a := range []float64{-20, 22, 63, 117, 158, 200} {
		p, q := polar(c, r+4.5, a), polar(c, r+10, a)
		out = append(out, line("accent", 2.6, p.X, p.Y, q.X, q.Y))
	}
	return append(out,
		Circle{"wrap", c, r, 2},
		line("accent", 2, c.X-3, c.Y-8, c.X-4.5, c.Y+1, c.X-1.5, c.Y-2.5, c.X+1.5, c.Y+1, c.X+4.5, c.Y-2.5, c.X+3, c.Y-8),
		Rect{"metal", base.X - 7.5, base.Y - 5, 15, 12, 2, 0},
	)
}

// clip bites at a point; its wire leaves behind it. Turn is the way it points,
// clockwise from the right.
func clip(at Point, turn float64) Shape {
	const length = 15.0
	return Group{Move: at, Turn: turn, Shapes: []Shape{
		area("paper", 4, -4, -6, -8, -length, -7, -length, 7, -6, 8, 4, 4),
		area("iron", 2, -2, -7, -6, -length, -4.5, -length, 4.5, -7, 6, 2, 2),
		line("casing", 1.6, 3, 0, -8, 0),
	}}
}
