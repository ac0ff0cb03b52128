package drawing

import "coilbook/engine/check"

// The ring of the volt-amp method: up from the battery on the left, along the
// top, down through the resistor and the winding on the right, where the probes
// reach both, and back below.
const (
	ringLeft, ringTop, ringRight, ringFloor = 20.0, 12.0, 186.0, 166.8
	ringBack                                = 78.0 // between battery and stator
)

var ringBattery = upright{6, 104, 62, 44}

var ringStator = Point{124, 121}

const ringStatorR = 36.0

// voltAmp is a drop over the known resistor or over the winding, in a ring with
// a lit bulb that sets the current.
func (s *sheet) voltAmp() {
	s.supply()
	s.knownDrop()
	s.windingDrop()
	s.add(drawMeter(s.check.Function)...)
	s.probes(nil)
}

// supply is battery, fuse and bulb.
func (s *sheet) supply() {
	s.add(wire(ringLeft, ringBattery.y-8, ringLeft, ringTop, ringRight, ringTop, ringRight, 82)...)
	s.add(ringBattery.draw(10)...)
	s.add(words("label", Middle, ringBattery.x+ringBattery.w/2, ringBattery.y+38, fit(s.words.Battery, textSize, 60)))
	s.add(fuse(Point{ringLeft, 68})...)
	s.add(words("label", Start, ringLeft+12, 80, fit(s.words.Fuse, textSize, 60)))
	s.add(bulb(Point{86, ringTop})...)
	s.add(words("label", Start, 112, 34, fit(s.words.Bulb, textSize, 60)))
}

// knownDrop is the resistor, upright.
func (s *sheet) knownDrop() {
	at := Point{ringRight, 50}
	s.mark(check.ResistorA, Point{at.X, at.Y - 22})
	s.mark(check.ResistorB, Point{at.X, at.Y + 23})
	s.add(Group{Move: at, Turn: 90, Shapes: resistor(24, 28)})
	s.add(words("label", End, at.X-18, at.Y+11, fit(s.words.Resistor, textSize, 116)))
}

// windingDrop is the winding between the clips. The probes have their places on
// its leads before the clips, or on the core apart from the clip.
func (s *sheet) windingDrop() {
	s.ringLead(0, Point{ringRight, 108}, 94)
	if len(s.check.Leads) > 1 {
		s.ringLead(1, Point{ringRight, 135}, 149)
		s.back(ringFloor, ringRight, ringFloor, ringRight, 160)
		s.add(clip(Point{ringRight, 147}, -90))
		s.add(stator(s.build, ringStator, ringStatorR)...)
	} else {
		s.add(stator(s.build, ringStator, ringStatorR)...)
		bite := polar(ringStator, ringStatorR*ringR-4, 180)
		s.back(bite.Y, bite.X-14, bite.Y)
		s.add(clip(bite, 0))
		if s.touched(check.Core) {
			s.bareMetal(polar(ringStator, ringStatorR*0.36, 70), s.words.Core, 150, 165.5, 124)
		}
	}
	s.add(clip(Point{ringRight, 96}, 90))
}

// back is the wire to the battery's minus, from the height y on.
func (s *sheet) back(y float64, xy ...float64) {
	post := ringBattery.minus()
	start := []float64{post.X, ringBattery.y - 8, post.X, 86, ringBack, 86, ringBack, y}
	s.add(wire(append(start, xy...)...)...)
}

// ringLead is one end of the winding: out of the stator to the place of a probe
// and upright on into the clip at the height bite.
func (s *sheet) ringLead(i int, at Point, bite float64) {
	from := Point{ringStator.X + ringStatorR*0.4, ringStator.Y}
	steps := []Step{moveTo(from.X, from.Y), curveTo(at.X-14, from.Y, at.X, from.Y, at.X, at.Y), lineTo(at.X, bite)}
	t := check.Charge(s.check.Leads[i])
	s.add(s.strand(t, true, steps)...)
	s.mark(t, at)
	s.add(words("label", End, at.X-12, bite+9, fit(s.label(t), textSize, 24)))
}
