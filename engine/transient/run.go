package transient

import (
	"errors"
	"fmt"
	"math"
)

// Run is a circuit under way.
type Run struct {
	net      *net
	sources  sources
	patterns []uint64 // by island: which valves conduct
	solved   []uint64 // what they were in the step just made, for what is shown of it
	armed    []bool   // by valve: it conducts when above its knee
	firing   []bool   // by valve: a thyristor that just came above its knee
	levels   []*level
	level    *level
	fine     int // how often Refine has the steps halved, until fineEnd
	fineEnd  float64
	step     float64

	now, then                     *frame
	time, before                  float64
	shown                         float64 // up to where steps were reported
	push, pushCapacitor, pushPair []float64
	unsettled                     bool // valves or emfs jumped
	jumped                        bool // in the step just made
	asked                         bool // the gates were, since the last whole step or event
	hard                          bool // and not at a current or voltage of zero
	events                        int  // since the last whole step
	state                         State
	between, bent                 *frame
	emfAfter, bowEmf              []float64
	offOfWinding                  []int
	swings                        swings
}

// level is a step length and its rules: the whole step, the short step after a
// jump, and the one that gets through when jumps do not end.
type level struct {
	depth              int
	h                  float64
	whole, short, wide *method
}

const (
	maxDepth   = 12
	shortSteps = 64 // how many short steps make a whole one
	maxEvents  = 40 // without a whole step between
)

// Start begins at the voltages of the capacitors with no current in any
// inductance, in steps of some seconds: 64 in a period of the highest frequency
// give mean currents of a rectifier within 0.3 % (see the tests). The error names
// the element that is wrong.
func (c *Circuit) Start(step float64) (*Run, error) {
	if !(step > 0) || math.IsInf(step, 0) {
		return nil, fmt.Errorf("a step of %g s is none: it must be above zero", step)
	}
	n, err := c.sort()
	if err != nil {
		return nil, err
	}
	r := &Run{
		net: n, sources: newSources(n), step: step,
		patterns: make([]uint64, len(n.islands)), solved: make([]uint64, len(n.islands)), armed: make([]bool, len(n.valves)), firing: make([]bool, len(n.valves)),
		now: n.newFrame(), then: n.newFrame(), between: n.newFrame(), bent: n.newFrame(),
		emfAfter: make([]float64, len(n.windings)), bowEmf: make([]float64, len(n.windings)), offOfWinding: n.offsOfWindings(),
		push: make([]float64, len(n.windings)), pushCapacitor: make([]float64, len(n.capacitors)),
		pushPair: make([]float64, 2*len(n.pairs)),
	}
	r.swings = swings{make([]float64, len(n.windings)), make([]float64, len(n.capacitors)), make([]float64, 2*len(n.pairs))}
	r.state = State{net: n, frame: r.now, patterns: r.solved, offLeak: OffLeak, run: r}
	r.use(0)
	r.first()
	return r, r.sound()
}

// use takes steps halved depth times.
func (r *Run) use(depth int) {
	r.sources.stretch(r.net, math.Ldexp(r.step, -depth))
	for _, l := range r.levels {
		if l.depth == depth {
			r.level = l
			return
		}
	}
	h := math.Ldexp(r.step, -depth)
	r.level = &level{depth: depth, h: h,
		whole: r.net.trapezoidal(h), short: r.net.backwardEuler(h / shortSteps), wide: r.net.backwardEuler(h / 2)}
	r.levels = append(r.levels, r.level)
}

// first finds the voltages at the start, and the currents of inductances that
// hardly anything loads: those are there at once, and would ring for ever from
// step to step if they began at zero.
func (r *Run) first() {
	for i, c := range r.net.capacitors {
		r.now.cv[i] = c.volts
	}
	r.sources.at(0)
	r.sources.pulse(0)
	for i := range r.net.valves {
		r.armed[i] = r.net.valves[i].diode
	}
	const instant = 1 << 16 // of a step
	m := r.net.backwardEuler(r.step / instant)
	slow := r.slow()
	for range 2 {
		r.settleAll(m)
		r.now, r.then = r.then, r.now
		r.noCurrentsYet(slow)
	}
	r.state.frame = r.now
}

