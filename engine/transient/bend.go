package transient

import "math"

// bow is how far the middle of the step just tried stands off the straight line,
// fourfold: at a share x of the step everything is the line and x·(1-x) times the
// bow. A current or voltage that a derivative belongs to follows a parabola in a
// trapezoidal step, so that a cut through it costs no accuracy; the node voltages
// follow from those, and from the middle of the emfs.
func (r *Run) bow() {
	r.bowSources()
	r.bowStates()
	for k := range r.net.islands {
		b := &r.net.islands[k]
		m := r.level.short
		f := m.factor(r.net, k, r.patterns[k])
		v := r.bent.v[b.off : b.off+b.n+1]
		clear(v)
		r.windingsPush(b, m, r.bent, v)
		r.capacitorsPush(b, m, r.bent, v)
		r.pairsPush(b, m, r.bent, v)
		f.solve(v)
		v[b.n] = 0
		r.windingsFollow(b, m, r.bent, v)
		r.capacitorsFollow(b, m, r.bent, v)
		r.pairsFollow(b, m, r.bent, v)
	}
	copy(r.sources.emf, r.emfAfter)
}

// bowSources makes the emfs what they are off the line, until bow has used them.
func (r *Run) bowSources() {
	s := &r.sources
	copy(r.emfAfter, s.emf)
	s.at(r.time + r.level.h/2)
	for i := range s.emf {
		w := &r.net.windings[i]
		off := r.offOfWinding[i]
		before := r.now.rest[i] + r.now.v[off+int(w.a)] - r.now.v[off+int(w.b)]
		r.bowEmf[i] = 4*s.emf[i] - 2*(before+r.emfAfter[i])
	}
	copy(s.emf, r.bowEmf)
}

func (r *Run) bowStates() {
	for k := range r.net.islands {
		b := &r.net.islands[k]
		r.bowIsland(b)
		if share := r.resolved(b); share < 1 {
			r.flatten(b, share)
		}
	}
}

func (r *Run) bowIsland(b *island) {
	half := r.level.h / 2
	now, then, bent := r.now, r.then, r.bent
	for i := b.windings.from; i < b.windings.to; i++ {
		w := &r.net.windings[i]
		bent.amps[i] = 0
		if !w.stiff(r.level.h) && w.henries > 0 {
			bent.amps[i] = -half / w.henries * (then.rest[i] - now.rest[i] - w.ohms*(then.amps[i]-now.amps[i]))
		}
	}
	for i := b.capacitors.from; i < b.capacitors.to; i++ {
		bent.cv[i] = -half / r.net.capacitors[i].farads * (then.camps[i] - now.camps[i])
	}
	for i := b.pairs.from; i < b.pairs.to; i++ {
		p := &r.net.pairs[i]
		u1 := then.pv[2*i] - now.pv[2*i] - p.r1*(then.pamps[2*i]-now.pamps[2*i])
		u2 := then.pv[2*i+1] - now.pv[2*i+1] - p.r2*(then.pamps[2*i+1]-now.pamps[2*i+1])
		det := p.l1*p.l2 - p.mutual*p.mutual
		bent.pamps[2*i] = -half * (p.l2*u1 - p.mutual*u2) / det
		bent.pamps[2*i+1] = -half * (p.l1*u2 - p.mutual*u1) / det
	}
}

// swings are how far each state went in its largest step of late. What swings
// faster than the steps can follow has bows that are large beside that, half the
// angle of a step in radians, and would grow by them without end; a straight line
// damps it.
type swings struct{ amps, cv, pamps []float64 }

const (
	forget   = 0.99 // per step
	steepest = 0.25 // largest bow beside a swing: 13 steps in a period
	leastAmp = 1e-5 // bows that do not matter
	leastVol = 1e-4
)

func (r *Run) followSwings() {
	follow(r.swings.amps, r.now.amps, r.then.amps)
	follow(r.swings.cv, r.now.cv, r.then.cv)
	follow(r.swings.pamps, r.now.pamps, r.then.pamps)
}

func follow(swings, now, then []float64) {
	for i, x := range swings {
		swings[i] = max(forget*x, math.Abs(now[i]-then[i]))
	}
}

// resolved is the share of its bows that an island may have.
func (r *Run) resolved(b *island) float64 {
	s, now, then, bent := &r.swings, r.now, r.then, r.bent
	share := least(1, b.windings, 1, leastAmp, s.amps, now.amps, then.amps, bent.amps)
	share = least(share, b.capacitors, 1, leastVol, s.cv, now.cv, then.cv, bent.cv)
	return least(share, b.pairs, 2, leastAmp, s.pamps, now.pamps, then.pamps, bent.pamps)
}

func least(share float64, of span, each int, matters float64, swings, now, then, bows []float64) float64 {
	for i := each * of.from; i < each*of.to; i++ {
		bow := math.Abs(bows[i])
		if bow <= matters {
			continue
		}
		if most := steepest * max(swings[i], math.Abs(then[i]-now[i])); bow*share > most {
			share = most / bow
		}
	}
	return share
}

// flatten leaves a share of an island's bows.
func (r *Run) flatten(b *island, share float64) {
	for i := b.windings.from; i < b.windings.to; i++ {
		r.bent.amps[i] *= share
		r.sources.emf[i] *= share
	}
	for i := b.capacitors.from; i < b.capacitors.to; i++ {
		r.bent.cv[i] *= share
	}
	for i := 2 * b.pairs.from; i < 2*b.pairs.to; i++ {
		r.bent.pamps[i] *= share
	}
}

// root is where the parabola from was to is, with a bow, first comes to zero; its
// ends have different signs.
func root(was, is, bow float64) float64 {
	if was == 0 {
		return 0
	}
	// was + (is-was+bow)·x - bow·x² = 0
	b := is - was + bow
	d := b*b + 4*bow*was
	if d < 0 {
		return was / (was - is)
	}
	q := (b + math.Copysign(math.Sqrt(d), b)) / 2
	best := 2.0
	for _, x := range [2]float64{-was / q, q / bow} {
		if x >= 0 && x <= 1 {
			best = min(best, x)
		}
	}
	if best > 1 {
		return was / (was - is)
	}
	return best
}
