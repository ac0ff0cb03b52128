package transient

import "errors"

// AtRest is the direct current that comes of the sources as they are at a time:
// inductances are their resistance, capacitors are open, and what is off leaks
// RestLeak. Thyristors are off until a gate fires them; gates see the currents
// before they answer. The error names what is wrong, or that the gates never
// agree with what they bring about.
func (c *Circuit) AtRest(t float64) (*State, error) {
	if !finite(t) {
		return nil, errors.New("a circuit is at rest at a finite time only")
	}
	n, err := c.sort()
	if err != nil {
		return nil, err
	}
	rest := &resting{net: n, frame: n.newFrame(), patterns: make([]uint64, len(n.islands)), may: make([]uint64, len(n.islands))}
	for i := range n.valves {
		if v := &n.valves[i]; v.diode {
			rest.may[v.island] |= v.bit
		}
	}
	s := &State{net: n, frame: rest.frame, patterns: rest.patterns, offLeak: RestLeak, time: t}
	const rounds = 20
	for range rounds {
		rest.solve(t)
		if !rest.ask(s) {
			return s, rest.sound()
		}
	}
	return nil, errors.New("the gates of the circuit never agree with what they bring about")
}

type resting struct {
	net      *net
	frame    *frame
	patterns []uint64
	may      []uint64 // by island: diodes, and thyristors that are fired
}

func (r *resting) solve(t float64) {
	for k := range r.net.islands {
		b := &r.net.islands[k]
		const most = 1000
		for try := range most {
			r.solveIsland(b, t, r.patterns[k])
			wrong := r.net.misfits(b, r.frame, r.patterns[k], r.may[k])
			if wrong == 0 {
				break
			}
			if try >= 5 {
				wrong &= -wrong
			}
			r.patterns[k] ^= wrong
		}
		r.follow(b)
	}
}

func (r *resting) solveIsland(b *island, t float64, pattern uint64) {
	n := r.net
	m := newMatrix(b.n, RestLeak)
	base := n.steady(b, m, pattern, RestLeak)
	for i := b.windings.from; i < b.windings.to; i++ {
		w := &n.windings[i]
		g := conductance(w.ohms)
		r.frame.rest[i] = w.emf.At(t)
		m.join(w.a, w.b, g)
		base[w.a] += g * r.frame.rest[i]
		base[w.b] -= g * r.frame.rest[i]
	}
	for i := b.pairs.from; i < b.pairs.to; i++ {
		p := &n.pairs[i]
		m.join(p.first.a, p.first.b, conductance(p.r1))
		m.join(p.second.a, p.second.b, conductance(p.r2))
	}
	v := r.frame.v[b.off : b.off+b.n+1]
	copy(v, base)
	m.decompose(nil).solve(v)
	v[b.n] = 0
}

// follow finds the currents.
func (r *resting) follow(b *island) {
	n, f := r.net, r.frame
	v := f.v[b.off : b.off+b.n+1]
	across := func(e ends) float64 { return v[e.a] - v[e.b] }
	for i := b.windings.from; i < b.windings.to; i++ {
		f.amps[i] = conductance(n.windings[i].ohms) * (f.rest[i] - across(n.windings[i].ends))
	}
	for i := b.capacitors.from; i < b.capacitors.to; i++ {
		f.cv[i] = across(n.capacitors[i].ends)
	}
	for i := b.pairs.from; i < b.pairs.to; i++ {
		p := &n.pairs[i]
		f.pamps[2*i] = conductance(p.r1) * across(p.first)
		f.pamps[2*i+1] = conductance(p.r2) * across(p.second)
	}
}

// ask sets the switches and thyristors as their gates say, and tells whether one
// changed.
func (r *resting) ask(s *State) bool {
	changed := false
	for i := range r.net.contacts {
		v := &r.net.contacts[i]
		if v.gate(s) != (r.patterns[v.island]&v.bit != 0) {
			r.patterns[v.island] ^= v.bit
			changed = true
		}
	}
	for i := range r.net.valves {
		v := &r.net.valves[i]
		if !v.diode && v.gate != nil && r.may[v.island]&v.bit == 0 && v.gate(s) {
			r.may[v.island] |= v.bit
			changed = true
		}
	}
	return changed
}

func (r *resting) sound() error {
	for _, x := range r.frame.slab {
		if !finite(x) {
			return errRanAway
		}
	}
	return nil
}