// slow are the windings whose currents are still on their way after a few short
// steps; the others' are what they were found to be. Capacitors keep theirs.
func (r *Run) slow() []bool {
	const steps, arrived = 12, 0.01
	out := make([]bool, len(r.net.windings))
	for range steps {
		r.settleAll(r.level.short)
		r.now, r.then = r.then, r.now
		for i, c := range r.net.capacitors {
			r.now.cv[i] = c.volts
		}
		clear(r.now.pamps)
	}
	for i := range out {
		is := r.now.amps[i]
		out[i] = r.net.windings[i].henries > 0 && !(math.Abs(is-r.then.amps[i]) <= arrived*math.Abs(is))
	}
	r.noCurrentsYet(out)
	return out
}

func (r *Run) noCurrentsYet(slow []bool) {
	for i := range r.net.windings {
		if slow[i] {
			r.now.amps[i] = 0
		}
	}
	clear(r.now.pamps)
}

// State is where the run is.
func (r *Run) State() *State { return &r.state }

var errRanAway = errors.New("the voltages of the circuit ran away to infinity")

func (r *Run) sound() error {
	for _, x := range r.now.slab {
		if !finite(x) {
			return errRanAway
		}
	}
	return nil
}

// Advance goes on until a time and ends exactly there. each, which may be nil, is
// called after every step; a step that would end beyond until is shown in two
// parts. Nothing is allocated once all patterns of the valves have been met.
func (r *Run) Advance(until float64, each func(s *State)) error {
	if !finite(until) || until < r.shown {
		return fmt.Errorf("the circuit cannot go on from %g s until %g s", r.shown, until)
	}
	near := 1e-9 * r.level.h
	for r.shown < until-near {
		if r.time <= r.shown {
			r.goOn()
		}
		if r.time > until+near {
			r.between.mix(r.then, r.now, r.shareUntil(until))
			r.show(r.between, until, each)
			break
		}
		r.show(r.now, r.time, each)
	}
	return r.sound()
}

// shareUntil is how far a time is into the step just made. After a jump voltages
// are the new ones at once.
func (r *Run) shareUntil(t float64) float64 {
	if r.jumped {
		return 1
	}
	return (t - r.before) / (r.time - r.before)
}

func (r *Run) show(f *frame, t float64, each func(s *State)) {
	if t <= r.shown {
		return
	}
	s := &r.state
	s.frame, s.time, s.dt = f, t, t-r.shown
	r.shown = t
	if each != nil {
		each(s)
	}
}

// goOn makes one step or a part of one, of any length including none.
func (r *Run) goOn() {
	r.pace()
	if !r.unsettled && !r.asked {
		r.askGates()
		r.asked = true
	}
	switch {
	case r.unsettled && r.events > maxEvents:
		r.settle(r.level.wide)
		r.events = 0
	case r.unsettled:
		r.settle(r.level.short)
	default:
		r.whole()
		r.asked = false
	}
}

// accept makes what was solved the present.
func (r *Run) accept(dt float64) {
	r.now, r.then = r.then, r.now
	r.before = r.time
	r.time += dt
}

// whole tries a trapezoidal step and cuts it at the first event.
func (r *Run) whole() {
	m := r.level.whole
	copy(r.solved, r.patterns)
	r.jumped = false
	r.sources.at(r.time + m.dt)
	for k := range r.net.islands {
		b := &r.net.islands[k]
		r.solve(b, m, m.factor(r.net, k, r.patterns[k]), r.now, r.then)
	}
	share := r.firstEvent()
	if share >= 1 {
		r.accept(m.dt)
		r.followSwings()
		r.events = 0
		return
	}
	r.cut(share)
	r.events++
}
