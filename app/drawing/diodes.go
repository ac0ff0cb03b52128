package drawing

import "coilbook/engine/check"

// regulatorDiode is a regulator that is unplugged, with the diode between the
// probes drawn inside it.
func (s *sheet) regulatorDiode() {
	const left, top, bottom, rail = 4.0, 4.0, 138.0, 93.0
	p := s.newPlug(plugRight, plugY, s.regulatorEnds())
	body := Point{rail, 119}
	if s.touched(check.RegulatorBody) { // whose probe needs the room below
		p.y, p.pitch = 55, min(p.pitch, 92/float64(len(p.ends)))
	}
	s.add(Rect{"case", left, top, p.x - left + 2, bottom - top, 7, 2.5})
	s.add(words("label", Start, left+7, top+17, fit(s.words.Regulator, textSize, rail-left-14)))
	lead := p.entry(s.check.Leads[0] - 1)
	if s.touched(check.RegulatorBody) {
		s.mark(check.RegulatorBody, body)
		s.add(Circle{"bare", body, 6, 0})
		s.add(words("label", Start, 188, 147, fit(s.words.Case, textSize, 88)))
		s.diode(Point{rail, body.Y - 6}, Point{rail, lead.Y}, lead)
	} else {
		plus := p.entry(len(p.ends) - 1)
		s.add(line("lead-live", 3, lead.X, lead.Y, rail, lead.Y))
		s.diode(Point{rail, lead.Y}, Point{rail, plus.Y}, plus)
	}
	s.drawPlug(p)
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.RegulatorBody: leanOnMetal})
}

// regulatorEnds are the pins of the regulator's plug that the check is about.
func (s *sheet) regulatorEnds() []check.Terminal {
	var out []check.Terminal
	for i := range max(s.build.ChargeLeads, s.check.Leads[0]) {
		out = append(out, check.RegulatorLead(i+1))
	}
	if s.touched(check.RegulatorPlus) {
		out = append(out, check.RegulatorPlus)
	}
	return out
}

// diode conducts along an upright line from anode to cathode; a wire goes on from
// there.
func (s *sheet) diode(anode, cathode, to Point) {
	const half = 8.0
	s.add(line("lead-live", 3, anode.X, anode.Y, cathode.X, cathode.Y, to.X, to.Y))
	c, tip := mid(anode, cathode), 0.8*half
	if cathode.Y < anode.Y {
		tip = -tip
	}
	s.add(area("sign-accent", c.X-half, c.Y-tip, c.X+half, c.Y-tip, c.X, c.Y+tip))
	s.add(line("accent", 3.4, c.X-half, c.Y+tip, c.X+half, c.Y+tip))
}

// diodeSign is the triangle with its bar that meters print, around the middle of a
// base line.
func diodeSign(class string, at Point, size float64) []Shape {
	u := size / 13
	return []Shape{
		area(class, at.X-5*u, at.Y-9*u, at.X-5*u, at.Y+1*u, at.X+3*u, at.Y-4*u),
		Rect{class, at.X + 3*u, at.Y - 9*u, 2 * u, 10 * u, 0, 0},
	}
}
