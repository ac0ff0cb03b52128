package transient

// method is a rule that goes from one time to the next with a certain step, and
// the matrices that go with it.
//
// A winding's next current is siemens·(emf - v) + siemens·(memory·i + lag·u),
// where u = emf - v of the time before; a capacitor's is
// siemens·(v - v before) - lag·i.
type method struct {
	dt         float64
	lag        float64
	windings   []companion
	capacitors []float64 // siemens
	pairs      []pairCompanion
	known      []map[uint64]*factor // by island
	latest     []*factor
	latestFor  []uint64
}

type companion struct{ siemens, memory, lag float64 }

// pairCompanion has the siemens of two coupled coils, and what each current leaves
// behind in each voltage.
type pairCompanion struct{ y11, y12, y22, m11, m12, m22 float64 }

func (n *net) trapezoidal(h float64) *method { return n.method(h, 2/h, 1) }

func (n *net) backwardEuler(h float64) *method { return n.method(h, 1/h, 0) }

// stiff tells that a step has so many of the time constants L/R that a winding
// is stepped backward, which then is as exact and does not ring.
func (w *windingPart) stiff(h float64) bool {
	const many = 40
	return w.henries*many < w.ohms*h
}

// method sets up a rule in which a derivative counts rate times a difference.
func (n *net) method(h, rate, lag float64) *method {
	m := &method{dt: h, lag: lag}
	for _, w := range n.windings {
		m.windings = append(m.windings, windingCompanion(w, h, rate, lag))
	}
	for _, c := range n.capacitors {
		m.capacitors = append(m.capacitors, rate*c.farads)
	}
	for _, p := range n.pairs {
		m.pairs = append(m.pairs, p.companion(rate, lag))
	}
	for range n.islands {
		m.known = append(m.known, map[uint64]*factor{})
	}
	m.latest = make([]*factor, len(n.islands))
	m.latestFor = make([]uint64, len(n.islands))
	return m
}

func windingCompanion(w windingPart, h, rate, lag float64) companion {
	if w.stiff(h) {
		rate, lag = 1/h, 0
	}
	return companion{siemens: 1 / (w.ohms + rate*w.henries), memory: rate*w.henries - lag*w.ohms, lag: lag}
}

func (p pairPart) companion(rate, lag float64) pairCompanion {
	z11, z22, z12 := p.r1+rate*p.l1, p.r2+rate*p.l2, rate*p.mutual
	det := z11*z22 - z12*z12
	return pairCompanion{
		y11: z22 / det, y22: z11 / det, y12: -z12 / det,
		m11: rate*p.l1 - lag*p.r1, m22: rate*p.l2 - lag*p.r2, m12: z12,
	}
}

// factor is the matrix of an island for a pattern of its valves.
func (m *method) factor(n *net, k int, pattern uint64) *factor {
	if m.latest[k] != nil && m.latestFor[k] == pattern {
		return m.latest[k]
	}
	f, ok := m.known[k][pattern]
	if !ok {
		f = m.build(n, &n.islands[k], pattern)
		m.known[k][pattern] = f
	}
	m.latest[k], m.latestFor[k] = f, pattern
	return f
}

func (m *method) build(n *net, b *island, pattern uint64) *factor {
	a := newMatrix(b.n, NodeLeak)
	for i := b.windings.from; i < b.windings.to; i++ {
		a.join(n.windings[i].a, n.windings[i].b, m.windings[i].siemens)
	}
	for i := b.capacitors.from; i < b.capacitors.to; i++ {
		a.join(n.capacitors[i].a, n.capacitors[i].b, m.capacitors[i])
	}
	for i := b.pairs.from; i < b.pairs.to; i++ {
		p, y := n.pairs[i], m.pairs[i]
		a.join(p.first.a, p.first.b, y.y11)
		a.join(p.second.a, p.second.b, y.y22)
		a.transfer(p.first.a, p.first.b, p.second.a, p.second.b, y.y12)
	}
	return a.decompose(n.steady(b, a, pattern, OffLeak))
}

// steady adds what knows no time to the matrix, and returns the current that
// valves feed into the nodes.
func (n *net) steady(b *island, a *matrix, pattern uint64, leak float64) []float64 {
	for _, p := range b.fixed {
		a.join(p.a, p.b, p.siemens)
	}
	base := make([]float64, b.n+1)
	for _, v := range n.switchesOf(b) {
		for i := range v {
			siemens := leak
			if pattern&v[i].bit != 0 {
				siemens = v[i].siemens
				base[v[i].a] += siemens * v[i].knee
				base[v[i].b] -= siemens * v[i].knee
			}
			a.join(v[i].a, v[i].b, siemens)
		}
	}
	return base
}

func (n *net) switchesOf(b *island) [2][]valve {
	return [2][]valve{n.valves[b.valves.from:b.valves.to], n.contacts[b.contacts.from:b.contacts.to]}
}
