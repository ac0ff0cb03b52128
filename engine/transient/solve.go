package transient

// solve goes from one frame to the next on one island.
func (r *Run) solve(b *island, m *method, f *factor, from, to *frame) {
	v := to.v[b.off : b.off+b.n+1]
	copy(v, f.base)
	r.windingsPush(b, m, from, v)
	r.capacitorsPush(b, m, from, v)
	if b.pairs.from < b.pairs.to {
		r.pairsPush(b, m, from, v)
	}
	f.solve(v)
	v[b.n] = 0
	r.windingsFollow(b, m, to, v)
	r.capacitorsFollow(b, m, to, v)
	if b.pairs.from < b.pairs.to {
		r.pairsFollow(b, m, to, v)
	}
}

func (r *Run) windingsPush(b *island, m *method, from *frame, v []float64) {
	for i := b.windings.from; i < b.windings.to; i++ {
		w, c := &r.net.windings[i], &m.windings[i]
		j := c.siemens * (r.sources.emf[i] + c.memory*from.amps[i] + c.lag*from.rest[i])
		r.push[i] = j
		v[w.a] += j
		v[w.b] -= j
	}
}

func (r *Run) windingsFollow(b *island, m *method, to *frame, v []float64) {
	for i := b.windings.from; i < b.windings.to; i++ {
		w := &r.net.windings[i]
		across := v[w.a] - v[w.b]
		to.amps[i] = r.push[i] - m.windings[i].siemens*across
		to.rest[i] = r.sources.emf[i] - across
	}
}

func (r *Run) capacitorsPush(b *island, m *method, from *frame, v []float64) {
	for i := b.capacitors.from; i < b.capacitors.to; i++ {
		c := &r.net.capacitors[i]
		j := m.capacitors[i]*from.cv[i] + m.lag*from.camps[i]
		r.pushCapacitor[i] = j
		v[c.a] += j
		v[c.b] -= j
	}
}

func (r *Run) capacitorsFollow(b *island, m *method, to *frame, v []float64) {
	for i := b.capacitors.from; i < b.capacitors.to; i++ {
		c := &r.net.capacitors[i]
		across := v[c.a] - v[c.b]
		to.camps[i] = m.capacitors[i]*across - r.pushCapacitor[i]
		to.cv[i] = across
	}
}

func (r *Run) pairsPush(b *island, m *method, from *frame, v []float64) {
	for i := b.pairs.from; i < b.pairs.to; i++ {
		p, y := &r.net.pairs[i], &m.pairs[i]
		i1, i2 := from.pamps[2*i], from.pamps[2*i+1]
		e1 := y.m11*i1 + y.m12*i2 + m.lag*from.pv[2*i]
		e2 := y.m12*i1 + y.m22*i2 + m.lag*from.pv[2*i+1]
		j1, j2 := y.y11*e1+y.y12*e2, y.y12*e1+y.y22*e2
		r.pushPair[2*i], r.pushPair[2*i+1] = j1, j2
		v[p.first.a] -= j1
		v[p.first.b] += j1
		v[p.second.a] -= j2
		v[p.second.b] += j2
	}
}

func (r *Run) pairsFollow(b *island, m *method, to *frame, v []float64) {
	for i := b.pairs.from; i < b.pairs.to; i++ {
		p, y := &r.net.pairs[i], &m.pairs[i]
		v1, v2 := v[p.first.a]-v[p.first.b], v[p.second.a]-v[p.second.b]
		to.pamps[2*i] = y.y11*v1 + y.y12*v2 + r.pushPair[2*i]
		to.pamps[2*i+1] = y.y12*v1 + y.y22*v2 + r.pushPair[2*i+1]
		to.pv[2*i], to.pv[2*i+1] = v1, v2
	}
}
