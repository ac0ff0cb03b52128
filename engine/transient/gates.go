package transient

import "math"

// askGates asks the gates of all switches and of the thyristors that are off.
func (r *Run) askGates() {
	s, shown := r.present()
	for i := range r.net.contacts {
		v := &r.net.contacts[i]
		if v.gate(s) != (r.patterns[v.island]&v.bit != 0) {
			r.patterns[v.island] ^= v.bit
			r.unsettled, r.hard = true, true
		}
	}
	for i := range r.net.valves {
		v := &r.net.valves[i]
		if v.diode {
			continue
		}
		on := r.patterns[v.island]&v.bit != 0
		r.armed[i] = !on && v.gate != nil && v.gate(s)
		if r.armed[i] && r.over(v, r.now) > v.knee+slackVolts {
			r.patterns[v.island] ^= v.bit
			r.unsettled, r.hard = true, true
		}
	}
	r.backTo(shown)
}

// askFiring asks the gates of thyristors that came above their knee whether they
// still say so: a step ago they did.
func (r *Run) askFiring() {
	s, shown := r.present()
	for i := range r.net.valves {
		if !r.firing[i] {
			continue
		}
		r.firing[i] = false
		if v := &r.net.valves[i]; !v.gate(s) {
			r.patterns[v.island] ^= v.bit
			r.armed[i] = false
		}
	}
	r.backTo(shown)
}

// view is what the state shows.
type view struct {
	frame    *frame
	time, dt float64
}

// present makes the state show where the run is, for gates to see, which may be
// beyond what was shown to the caller.
func (r *Run) present() (*State, view) {
	s := &r.state
	shown := view{s.frame, s.time, s.dt}
	s.frame, s.time, s.dt = r.now, r.time, r.time-r.before
	s.patterns = r.patterns
	return s, shown
}

func (r *Run) backTo(v view) {
	r.state.frame, r.state.time, r.state.dt = v.frame, v.time, v.dt
	r.state.patterns = r.solved
}

// refine keeps the finest of what was asked for, until the last of the ends.
func (r *Run) refine(step, duration float64) {
	if !(step > 0) || !(duration > 0) {
		return
	}
	depth := min(max(int(math.Ceil(math.Log2(r.step/step)-1e-9)), 0), maxDepth)
	if r.time >= r.fineEnd || depth > r.fine {
		r.fine = depth
	}
	r.fineEnd = max(r.fineEnd, r.time+duration)
}

// pace takes the step that is asked for now.
func (r *Run) pace() {
	depth := 0
	if r.time < r.fineEnd {
		depth = r.fine
	}
	if depth != r.level.depth {
		r.use(depth)
	}
}
