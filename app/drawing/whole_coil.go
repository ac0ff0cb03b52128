package drawing

import "coilbook/engine/check"

// coilOhms is the ignition coil on the engine, its small pin and the bare end of
// its lead.
func (s *sheet) coilOhms() {
	pin, end := Point{76, 22}, Point{150, 54}
	s.mark(check.CoilPrimary, pin)
	s.mark(check.SparkLead, end)
	s.add(
		Rect{"iron", 12, 80, 86, 12, 2, 0},
		Path{"ink", 7, rounded(8, 84, end.Y, end.X-9, end.Y)},
		Rect{"metal", end.X - 9, end.Y - 2, 10, 4, 1, 0},
		Rect{"metal", pin.X - 10, pin.Y - 4, 14, 12, 2, 0},
		Rect{"plug", 24, 29, 64, 51, 9, 2.5},
	)
	s.add(words("label", Start, 106, 88, fit(s.words.Coil, textSize, 120)))
	s.add(drawMeter(s.check.Function)...)
	s.engineBlock(92)
	s.probes(map[check.Terminal]float64{check.Core: leanOnMetal})
}

// capOhms is the plug cap by itself: its screw for the lead and its spring.
func (s *sheet) capOhms() {
	const y = 104.0
	s.mark(check.CapScrew, Point{36, y})
	s.mark(check.CapEnd, Point{160, y})
	s.add(line("casing", 9, 30, y, 60, y), Rect{"metal", 32, y - 3, 28, 6, 1, 0})
	for x := 38.0; x < 54; x += 5 {
		s.add(line("ink", 1.6, x-1.5, y+4.5, x+1.5, y-4.5))
	}
	s.add(Rect{"plug", 50, y - 19, 84, 38, 12, 2.5}, Rect{"plug", 128, y - 14, 14, 28, 4, 2.5})
	s.add(line("ink", 2.4, 142, y, 145, y-7, 149, y+7, 153, y-7, 157, y+7, 160, y))
	s.add(words("label", Middle, 96, y+40, fit(s.words.Cap, textSize, 176)))
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.CapScrew: -46, check.CapEnd: -16})
}

// plugLeak is the spark plug by itself: its top and its thread.
func (s *sheet) plugLeak() {
	const y = 104.0
	s.mark(check.PlugTop, Point{32, y})
	s.mark(check.PlugThread, Point{140, y - 4})
	s.add(bigPlug(Point{172, y}, false))
	s.add(words("label", Middle, 96, y+42, fit(s.words.SparkPlug, textSize, 176)))
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.PlugTop: -46, check.PlugThread: -24})
}

// bigPlug lies along x with its gap at a point and its top 144 to the left, or to
// the right where it is turned.
func bigPlug(gap Point, turned bool) Shape {
	g := Group{Move: gap, Shapes: []Shape{
		Rect{"metal", -146, -6, 20, 12, 2, 0},
		Rect{"case", -128, -11, 54, 22, 4, 2.5},
		line("ink", 1.6, -112, -10, -112, 10), line("ink", 1.6, -104, -10, -104, 10), line("ink", 1.6, -96, -10, -96, 10),
		Rect{"iron", -76, -19, 24, 38, 2, 0},
		Rect{"metal", -52, -13, 40, 26, 1, 0},
		line("ink", 1.4, -46, 13, -43, -13), line("ink", 1.4, -38, 13, -35, -13), line("ink", 1.4, -30, 13, -27, -13), line("ink", 1.4, -22, 13, -19, -13),
		Rect{"iron", -13, -2, 7, 4, 1, 0},
		line("ink", 3, -13, 11, 1, 11, 1, -4),
	}}
	if turned {
		g.Turn = 180
	}
	return g
}
