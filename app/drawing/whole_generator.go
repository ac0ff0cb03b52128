package drawing

import "coilbook/engine/check"

// unloaded is what a winding gives while the engine turns and its plug is apart.
func (s *sheet) unloaded() {
	c, r, ends := Point{52, 66}, 41.0, s.ends()
	from := Point{c.X + r, c.Y}
	pickup := s.check.Part == check.Pickup
	if pickup {
		c, r, ends = Point{39, 64}, 27, []check.Terminal{check.PickupA, check.PickupB}
		from = Point{93, c.Y}
	}
	s.engine(98, c, r)
	p := s.newPlug(plugRight, plugY, ends)
	s.leads(p, from, from)
	s.drawPlug(p)
	s.turning(c, r)
	if pickup {
		s.pickupAtFlywheel(c, r)
	}
	s.add(drawMeter(s.check.Function)...)
	if s.touched(check.Core) {
		s.bareMetal(Point{88, 119}, s.words.Case, 188, 147, 88)
	}
	s.probes(map[check.Terminal]float64{check.Core: leanOnMetal})
}

// nameOfPin stands in the plug where it is short, below it where it is not.
func (s *sheet) nameOfPin(x, y, width float64) Shape {
	if len(s.check.Leads) > 0 {
		return words("label", Middle, x, y+4.7, fit(s.label(s.check.Red), textSize, width))
	}
	return words("label", Start, x-width, y+32, fit(s.label(s.check.Red), textSize, 96))
}

// acrossThePlug is what a pin of the plug takes: a probe beside the lead on each
// side of it.
func (s *sheet) acrossThePlug() {
	const left, split, right, y = 106.0, 122.0, 166.0, 94.0
	c, r := Point{42, 64}, 32.0
	s.engine(89, c, r)
	s.mark(s.check.Red, Point{left - 3, y})
	s.mark(s.check.Black, Point{right + 4, y})
	s.add(s.wired(s.check.Red, true, Point{c.X + r, c.Y}, Point{left, y})...)
	s.add(lead(true, Point{right, y}, Point{right + 46, y + 34})...)
	s.add(line("ink", 2.5, right+43.5, y+40, right+48.5, y+28))
	s.add(
		Rect{"plug", left, y - 11, split - left + 4, 22, 3, 2.5},
		Rect{"plug", split, y - 14, right - split, 28, 5, 2.5},
		s.nameOfPin((split+right)/2, y, right-split-6),
		words("label", Start, left-6, y+49, fit(s.words.Joined, textSize, 104)),
	)
	if s.check.Engine == check.Stopped {
		s.resting(c, r)
	} else {
		s.turning(c, r)
	}
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{s.check.Red: -50})
}
