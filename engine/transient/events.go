package transient

// firstEvent is the share of the step just tried at which the first valve passes
// its knee or the first pulse has an edge, 1 or more for never.
func (r *Run) firstEvent() float64 {
	edge := r.sources.edge <= r.time+r.level.h
	if !edge && !r.anyCrossing() {
		return 1
	}
	r.bow()
	share := 1.0
	if edge {
		share = max((r.sources.edge-r.time)/r.level.h, 0)
	}
	for i := range r.net.valves {
		share = min(share, r.crossing(i))
	}
	return min(share, almostWhole)
}

// almostWhole keeps an event at the very end of a step an event.
const almostWhole = 1 - 1e-9

func (r *Run) anyCrossing() bool {
	for k := range r.net.islands {
		b := &r.net.islands[k]
		if r.net.misfits(b, r.then, r.patterns[k], r.armedIn(b)) != 0 {
			return true
		}
	}
	return false
}

// crossing is the share of the step at which a valve has to change, 2 for never.
func (r *Run) crossing(i int) float64 {
	v := &r.net.valves[i]
	is := r.over(v, r.then) - v.knee
	if r.patterns[v.island]&v.bit != 0 {
		if is >= -v.slack {
			return 2
		}
	} else if is <= slackVolts || !r.armed[i] {
		return 2
	}
	was := r.over(v, r.now) - v.knee
	if was*is >= 0 {
		return 0
	}
	return root(was, is, r.over(v, r.bent))
}

// over is the voltage over a valve.
func (r *Run) over(v *valve, f *frame) float64 {
	off := r.net.islands[v.island].off
	return f.v[off+int(v.a)] - f.v[off+int(v.b)]
}

// cut ends the step at a share of it and changes the valves that are due there.
func (r *Run) cut(share float64) {
	const same = 1e-9
	h := r.level.h
	for i := range r.net.valves {
		if r.crossing(i) <= share+same {
			v := &r.net.valves[i]
			r.patterns[v.island] ^= v.bit
			r.firing[i] = !v.diode && r.patterns[v.island]&v.bit != 0
		}
	}
	if r.sources.edge <= r.time+h*(share+same) {
		r.sources.pulse(r.sources.edge)
		r.hard = true
	}
	r.then.mixBent(r.now, r.then, r.bent, share)
	r.accept(share * h)
	r.askFiring()
	r.unsettled = true
}

// settle makes a backward-Euler step after a jump, and another one if the jump
// was not at a current or voltage of zero: the first one's voltages then are an
// impulse.
func (r *Run) settle(m *method) {
	r.sources.at(r.time + m.dt)
	again := r.settleAll(m)
	r.jumped = true
	r.accept(m.dt)
	r.unsettled = r.hard || again && r.events <= maxEvents
	if r.unsettled {
		r.events++
	}
	r.hard = false
}

// settleAll solves all islands with valves that fit, and tells whether more of
// them changed than was known.
func (r *Run) settleAll(m *method) bool {
	changed := false
	for k := range r.net.islands {
		b := &r.net.islands[k]
		p := r.patterns[k]
		r.patterns[k] = r.consistent(k, b, m, p)
		changed = changed || r.patterns[k] != p
	}
	copy(r.solved, r.patterns)
	return changed
}

// consistent finds the pattern in which no valve conducts backward and none is off
// above its knee. At first all that do not fit are changed at once; if that does
// not end, only the first of them, which must end (Murty, 1974, from memory).
func (r *Run) consistent(k int, b *island, m *method, pattern uint64) uint64 {
	const boldly, most = 5, 300
	may := pattern | r.armedIn(b)
	for try := 0; ; try++ {
		r.solve(b, m, m.factor(r.net, k, pattern), r.now, r.then)
		wrong := r.net.misfits(b, r.then, pattern, may)
		if wrong == 0 || try == most {
			return pattern
		}
		if try >= boldly {
			wrong &= -wrong
		}
		pattern ^= wrong
	}
}

func (r *Run) armedIn(b *island) uint64 {
	bits := uint64(0)
	for i := b.valves.from; i < b.valves.to; i++ {
		if r.armed[i] {
			bits |= r.net.valves[i].bit
		}
	}
	return bits
}

// misfits are the valves that do not fit the voltages.
func (n *net) misfits(b *island, f *frame, pattern, may uint64) uint64 {
	bits := uint64(0)
	for i := b.valves.from; i < b.valves.to; i++ {
		v := &n.valves[i]
		above := f.v[b.off+int(v.a)] - f.v[b.off+int(v.b)] - v.knee
		if pattern&v.bit != 0 {
			if above < -v.slack {
				bits |= v.bit
			}
		} else if above > slackVolts && may&v.bit != 0 {
			bits |= v.bit
		}
	}
	return bits
}
