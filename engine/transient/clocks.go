package transient

import "math"

// clock is a frequency that several sines share, so that one sine and cosine
// serve them all.
type clock struct{ omega, sin, cos float64 }

type sinePart struct {
	winding, clock int
	sin, cos       float64 // of the phase, times the peak and what stretch makes of it
	sine           Sine
}

type pulsePart struct {
	winding int
	pulse   Pulse
}

type funcPart struct {
	winding int
	emf     Source
}

// sources are the emfs of all windings.
type sources struct {
	emf    []float64
	clocks []clock
	sines  []sinePart
	pulses []pulsePart
	funcs  []funcPart
	edge   float64 // the next of all pulses
}

func newSources(n *net) sources {
	s := sources{emf: make([]float64, len(n.windings)), edge: math.Inf(1)}
	for i, w := range n.windings {
		switch e := w.emf.(type) {
		case Constant:
			s.emf[i] = float64(e)
		case Sine:
			s.sines = append(s.sines, sinePart{winding: i, clock: s.clock(2 * math.Pi * e.Hertz), sine: e})
		case Pulse:
			s.pulses = append(s.pulses, pulsePart{i, e})
		default:
			s.funcs = append(s.funcs, funcPart{i, e})
		}
	}
	return s
}

func (s *sources) clock(omega float64) int {
	for i := range s.clocks {
		if s.clocks[i].omega == omega {
			return i
		}
	}
	s.clocks = append(s.clocks, clock{omega: omega})
	return len(s.clocks) - 1
}

// stretch prepares for steps of h. The trapezoidal rule takes a sine for a chain
// of straight lines, which holds less of it by tan(x)/x, half a step being x: the
// sine of an inductance is made higher by just that, 0.08 % for 64 steps in a
// period, as a rectifier near the speed where it begins multiplies such a lack
// by ten. Its averages then are right, its samples high.
func (s *sources) stretch(n *net, h float64) {
	const most = 0.5
	for i := range s.sines {
		p := &s.sines[i]
		factor := 1.0
		x := min(math.Pi*math.Abs(p.sine.Hertz)*h, most)
		if w := &n.windings[p.winding]; x > 0 && !w.stiff(h) {
			factor = math.Tan(x) / x
		}
		sin, cos := math.Sincos(p.sine.Phase)
		p.sin, p.cos = factor*p.sine.Volts*cos, factor*p.sine.Volts*sin
	}
}

// at sets all but the pulses to their value at a time.
func (s *sources) at(t float64) {
	for i := range s.clocks {
		c := &s.clocks[i]
		c.sin, c.cos = math.Sincos(c.omega * t)
	}
	for i := range s.sines {
		p := &s.sines[i]
		c := &s.clocks[p.clock]
		s.emf[p.winding] = p.sin*c.sin + p.cos*c.cos
	}
	for i := range s.funcs {
		s.emf[s.funcs[i].winding] = s.funcs[i].emf.At(t)
	}
}

// pulse sets the pulses to what follows a time, and finds the next edge.
func (s *sources) pulse(t float64) {
	s.edge = math.Inf(1)
	for i := range s.pulses {
		p := &s.pulses[i]
		s.emf[p.winding] = p.pulse.after(t)
		s.edge = min(s.edge, p.pulse.next(t))
	}
}
