package trial_test

import "coilbook/engine/fault"

// What keeps a stranger's battery from being charged.
var strangerCharging = []trouble{
	{id: fault.None, weight: 10},
	{id: "phase-open", weight: 7, strike: func(s *stranger) {
		for _, i := range touching(s.luck.IntN(3)) {
			s.reads[pairs[i]], s.reads[outputs[i]] = openLine, s.some(0.5, 0.3)
		}
		s.chargesLittle()
	}},
	{id: "phase-to-core", weight: 10, strike: func(s *stranger) {
		phase, loses := s.reads[pairs[0]], s.oneIn(2)
		for i := range cores {
			s.reads[cores[i]] = phase * s.between(0.1, 0.9)
			if loses {
				s.reads[outputs[i]] *= s.between(0.7, 1)
			}
		}
		s.gives(12.3, 12.6, 12.9, 0.4)
	}},
	{id: "phase-turns", weight: 8, mild: true, strike: func(s *stranger) {
		part := s.between(0.1, 0.5)
		s.times(0.93, outputs[:]...)
		for _, i := range touching(s.luck.IntN(3)) {
			s.times(1-part/2, pairs[i])
			s.times(1-0.6*part, outputs[i])
		}
		s.gives(12.7, 13.2, 13.5, 0.4)
	}},
	{id: "phase-to-phase", weight: 3, strike: func(s *stranger) {
		at, part := s.luck.IntN(3), s.between(0.3, 0.9)
		for i := range pairs {
			if i == at {
				s.times(1-part, pairs[i])
				s.times(s.between(0.05, 0.25), outputs[i])
				continue
			}
			s.times(1-part/3, pairs[i])
			s.times(0.7, outputs[i])
		}
		s.gives(12.4, 12.7, 12.9, 0.4)
	}},
	{id: "phase-joint", weight: 3, strike: func(s *stranger) {
		joint := s.like(2, 0.7)
		for _, i := range touching(s.luck.IntN(3)) {
			s.reads[pairs[i]] += joint
		}
		s.chargesLittle()
	}},
	{id: "weak-magnets", weight: 2, strike: func(s *stranger) {
		s.times(1-s.between(0.3, 0.6), outputs[:]...)
		s.times(0.8, "pickup-cranking")
		s.gives(12.3, 12.8, 13.3, 0.4)
	}},
	{id: "diode-open", weight: 7, mild: true, strike: func(s *stranger) {
		s.reads[diodes[s.luck.IntN(len(diodes))]] = openLine
		s.gives(12.8, 13.3, 13.5, 0.3)
	}},
	{id: "diode-shorted", weight: 6, strike: func(s *stranger) {
		s.reads[diodes[s.luck.IntN(len(diodes))]] = s.some(0.005, 0.005)
		s.gives(12.3, 12.6, 12.8, 0.3)
		if s.oneIn(3) { // the other diode of the pair leaks as well
			s.reads["key-off-current"] = s.like(0.3, 1)
		}
	}},
	{id: "regulator-dead", weight: 9, strike: (*stranger).chargesNothing},
	{id: "set-point-low", weight: 4, strike: func(s *stranger) {
		low := s.between(0.8, 1.6)
		s.charges(min(s.reads["battery-idle"], 14.3-low), 14.2-low, s.around(14.3-low, 0.1))
	}},
	{id: "regulator-ground", weight: 4, strike: func(s *stranger) {
		drop := s.like(0.9, 0.4)
		s.reads["drop-ground"] = drop
		s.losesAtSpeed(drop)
	}},
	{id: "feed-wire", weight: 6, strike: func(s *stranger) {
		if s.luck.Float64() < 0.4 {
			s.chargesNothing()
			s.reads["drop-plus"] = s.like(5, 0.6)
			return
		}
		drop := s.like(1, 0.4)
		s.reads["drop-plus"] = drop
		s.losesAtSpeed(drop)
	}},
	{id: "battery-terminal", weight: 5, strike: func(s *stranger) {
		posts := s.between(13.2, 13.9)
		s.reads["drop-terminal"] = s.like(0.9, 0.5)
		s.reads["drop-plus"] += 14.3 - posts // the volts over the clamp are missing at the posts
		s.reads["battery-cranking"] = s.around(10.9, 0.3)
		s.charges(min(s.reads["battery-idle"]-0.2, posts), posts, s.around(posts, 0.05))
	}},
	{id: "main-fuse", weight: 6, strike: func(s *stranger) {
		s.chargesNothing()
		s.blown = true
		s.reads["drop-plus"] = s.some(6, 2)
		s.reads["supply-key"] = 0
	}},
	{id: "battery-sulphated", weight: 9, strike: func(s *stranger) {
		s.stands(s.around(12.2, 0.3))
		s.reads["battery-lamp"] = s.reads["battery-rest"] - s.some(1.2, 0.5)
		s.reads["battery-cranking"] = s.around(7.5, 1)
		s.charges(s.reads["battery-idle"], s.reads["battery-3000"]+0.2, s.reads["battery-5000"]+0.3)
	}},
	{id: "battery-cell", weight: 4, strike: func(s *stranger) {
		s.stands(s.around(10.4, 0.25))
		s.reads["battery-lamp"] = s.reads["battery-rest"] - 0.6
		s.reads["battery-cranking"] = s.around(7.5, 0.8)
		s.gives(11.5, 12.3, 12.7, 0.4)
	}},
	{id: "drain", weight: 5, strike: func(s *stranger) {
		s.stands(s.around(11.8, 0.3))
		s.reads["key-off-current"] = s.like(0.15, 0.6)
	}},
	{id: "charge-pin", weight: 10, mild: true, strike: func(s *stranger) {
		s.reads[plugDrops[s.luck.IntN(3)]] = s.like(1.5, 0.5)
		s.burnt = !s.oneIn(4)
		s.gives(12.9, 13.3, 13.4, 0.4)
	}},
}

