package circuit_test

import (
	"math"

	"coilbook/engine/circuit"
)

// An integration in small steps, the plain alternative to the tables: the midpoint
// rule, and in each step the states of the diodes by trying all until one agrees.

type terminal struct {
	ohms        float64 // of the phase and of its diode
	lag         float64 // of the emf, in radians
	peak        float64
	low, high   float64
	held, feeds bool
	bare        bool
}

type model struct {
	t       []terminal
	henries float64
	i       []float64
}

const steps = 720

var none = math.Inf(1)

// modelOf builds what Charging works out, from the words of the arrangement alone.
func modelOf(a circuit.Arrangement, s circuit.Source, k circuit.Sink) *model {
	x := k.Volts + 2*k.DiodeVolts
	r, l := s.Ohms, s.Henries
	coil := func(peak float64) []terminal {
		return []terminal{{peak: peak / 2, high: x}, {peak: -peak / 2, high: x}}
	}
	star := func(peak float64) []terminal {
		t := make([]terminal, 3)
		for n := range t {
			t[n] = terminal{lag: 2 * math.Pi / 3 * float64(n), peak: peak, high: x}
		}
		return t
	}
	short := terminal{low: k.Volts + k.DiodeVolts, high: k.Volts + k.DiodeVolts, held: true, feeds: true}
	var t []terminal
	switch a {
	case circuit.StarBridge:
		t = star(s.Peak)
	case circuit.StarDiodeOpen:
		t = star(s.Peak)
		t[1].low = -none
	case circuit.StarDiodeShorted:
		t = star(s.Peak)
		short.lag, short.peak = t[2].lag, s.Peak
		t[2] = short
	case circuit.StarPhaseOpen:
		t = coil(s.Peak * math.Sqrt(3))
	case circuit.DeltaBridge:
		t, r, l = star(s.Peak/math.Sqrt(3)), s.Ohms/3, s.Henries/3
	case circuit.DeltaBranchOpen:
		t = []terminal{{peak: s.Peak, high: x}, {lag: math.Pi / 3, peak: s.Peak, high: x}, {high: x, bare: true}}
	case circuit.FullWave, circuit.FullWaveDiodeOpen, circuit.FullWaveDiodeShorted, circuit.HalfWave:
		t, r, l = coil(s.Peak), s.Ohms/2, s.Henries/2
	}
	switch a {
	case circuit.FullWaveDiodeOpen:
		t[0].high = none
	case circuit.HalfWave:
		t[0] = terminal{peak: s.Peak / 2, low: -none, high: k.Volts + k.DiodeVolts}
		t[1] = terminal{peak: -s.Peak / 2, held: true}
	case circuit.FullWaveDiodeShorted:
		short.peak = s.Peak / 2
		t[0] = short
	}
	for n := range t {
		if !t[n].bare {
			t[n].ohms = r
		}
		if !t[n].held {
			t[n].ohms += k.DiodeOhms
		}
	}
	return &model{t: t, henries: l, i: make([]float64, len(t))}
}

// settled is the mean and the rms about it, once a period repeats the one before.
func (m *model) settled(hertz float64) (mean, ripple float64) {
	h := 1 / hertz / steps
	last := math.Inf(1)
	for range 400 {
		sum, square := 0.0, 0.0
		for n := range steps {
			out := m.step((float64(n)+0.5)*2*math.Pi/steps, h)
			sum += out
			square += out * out
		}
		mean = sum / steps
		ripple = math.Sqrt(math.Max(square/steps-mean*mean, 0))
		if math.Abs(mean-last) < 1e-6*math.Abs(mean)+1e-9 {
			break
		}
		last = mean
	}
	return mean, ripple
}

// step advances the currents and gives the mean of the sink's over the step.
func (m *model) step(angle, h float64) (out float64) {
	states := 1
	for range m.t {
		states *= 3
	}
	for code := range states {
		next, ok := m.try(code, angle, h)
		if !ok {
			continue
		}
		for k := range m.t {
			middle := (m.i[k] + next[k]) / 2
			switch {
			case m.t[k].held && m.t[k].feeds:
				out += middle
			case !m.t[k].held:
				out += math.Max(middle, 0)
			}
			m.i[k] = next[k]
		}
		return out
	}
	panic("no state of the diodes agrees")
}

// try takes each terminal to be up, down or off (the digits of code, to base 3).
func (m *model) try(code int, angle, h float64) (next [3]float64, ok bool) {
	var on [3]bool
	var up [3]bool
	for k := range m.t {
		digit := code % 3
		code /= 3
		if m.t[k].held && digit != 0 {
			return next, false
		}
		on[k], up[k] = m.t[k].held || digit != 2, digit == 0
	}
	var push, level, admits [3]float64
	star, sum, conducting := 0.0, 0.0, 0
	for k, t := range m.t {
		push[k], admits[k] = m.companion(k, angle, h)
		level[k] = t.low
		if up[k] {
			level[k] = t.high
		}
		if on[k] {
			conducting++
			star += admits[k] * (level[k] - push[k])
			sum += admits[k]
		}
		if on[k] && math.IsInf(level[k], 0) {
			return next, false
		}
	}
	if conducting == 0 {
		return next, m.idle(push)
	}
	if conducting == 1 && !m.holds() {
		return next, false
	}
	star /= sum
	for k := range m.t {
		if on[k] {
			next[k] = (push[k] + star - level[k]) * admits[k]
		}
	}
	return next, m.agrees(on, up, push, star, next)
}

// companion is what a phase is for one step: an emf behind a conductance. The bare
// end of two branches has but the diode's resistance, of which it gets a trifle.
func (m *model) companion(k int, angle, h float64) (push, admits float64) {
	t := m.t[k]
	if t.bare {
		return 0, 1 / (t.ohms + 1e-6)
	}
	return t.peak*math.Sin(angle-t.lag) + (m.henries/h-t.ohms/2)*m.i[k], 1 / (m.henries/h + t.ohms/2)
}

func (m *model) holds() bool {
	for _, t := range m.t {
		if t.held {
			return true
		}
	}
	return false
}

const hair = 1e-9

func (m *model) agrees(on, up [3]bool, push [3]float64, star float64, next [3]float64) bool {
	for k, t := range m.t {
		v := push[k] + star
		switch {
		case t.held:
		case on[k] && up[k] && next[k] < -hair, on[k] && !up[k] && next[k] > hair:
			return false
		case !on[k] && (v > t.high+hair || v < t.low-hair):
			return false
		}
	}
	return true
}

func (m *model) idle(push [3]float64) bool {
	for k, t := range m.t {
		for j, u := range m.t {
			if k != j && push[k]-push[j] > t.high-u.low+hair {
				return false
			}
		}
	}
	return true
}
