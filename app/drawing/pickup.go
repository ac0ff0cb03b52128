package drawing

import "coilbook/engine/check"

// rim draws the part of a big flywheel that faces the pickup, with the
// reluctor lump on it, and gives the x of the lump's face. Thick is the rim's.
func (s *sheet) rim(c Point, r, spread, thick float64) float64 {
	lump, half := thick*0.55, spread*0.24
	s.add(
		Path{"magnet", 0, ringSector(c, r-thick*1.7, r-thick*0.9, -spread*0.8, -spread*0.1)},
		Path{"magnet", 0, ringSector(c, r-thick*1.7, r-thick*0.9, spread*0.1, spread*0.8)},
		Path{"iron", 0, ringSector(c, r-thick, r, -spread, spread)},
		Path{"iron", 0, ringSector(c, r-1, r+lump, -half, half)},
	)
	return c.X + r + lump
}

// pickupAtPlug is the pickup's resistance, at its two contacts.
func (s *sheet) pickupAtPlug() {
	p := s.newPlug(plugRight, plugY, []check.Terminal{check.PickupA, check.PickupB})
	face := s.rim(Point{-85, plugY}, 120, 27, 14)
	tip := Point{face + 5, plugY}
	back := Point{tip.X + 46, plugY}
	s.leads(p, back, back)
	s.add(Group{Move: tip, Scale: 1.15, Shapes: pickup()})
	s.drawPlug(p)
	s.add(words("label", Middle, tip.X+22, plugY+44, fit(s.words.Pickup, textSize, 84)))
	s.heat()
	s.add(drawMeter(s.check.Function)...)
	if s.touched(check.Core) {
		s.add(Rect{"case", 4, 128, 102, 22, 6, 2.5})
		s.bareMetal(Point{90, 138}, s.words.Case, 192, 147, 84)
	}
	s.probes(map[check.Terminal]float64{check.Core: 8})
}

// gap is the feeler leaf between the reluctor lump and the pickup.
func (s *sheet) gap() {
	const gap, middle, scale = 13.0, 92.0, 1.9
	face := s.rim(Point{-84, middle}, 196, 16, 22)
	at := Point{face + gap/2, middle}
	s.mark(check.ReluctorGap, at)
	s.add(Group{Move: Point{face + gap, middle}, Scale: scale, Shapes: pickup()})
	s.add(words("label", Start, face+gap+44*scale+9, middle+4.7, fit(s.words.Pickup, textSize, 100)))
	s.add(feeler(at)...)
	s.add(words("label", Start, at.X+124, 26, fit(s.words.Leaf, textSize, 96)))
	s.measure(face, face+gap, 155)
}

// feeler is the gauge: one leaf down in the gap, the others in the holder.
func feeler(at Point) []Shape {
	pivot := Point{at.X, 20}
	return []Shape{
		Group{Move: pivot, Turn: 32, Shapes: []Shape{Rect{"leaf", 0, -4.5, 60, 9, 4.5, 0}}},
		Group{Move: pivot, Turn: 15, Shapes: []Shape{Rect{"leaf", 0, -4.5, 92, 9, 4.5, 0}}},
		Rect{"paper", at.X - 5, pivot.Y, 10, at.Y + 32 - pivot.Y, 2, 0},
		Rect{"leaf", at.X - 3, pivot.Y, 6, at.Y + 30 - pivot.Y, 1.5, 0},
		Rect{"iron", pivot.X - 12, pivot.Y - 12, 128, 24, 12, 0},
		Circle{"paper", pivot, 4, 0},
	}
}

// measure points two arrows at a distance from outside.
func (s *sheet) measure(left, right, y float64) {
	const length, head = 26.0, 9.0
	s.add(
		line("ink", 1.6, left, y-25, left, y+7), line("ink", 1.6, right, y-25, right, y+7),
		line("accent", 3.5, left-length, y, left-head, y), line("accent", 3.5, right+head, y, right+length, y),
		area("sign-accent", left-1, y, left-1-head, y-6, left-1-head, y+6),
		area("sign-accent", right+1, y, right+1+head, y-6, right+1+head, y+6),
		words("label", Start, right+length+7, y+4.7, fit(s.words.Gap, textSize, 110)),
	)
}
