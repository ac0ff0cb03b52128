package drawing

// probes puts both probes on their points. Red leans up and black down, so that
// both can be on one point, and both lean to the middle.
func (b *board) probes() {
	for _, red := range []bool{false, true} {
		t := b.scene.Black
		if red {
			t = b.scene.Red
		}
		if at, ok := b.anchors[t]; ok {
			b.add(Circle{"halo", at, 11, 3}, b.probe(red, at))
		}
	}
}

// Lengths along a probe on the board from its tip.
const (
	boardNeedle = 15.0
	boardHandle = 57.0
)

// probe is a short one: red ends in a needle and has one ring, black ends blunt
// and has two. It leans to the middle of the board.
func (b *board) probe(red bool, at Point) Shape {
	side := 1.0
	if at.X > BoardColumns*Cell/2 {
		side = -1
	}
	x := func(v float64) float64 { return side * v }
	box := func(class string, from, to, half, r, width float64) Shape {
		return Rect{class, min(x(from), x(to)), -half, to - from, 2 * half, r, width}
	}
	body, ring, on, word, rings := "probe-red", "ring-red", "on-red", b.words.Red, 1
	if !red {
		body, ring, on, word, rings = "probe-black", "ring-black", "on-black", b.words.Black, 2
	}
	end := boardNeedle + boardHandle
	out := []Shape{
		box("paper", boardNeedle-3, end+3, 11, 5, 0),
		boardTip(red, side),
		box(body, boardNeedle, boardNeedle+4, 9.5, 2, 1.6),
		box(body, boardNeedle+3, end, 8, 4, 1.6),
		Text{on, Point{x(boardNeedle + 3 + (boardHandle-10)/2), 4.4}, boardText, Middle, fit(word, boardText, boardHandle-14)},
	}
	for i := range rings {
		at := x(end - 4 - 4*float64(i))
		out = append(out, line(ring, 2, at, -7, at, 7))
	}
	return Group{Move: at, Turn: side * boardLean(red, at), Shapes: out}
}

// boardTip is the metal of a probe that leans to the right, or, where side is
// below zero, to the left.
func boardTip(red bool, side float64) Shape {
	n := side * boardNeedle
	if red {
		return area("tip", 0, 0, side*7, -2, n, -2.4, n, 2.4, side*7, 2)
	}
	return area("tip", 0, -1.8, side*6, -1.8, side*6, -3.2, n, -3.2, n, 3.2, side*6, 3.2, side*6, 1.8, 0, 1.8)
}

// boardLean is the angle of a handle in degrees, below zero upward: what is near
// the upper or the lower edge leans inward.
func boardLean(red bool, at Point) float64 {
	const near = 76.0
	switch {
	case at.Y < near && red:
		return 66
	case at.Y < near:
		return 24
	case red:
		return -44
	case at.Y > BoardRows*Cell-near:
		return -72
	}
	return 44
}
