package transient

// Gate says whether a switch is closed or a thyristor is fired. It is asked
// between whole steps and at events, not in the short steps after its own answer:
// one that contradicts itself swings from step to step and no faster.
type Gate func(s *State) bool

// State is the circuit at one time. It is only valid until the circuit goes on.
type State struct {
	net      *net
	frame    *frame
	patterns []uint64
	offLeak  float64
	time, dt float64
	run      *Run
}

// Time is in seconds from the start.
func (s *State) Time() float64 { return s.time }

// Dt is the length of the step just made.
func (s *State) Dt() float64 { return s.dt }

// Volts is the voltage of a node over ground.
func (s *State) Volts(n Node) float64 { return s.frame.v[s.net.place[n]] }

// Between is the voltage of a over b.
func (s *State) Between(a, b Node) float64 { return s.Volts(a) - s.Volts(b) }

// Amps is the current from a to b through the element; for a Winding or Supply
// the current that it delivers out of a.
func (s *State) Amps(b Branch) float64 {
	p := &s.net.spots[b]
	switch p.kind {
	case winding:
		return s.frame.amps[p.at]
	case capacitor:
		return s.frame.camps[p.at]
	case coupled:
		if p.second {
			return s.frame.pamps[2*p.at+1]
		}
		return s.frame.pamps[2*p.at]
	case diode, thyristor:
		return s.through(&s.net.valves[p.at], p)
	case contact:
		return s.through(&s.net.contacts[p.at], p)
	}
	return p.siemens * (s.frame.v[p.a] - s.frame.v[p.b])
}

func (s *State) through(v *valve, p *spot) float64 {
	across := s.frame.v[p.a] - s.frame.v[p.b]
	if s.patterns[v.island]&v.bit == 0 {
		return s.offLeak * across
	}
	return v.siemens * (across - v.knee)
}

// Conducts reports whether a diode, thyristor or switch is on.
func (s *State) Conducts(b Branch) bool {
	p := &s.net.spots[b]
	switch p.kind {
	case diode, thyristor:
		v := &s.net.valves[p.at]
		return s.patterns[v.island]&v.bit != 0
	case contact:
		v := &s.net.contacts[p.at]
		return s.patterns[v.island]&v.bit != 0
	}
	return true
}

// Refine asks for steps no longer than step, in s, for a duration from now on.
// Steps are the run's own, halved as often as needed, 12 times at most.
func (s *State) Refine(step, duration float64) {
	if s.run != nil {
		s.run.refine(step, duration)
	}
}
