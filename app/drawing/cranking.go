package drawing

import "coilbook/engine/check"

// joint is where the two halves of the plug stand when it is together: the
// generator's half from left to split, the other one on to right, and the leads
// that go on behind it as far as tail says.
type joint struct {
	left, split, right, y, pitch float64
	tail                         Point
}

// cranking is the exciter under load: the plug together, red pushed in beside
// its lead from behind, black on bare engine metal, the starter turning.
func (s *sheet) cranking() {
	c, r := Point{52, 66}, 41.0
	s.engine(98, c, r)
	s.joined(joint{110, 125, 188, 76, 26, Point{58, 22}}, s.ends(), Point{c.X + r, c.Y})
	s.turning(c, r)
	s.add(drawMeter(s.check.Function)...)
	s.bareMetal(Point{88, 119}, s.words.Case, 188, 147, 88)
	s.probes(map[check.Terminal]float64{check.Core: 16, s.check.Red: -24})
}

// engine is the case, with the starter's pinion while that turns it, and what it
// does.
func (s *sheet) engine(width float64, c Point, r float64) {
	s.add(Rect{"case", 4, 6, width, 128, 14, 2.5})
	if s.check.Engine == check.Cranking {
		s.add(pinion(Point{22, c.Y + r + 3}, 12)...)
	}
	s.add(words("label", Start, 5, 157, fit(s.engineWord(), textSize, 112)))
}

// turning is the flywheel over the stator, with an arrow round it.
func (s *sheet) turning(c Point, r float64) {
	s.resting(c, r)
	s.add(turningArrow(c, r+8, 212, 284)...)
}

// resting is the flywheel over its stator, standing still.
func (s *sheet) resting(c Point, r float64) {
	s.add(Circle{"paper", c, r - 4, 0})
	s.add(flywheel(c, r)...)
	s.add(stator(s.build, c, r*0.7)...)
}

// joined is the plug together: the leads go on behind it.
func (s *sheet) joined(j joint, ends []check.Terminal, from Point) {
	p := plug{j.left, j.y, j.pitch, j.right - j.left, ends}
	s.leads(p, from, from)
	for i, t := range p.ends {
		y := p.contactY(i)
		s.mark(t, Point{j.right + 4, y})
		s.add(j.goesOn(s.touched(t), y)...)
	}
	h := p.height()
	s.add(
		Rect{"plug", j.split - 14, j.y - h/2 - 6, 28, 9, 2, 2.5},
		Rect{"plug", j.left, j.y - h/2 + 3, j.split - j.left + 4, h - 6, 3, 2.5},
		Rect{"plug", j.split, j.y - h/2, j.right - j.split, h, 5, 2.5},
		words("label", Start, j.left-3, j.y-h/2-12, fit(s.words.Joined, textSize, 104)),
	)
	for i, t := range p.ends {
		s.add(words("label", Start, j.split+labelInset, p.contactY(i)+4.7, fit(s.label(t), textSize, labelRoom)))
	}
}

// goesOn is a lead behind the plug, cut off with a stroke.
func (j joint) goesOn(live bool, y float64) []Shape {
	end := Point{j.right + j.tail.X, y + j.tail.Y}
	return append(lead(live, Point{j.right, y}, end), line("ink", 2.5, end.X-2.5, end.Y+6, end.X+2.5, end.Y-6))
}
