package drawing

import "coilbook/engine/check"

// cranking is the exciter under load: the plug together, red pushed in beside
// its lead from behind, black on bare engine metal, the starter turning.
func (s *sheet) cranking() {
	c, r := Point{52, 66}, 41.0
	s.add(Rect{"case", 4, 6, 98, 128, 14, 2.5})
	s.joined(Point{c.X + r, c.Y})
	s.add(Circle{"paper", c, r - 4, 0})
	s.add(flywheel(c, r)...)
	s.add(stator(s.build, c, r*0.7)...)
	s.add(pinion(Point{22, 110}, 12)...)
	s.add(turningArrow(c, r+8, 212, 284)...)
	s.add(words("label", Start, 5, 157, fit(s.words.Turns, textSize, 112)))
	s.add(drawMeter(s.check.Function)...)
	s.bareMetal(Point{88, 119}, s.words.Case, 188, 147, 88)
	s.probes(map[check.Terminal]float64{check.Core: 16, s.check.Red: -24})
}

// joined is the plug together: the leads go on behind it.
func (s *sheet) joined(from Point) {
	const left, split, right, y = 110.0, 125.0, 188.0, 76.0
	p := plug{left, y, 26, right - left, s.ends()}
	s.leads(p, from, from)
	for i, t := range p.ends {
		y := p.contactY(i)
		s.mark(t, Point{right + 4, y})
		s.add(lead(s.touched(t), Point{right, y}, Point{246, y + 22})...)
		s.add(line("ink", 2.5, 243.5, y+28, 248.5, y+16))
	}
	h := p.height()
	s.add(
		Rect{"plug", split - 14, y - h/2 - 6, 28, 9, 2, 2.5},
		Rect{"plug", left, y - h/2 + 3, split - left + 4, h - 6, 3, 2.5},
		Rect{"plug", split, y - h/2, right - split, h, 5, 2.5},
		words("label", Start, left-4, y-h/2-12, fit(s.words.Joined, textSize, 104)),
	)
	for i, t := range p.ends {
		s.add(words("label", Start, split+labelInset, p.contactY(i)+4.7, fit(s.label(t), textSize, labelRoom)))
	}
}
