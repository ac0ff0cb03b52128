package drawing

import (
	"math"

	"coilbook/engine/check"
)

// Lanes between plug and meter where the cables run down.
const upperLane, lowerLane = 287.0, 280.0

// floorY is where the cable of a probe on the core runs along.
const floorY = 164.0

// probes puts both probes on their anchors with their cables: straight into a
// contact, leaning by lean onto metal.
func (s *sheet) probes(lean map[check.Terminal]float64) {
	red, black := s.probeOn(true, s.check.Red, lean), s.probeOn(false, s.check.Black, lean)
	s.lay(red, black, s.run(red, black), s.run(black, red))
}

// lay puts down the cables of both probes, then their marks, then the probes.
func (s *sheet) lay(red, black probe, redCable, blackCable []Shape) {
	s.add(blackCable...)
	s.add(redCable...)
	s.add(touchMark(black.tip)...)
	s.add(touchMark(red.tip)...)
	s.add(black.draw(), red.draw())
}

// touchMark rings the place that a probe touches.
func touchMark(p Point) []Shape {
	return []Shape{Circle{"halo", p, 8.5, 3}}
}

func (s *sheet) probeOn(red bool, t check.Terminal, lean map[check.Terminal]float64) probe {
	word := s.words.Black
	if red {
		word = s.words.Red
	}
	return probe{red, s.anchors[t], lean[t], 1, fit(word, textSize, 46)}
}

// run is the cable of a probe to its jack; the upper of two keeps to the right,
// so that it passes the other's tail. A probe on the core has the floor.
func (s *sheet) run(p, other probe) []Shape {
	jack := blackJackY
	if p.red {
		jack = redJackY
	}
	t := p.tail()
	switch {
	case p.angle > 0:
		bend := polar(t, (floorY-t.Y)*0.9, p.angle)
		return cable(p.red, t.X, t.Y, bend.X, floorY, lowerLane, floorY, lowerLane, jack, jackX, jack)
	case math.Abs(t.Y-jack) < 12:
		return cable(p.red, t.X, t.Y, t.X+6, t.Y, jackX-14, jack, jackX, jack)
	}
	lane := lowerLane
	if t.Y < other.tail().Y {
		lane = upperLane
	}
	if p.angle == 0 {
		return cable(p.red, t.X, t.Y, lane, t.Y, lane, jack, jackX, jack)
	}
	bend := p.past(10)
	return cable(p.red, t.X, t.Y, bend.X, bend.Y, lane, bend.Y, lane, jack, jackX, jack)
}

// bareMetal is a scraped patch that a probe touches, with its words.
func (s *sheet) bareMetal(at Point, word string, x, y, room float64) {
	s.mark(check.Core, at)
	s.add(Circle{"bare", at, 6, 0})
	s.add(words("label", Start, x, y, fit(word, textSize, room)))
}
