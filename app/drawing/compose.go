package drawing

import (
	"slices"

	"coilbook/engine/check"
)

// The strip that shows a check, and where its parts stand.
const (
	stripW, stripH = 360.0, 170.0
	plugRight      = 195.0
	plugY          = 72.0
	statorR        = 48.0
)

var statorCenter = Point{52, 66}

// ForCheck draws what the user does in a check: 360 by 170. label names the
// terminals as the user knows them.
func ForCheck(c check.Check, b check.Build, label func(check.Terminal) string, w Words) Picture {
	return ForWires(c, b, label, w, nil)
}

func (s *sheet) compose() Picture {
	c := s.check
	if draw := s.wholeMachine(); draw != nil {
		draw()
		return s.picture(stripW, stripH)
	}
	switch {
	case c.Instrument == check.FeelerGauge:
		s.gap()
	case c.Red == check.OtherProbe:
		s.probesTogether()
	case c.Red == check.BatteryPlus || c.Red == check.BatteryMinus:
		s.batteryPosts()
	case c.Method == check.ResistorCheck:
		s.resistorLegs()
	case c.Method == check.VoltAmp:
		s.voltAmp()
	case c.PeakHold && c.Part == check.IgnitionBox:
		s.boxPeak()
	case c.PeakHold:
		s.peak()
	case c.Engine == check.Cranking:
		s.cranking()
	case c.Part == check.Pickup:
		s.pickupAtPlug()
	default:
		s.statorAtPlug()
	}
	return s.picture(stripW, stripH)
}

// probesTogether is the lead zero: tip on tip.
func (s *sheet) probesTogether() {
	const lane, scale = 270.0, 1.4
	at := Point{34, 85}
	s.mark(check.OtherProbe, at)
	red := probe{true, at, -23, scale, fit(s.words.Red, textSize, 60)}
	black := probe{false, at, 23, scale, fit(s.words.Black, textSize, 60)}
	s.add(drawMeter(s.check.Function)...)
	r, k := red.tail(), black.tail()
	s.add(cable(true, r.X, r.Y, r.X+24, r.Y-10, lane, r.Y-10, lane, redJackY, jackX, redJackY)...)
	s.add(cable(false, k.X, k.Y, k.X+(blackJackY-k.Y)*2.3, blackJackY, jackX, blackJackY)...)
	s.add(black.draw(), red.draw(), Circle{"halo", at, 15, 3})
}

// statorAtPlug is every ohm reading of the stator: two contacts, or one and the
// core.
func (s *sheet) statorAtPlug() {
	p := s.newPlug(plugRight, plugY, s.ends())
	s.leads(p, Point{statorCenter.X + statorR*0.4, statorCenter.Y}, exciterPoint(statorCenter, statorR))
	s.add(stator(s.build, statorCenter, statorR)...)
	s.drawPlug(p)
	s.add(drawMeter(s.check.Function)...)
	if s.touched(check.Core) {
		s.bareMetal(corePoint(statorCenter, statorR), s.words.Core, 134, 155, 138)
	}
	s.heat()
	s.probes(map[check.Terminal]float64{check.Core: 50})
}

// ends lists the contacts of the plug in their order, and whatever else is
// touched although the build does not have it (an older session).
func (s *sheet) ends() []check.Terminal {
	var out []check.Terminal
	if s.check.Part == check.Exciter {
		out = append(out, check.ExciterLead)
	} else {
		for i := range s.build.ChargeLeads {
			out = append(out, check.Charge(i+1))
		}
	}
	if s.build.GroundLead {
		out = append(out, check.GroundLead)
	}
	for _, t := range []check.Terminal{s.check.Red, s.check.Black} {
		if t != check.Nowhere && t != check.Core && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	return out
}
