package drawing

import (
	"coilbook/engine/check"
	"coilbook/engine/spec"
)

// boxPoints are the pins of the ignition box, and the kill wire taken off it.
func (s *sheet) boxPoints() {
	const left, right = 4.0, 128.0
	kill := s.check.Measures == spec.KillWire
	y, floor := 62.0, 95.0
	if kill {
		y, floor = 66, 30
	}
	s.add(Rect{"case", left, 4, right - left - 12, floor - 4, 6, 2.5})
	s.add(words("label", Middle, (left+right-12)/2, 22, fit(s.words.Box, textSize, right-left-18)))
	p := s.newPlug(right, y, s.boxEnds())
	if kill {
		s.killSwitch(p)
	}
	s.drawPlug(p)
	s.add(drawMeter(s.check.Function)...)
	if s.touched(check.Core) {
		s.engineBlock(100)
	}
	s.probes(map[check.Terminal]float64{check.Core: leanOnMetal})
}

func (s *sheet) boxEnds() []check.Terminal {
	if s.touched(check.BoxFeed) {
		return []check.Terminal{check.BoxFeed, check.BoxGround}
	}
	return []check.Terminal{s.check.Red}
}

// killSwitch stands open in the kill wire.
func (s *sheet) killSwitch(p plug) {
	const from, to = 18.0, 36.0
	s.add(wire(5, p.y, from, p.y)...)
	s.add(lead(true, Point{to, p.y}, p.entry(0))...)
	s.add(line("accent", 3.4, from, p.y, to-3, p.y-12), Circle{"dial", Point{from, p.y}, 3.5, 0}, Circle{"dial", Point{to, p.y}, 3.5, 0})
	s.add(words("label-accent", Start, 5, p.y+25, fit(s.words.KeyOn, textSize, 60)))
}

// boxOutput is what the box gives to the coil, on the AC range.
func (s *sheet) boxOutput() {
	s.boxAndCoil()
	s.add(drawMeter(s.check.Function)...)
	s.bareMetal(Point{78, 118}, s.words.Case, 182, 149, 88)
	s.probes(map[check.Terminal]float64{check.Core: leanOnMetal})
}
