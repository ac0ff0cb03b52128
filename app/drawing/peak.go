package drawing

import (
	"math"

	"coilbook/engine/check"
)

// peakLean is how the probes in a plug lean, so that their cables come down into
// the adapter.
const peakLean = -50.0

// peak is the height of the pulses at the plug: as cranking, with the adapter.
func (s *sheet) peak() {
	c, r, ends := Point{42, 64}, 32.0, s.ends()
	from := Point{c.X + r, c.Y}
	if s.check.Part == check.Pickup {
		c, r, ends = Point{37, 64}, 27, []check.Terminal{check.PickupA, check.PickupB}
		from = Point{91, c.Y}
	}
	s.engine(89, c, r)
	s.joined(joint{102, 112, 188, 78, 34, Point{30, 33}}, ends, from)
	s.turning(c, r)
	if s.check.Part == check.Pickup {
		s.pickupAtFlywheel(c, r)
	}
	s.peakProbes(peakLean)
}

// pickupAtFlywheel stands beside the flywheel, which carries its lump.
func (s *sheet) pickupAtFlywheel(c Point, r float64) {
	const lump, gap, scale = 3.5, 2.5, 0.5
	s.add(
		Path{"iron", 0, ringSector(c, r-1, r+lump, -14, 14)},
		Group{Move: Point{c.X + r + lump + gap, c.Y}, Scale: scale, Shapes: pickup()},
	)
}

// peakProbes leads both probes into the adapter: from the plug or the box down
// from above, from the engine's metal along the floor.
func (s *sheet) peakProbes(lean float64) {
	if s.touched(check.Core) {
		s.bareMetal(Point{78, 118}, s.words.Case, 112, 165, 88)
	}
	leans := map[check.Terminal]float64{s.check.Red: lean, s.check.Black: lean}
	leans[check.Core] = 16
	red, black := s.probeOn(true, s.check.Red, leans), s.probeOn(false, s.check.Black, leans)
	red.word, black.word = red.wordAbove(), black.wordAbove()
	above := s.check.Black != check.Core
	s.add(drawMeter(s.check.Function)...)
	s.adapter(above)
	s.lay(red, black, red.into(adapterRed), s.blackIn(black, above))
}

func (s *sheet) blackIn(p probe, above bool) []Shape {
	if above {
		return p.into(adapterBlack)
	}
	t, bend := p.tail(), p.past(8)
	return cable(false, t.X, t.Y, bend.X, bend.Y, bend.X+10, blackJackY, adapterX, blackJackY)
}

// wordAbove is the word of a probe, or none: a piece of so short a word says nothing,
// and its colour is there.
func (p probe) wordAbove() string {
	if textWidth(p.word, textSize) > p.roomAbove() {
		return ""
	}
	return p.word
}

// roomAbove is how long the word of a probe that leans up may be, so that its
// cable still bends inside the picture.
func (p probe) roomAbove() float64 {
	if p.angle >= 0 {
		return math.Inf(1)
	}
	const margin = 7.5
	return (p.tip.Y-margin)/math.Sin(-p.angle*math.Pi/180) - handleFrom - relief - (p.handle() - textWidth(p.word, textSize))
}

// into is the cable of a probe that comes down into the adapter at x.
func (p probe) into(x float64) []Shape {
	t, bend := p.tail(), p.past(5)
	return cable(p.red, t.X, t.Y, bend.X, bend.Y, x, bend.Y, x, adapterY)
}