// touching lists the two pairs that a charge lead is of, all from 0.
func touching(lead int) [2]int { return [2]int{lead, (lead + 2) % 3} }

// gives is what a poor generator or a poor way to the battery leaves at the posts: the
// weaker it is, the lower at each speed, most of all at 5000 rpm.
func (s *stranger) gives(idle, at3000, at5000, spread float64) {
	by := s.around(0, spread)
	s.charges(s.around(idle+0.6*by, 0.1), s.around(at3000+0.8*by, 0.1), s.around(at5000+by, 0.1))
}

// chargesLittle is what two phases give, or less.
func (s *stranger) chargesLittle() {
	s.gives(12.6, 12.9, 13.1, 0.4)
}

// chargesNothing lets the battery feed what is on.
func (s *stranger) chargesNothing() {
	rest := s.reads["battery-rest"]
	s.charges(rest-s.some(0.35, 0.1), rest-s.some(0.4, 0.1), rest-s.some(0.4, 0.12))
}

// losesAtSpeed takes a drop along the way off what comes to the posts.
func (s *stranger) losesAtSpeed(drop float64) {
	s.charges(s.reads["battery-idle"]-0.3, s.reads["battery-3000"]-drop, s.reads["battery-5000"]-drop)
}

// What keeps a stranger's plug from sparking.
var strangerSpark = []trouble{
	{id: fault.None, weight: 10},
	{id: "pickup-open", weight: 6, strike: func(s *stranger) {
		s.reads["pickup"] = openLine
		s.times(0, "pickup-cranking", "box-output")
	}},
	{id: "pickup-turns", weight: 3, strike: func(s *stranger) {
		left := 1 - s.between(0.3, 0.8)
		s.times(left, "pickup")
		s.times(left*0.5, "pickup-cranking")
		s.times(0.05, "box-output")
	}},
	{id: "pickup-to-core", weight: 3, strike: func(s *stranger) {
		s.reads["pickup-core"] = s.between(0.1, 100)
		s.times(s.between(0.1, 0.6), "pickup-cranking")
		s.times(0, "box-output")
	}},
	{id: "pickup-gap", weight: 4, strike: func(s *stranger) {
		s.reads["pickup-gap"] = s.between(1.3e-3, 2.5e-3)
		s.times(s.between(0.1, 0.35), "pickup-cranking")
		s.times(0, "box-output")
	}},
	{id: "plug-pin", weight: 4, strike: func(s *stranger) {
		s.burnt = s.luck.Float64() < 0.4
		if s.oneIn(2) {
			s.reads["pin-pickup"] = s.openOr(s.like(2000, 1.5))
		} else {
			s.reads["pin-exciter"] = s.openOr(s.like(5000, 1.5))
		}
		s.times(0, "box-output")
	}},
	{id: "exciter-open", weight: 9, strike: func(s *stranger) {
		s.reads["exciter"] = openLine
		s.times(0, "exciter-cranking", "exciter-free-cranking", "box-output")
	}},
	{id: "exciter-turns", weight: 5, strike: func(s *stranger) {
		left := 1 - s.between(0.25, 0.7)
		s.times(left, "exciter")
		s.times(left*0.5, "exciter-cranking", "exciter-free-cranking")
		s.times(0.2, "box-output")
	}},
	{id: "exciter-to-core", weight: 5, strike: func(s *stranger) {
		s.times(s.between(0.02, 0.6), "exciter")
		s.times(s.between(0.02, 0.3), "exciter-cranking", "exciter-free-cranking")
		s.times(0.1, "box-output")
	}},
	{id: "box-dead", weight: 10, strike: func(s *stranger) {
		s.reads["box-output"] = 0
		if s.oneIn(3) {
			s.reads["box-output"] = 1.5
		}
	}},
	{id: "kill-switch", weight: 8, strike: func(s *stranger) {
		s.killed(s.some(0.3, 0.2), 0.03)
		s.times(0, "box-output")
	}},
	{id: "kill-wire", weight: 5, strike: func(s *stranger) {
		s.killed(s.like(20, 1.5), 0.1)
		s.times(0, "box-output")
	}},
	{id: "primary-open", weight: 4, strike: func(s *stranger) {
		s.reads["coil-primary"] = openLine
		s.times(1.5, "box-output")
	}},
	{id: "primary-turns", weight: 2, strike: func(s *stranger) {
		s.times(s.between(0.1, 0.5), "coil-primary")
		s.times(0.5, "box-output")
	}},
	{id: "secondary-open", weight: 5, strike: func(s *stranger) { s.reads["coil-secondary"] = openLine }},
	{id: "secondary-turns", weight: 3, strike: func(s *stranger) { s.times(s.between(0.2, 0.6), "coil-secondary") }},
	{id: "cap-broken", weight: 6, strike: func(s *stranger) {
		s.reads["plug-cap"] = s.openOr(s.like(60e3, 0.8))
		s.sees["spark-bare-lead"] = true
	}},
	{id: "plug-fouled", weight: 9, strike: func(s *stranger) {
		s.reads["plug-leak"] = s.openOr(s.like(20e3, 2)) // some leak at high voltage alone
		s.sees["spark-good-plug"], s.sees["spark-bare-lead"] = true, true
	}},
	{id: "ignition-ground", weight: 4, strike: func(s *stranger) {
		s.reads["box-ground"] = s.like(20, 1.2)
		s.times(0.05, "box-output")
	}},
}

// openOr is an open line in half of the cases.
func (s *stranger) openOr(ohms float64) float64 {
	if s.oneIn(2) {
		return openLine
	}
	return ohms
}

// killed grounds the kill wire: the exciter drives into it while the plug is together,
// and the spark is back with the wire off.
func (s *stranger) killed(ohms, left float64) {
	s.reads["kill-wire"] = ohms
	s.times(left, "exciter-cranking")
	s.sees["spark-kill-off"] = true
}
