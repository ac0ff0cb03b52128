package drawing

import "coilbook/engine/check"

// look is a check that eyes do: no probe, no meter.
func (s *sheet) look() {
	switch s.check.Looks {
	case check.FuseBlown:
		s.fuses()
	case check.PlugBurnt:
		s.plugHalvesApart()
	default:
		s.spark()
	}
	s.eye(Point{318, 118})
}

// lookAlternative says the picture of a look in words.
func (s *sheet) lookAlternative() []string {
	switch s.check.Looks {
	case check.FuseBlown:
		return []string{s.words.Fuse, s.words.Eyes}
	case check.PlugBurnt:
		return []string{s.words.Apart, s.words.Eyes}
	}
	out := []string{s.sparking() + ": " + s.words.Case, s.engineWord()}
	if s.check.Looks == check.SparkWithoutKill {
		out = append(out, s.words.KillOff)
	}
	if s.check.Hot {
		out = append(out, s.words.Hot)
	}
	return append(out, s.words.Eyes)
}

// sparking names what a spark is looked for at.
func (s *sheet) sparking() string {
	switch s.check.Looks {
	case check.SparkAtLead:
		return s.words.BareLead
	case check.SparkAtGoodPlug, check.SparkWarm:
		return s.words.GoodPlug
	}
	return s.words.SparkPlug
}

// eye is open.
func (s *sheet) eye(c Point) {
	const half = 20.0
	lid := []Step{moveTo(c.X-half, c.Y), curveTo(c.X-8, c.Y-16, c.X+8, c.Y-16, c.X+half, c.Y), curveTo(c.X+8, c.Y+16, c.X-8, c.Y+16, c.X-half, c.Y)}
	s.add(Path{"ink", 2.5, append(lid, closed())}, Circle{"sign-accent", c, 7, 0}, Circle{"dial", c, 3, 0})
	s.add(words("label", End, 352, c.Y+34, fit(s.words.Eyes, textSize, 110)))
}

// fuses are a whole one and a blown one.
func (s *sheet) fuses() {
	for i, word := range []string{s.words.No, s.words.Yes} {
		y := 46 + 76*float64(i)
		s.add(Rect{"case", 92, y - 16, 150, 32, 6, 2.5})
		if i == 0 {
			s.add(line("ink", 4, 100, y, 236, y))
		} else {
			s.add(line("ink", 4, 100, y, 146, y, 150, y+5), line("ink", 4, 236, y, 190, y, 185, y-4), Circle{"halo", Point{168, y}, 13, 3})
		}
		s.add(Rect{"metal", 80, y - 20, 28, 40, 4, 0}, Rect{"metal", 228, y - 20, 28, 40, 4, 0})
		s.add(words("label-accent", End, 68, y+4.7, fit(word, textSize, 60)))
	}
	s.add(words("label", Middle, 168, 87, fit(s.words.Fuse, textSize, 120)))
}

// plugHalvesApart are both halves of the plug with a burnt pin in one.
func (s *sheet) plugHalvesApart() {
	p := s.newPlug(128, plugY, s.ends())
	s.leads(p, Point{4, plugY}, Point{4, plugY})
	s.drawPlug(p)
	left, h := 172.0, p.height()
	other := plug{left, p.y, p.pitch, 46, p.ends}
	for i := range other.ends {
		y := other.contactY(i)
		s.add(lead(false, Point{left + 46, y}, Point{left + 86, y + 10})...)
		s.add(Rect{"pin", left - 12, y - 2.5, 14, 5, 1, 0})
	}
	s.add(Rect{"plug", left, p.y - h/2, 46, h, 5, 2.5})
	first := p.anchor(0)
	s.add(Rect{"hole", first.X - 20, first.Y - 11, 26, 22, 6, 0}, Rect{"wrap", first.X - 8, first.Y - 2.5, 8, 5, 0, 1.6})
	s.add(Circle{"halo", Point{first.X - 6, first.Y}, 17, 3})
	s.add(words("label", Start, 142, 160, fit(s.words.Apart, textSize, 110)))
}

// spark is the plug, or the bare lead, held on engine metal with pliers while
// the starter turns.
func (s *sheet) spark() {
	const y = 76.0
	c, r := Point{42, 64}, 32.0
	s.engine(89, c, r)
	s.turning(c, r)
	s.coilAbove()
	if s.check.Looks == check.SparkAtLead {
		s.add(Path{"ink", 7, []Step{moveTo(124, y), lineTo(200, y), curveTo(260, y, 270, 30, 306, 26)}})
		s.add(Rect{"metal", 112, y - 2, 12, 4, 1, 0}, bolt(Point{95, y}, 16))
		s.add(pliers(Point{150, y - 4}, 58))
	} else {
		s.add(Rect{"case", 88, y + 13, 76, 14, 3, 2.5})
		s.add(Path{"ink", 7, []Step{moveTo(256, y), curveTo(290, y, 270, 30, 306, 26)}})
		s.add(bigPlug(Point{106, y}, true), Rect{"plug", 190, y - 16, 68, 32, 11, 2.5})
		s.add(bolt(Point{99, y - 18}, 15))
		s.add(pliers(Point{208, y - 4}, 58))
	}
	s.add(words("label", Start, 124, y-27, fit(s.sparking(), textSize, 110)))
	if s.check.Looks == check.SparkWithoutKill {
		s.add(words("label-accent", Start, 124, 157, fit(s.words.KillOff, textSize, 104)))
	}
	if s.check.Hot {
		s.add(thermometer(Point{132, 157})...)
		s.add(words("label-accent", Start, 147, 152, fit(s.words.Hot, textSize, 60)))
	}
}

// coilAbove is the ignition coil at the upper right edge.
func (s *sheet) coilAbove() {
	s.add(Rect{"iron", 300, 20, 54, 10, 1.5, 0}, Rect{"plug", 308, 9, 38, 32, 6, 2.5})
	s.add(words("label", End, 290, 18, fit(s.words.Coil, textSize, 110)))
}

// bolt is a spark from a point to the right.
func bolt(from Point, length float64) Shape {
	return Group{Move: from, Scale: length / 16, Shapes: []Shape{
		line("casing", 6, 0, 0, 6, -5, 9, 4, 16, 0), line("accent", 3.2, 0, 0, 6, -5, 9, 4, 16, 0),
		line("accent", 2, 3, -10, 1, -15), line("accent", 2, 10, -11, 11, -16), line("accent", 2, 5, 9, 3, 14), line("accent", 2, 12, 9, 14, 13),
	}}
}

// pliers grip at a point; their insulated handles lie to the right, turned.
func pliers(at Point, turn float64) Shape {
	return Group{Move: at, Turn: turn, Shapes: []Shape{
		area("paper", -3, -8, 26, -13, 92, -14, 92, 14, 26, 13, -3, 8),
		area("iron", -1, -2, 3, -6, 26, -9, 30, -1), area("iron", -1, 2, 3, 6, 26, 9, 30, 1),
		Circle{"iron", Point{27, 0}, 9, 0}, Circle{"paper", Point{27, 0}, 3, 0},
		Rect{"probe-red", 35, -12, 54, 8, 4, 1.6}, Rect{"probe-red", 35, 4, 54, 8, 4, 1.6},
	}}
}
