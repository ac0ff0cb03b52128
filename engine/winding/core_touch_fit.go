package winding

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// touchReadings are readings to the core, then between leads, as parts of the
// largest of them: so that one small number is small for all.
type touchReadings struct {
	of    Connection
	x     []float64
	cov   uncertainty.Covariance
	scale float64 // the largest reading, in ohm
}

func touchReadingsOf(c Connection, toCore, between []quantity.Ohm, cov uncertainty.Covariance) touchReadings {
	r := touchReadings{of: c}
	for _, v := range append(append([]quantity.Ohm(nil), toCore...), between...) {
		r.x = append(r.x, float64(v))
		if size := math.Abs(float64(v)); size > r.scale && !math.IsInf(size, 1) {
			r.scale = size
		}
	}
	if r.scale == 0 {
		r.scale = 1
	}
	r.cov = uncertainty.Certain(len(cov))
	for i := range r.x {
		r.x[i] /= r.scale
		for j := range cov {
			r.cov[i][j] = cov[i][j] / r.scale / r.scale
		}
		r.cov[i][i] += leastDoubt * leastDoubt
	}
	return r
}

func (r touchReadings) toCore() []float64  { return r.x[:r.of.Leads()] }
func (r touchReadings) between() []float64 { return r.x[r.of.Leads():] }

// betweenCov is the covariance of the readings between leads.
func (r touchReadings) betweenCov() uncertainty.Covariance {
	n := r.of.Leads()
	out := uncertainty.Covariance{}
	for _, line := range r.cov[n:] {
		out = append(out, line[n:])
	}
	return out
}

func (r touchReadings) missing() bool {
	for _, v := range r.x {
		if math.IsNaN(v) || math.IsInf(v, -1) {
			return true
		}
	}
	return false
}

func (r touchReadings) openToCore() int {
	n := 0
	for _, v := range r.toCore() {
		if math.IsInf(v, 1) {
			n++
		}
	}
	return n
}

// whole tells whether the readings between leads are those of a winding in which
// a place has a meaning.
func (r touchReadings) whole() bool {
	p := r.between()
	if r.of == Single {
		return !math.IsInf(p[0], 1) && p[0] > told*r.betweenCov().U(0)
	}
	return r.of.solvable(Pairs{quantity.Ohm(p[0]), quantity.Ohm(p[1]), quantity.Ohm(p[2])}, r.betweenCov()) == nil
}

// lowest is the lead with the lowest reading to the core.
func (r touchReadings) lowest() int {
	at := 0
	for i, v := range r.toCore() {
		if v < r.x[at] {
			at = i
		}
	}
	return at
}

// largestPair is the largest number between leads.
func (r touchReadings) largestPair() float64 {
	largest := 0.0
	for _, v := range r.between() {
		if !math.IsInf(v, 1) {
			largest = max(largest, v)
		}
	}
	return largest
}

// touchFit is a touch in one phase that comes nearest to the readings. What it
// figures has the order of touchIn.
type touchFit struct {
	phase              int
	y                  []float64
	cov                uncertainty.Covariance
	shareStd, touchStd float64
	misfit             float64 // chi-square
	free               int     // by how many numbers the readings could disagree
}

const (
	touchShare = iota
	touchOhms
	touchLeft
)

// fits has one fit for each phase that has turns to be shared.
func (r touchReadings) fits() []touchFit {
	var out []touchFit
	for phase := range r.of.Phases() {
		if r.hasTurns(phase) {
			out = append(out, r.fit(phase))
		}
	}
	return out
}

// hasTurns is false for a phase of a star that is not told from none: there is
// no share of nothing, and a touch there is one at the neutral.
func (r touchReadings) hasTurns(phase int) bool {
	if r.of != Star {
		return true
	}
	turns, u := uncertainty.Propagate(leg(phase), r.between(), r.betweenCov())
	return turns > told*u
}

// fit holds what is left over at zero, then what is out of bounds at the bound:
// generalised least squares, straight around the readings. The doubts are those
// before the bounds, since these only cut them.
func (r touchReadings) fit(phase int) touchFit {
	y, cov := uncertainty.PropagateAll(touchIn(r.of, phase), r.x, r.cov)
	f := touchFit{phase: phase, y: y, cov: cov}
	if len(y) > touchLeft {
		f.hold(touchLeft, 0)
	}
	f.shareStd, f.touchStd = f.cov.U(touchShare), f.cov.U(touchOhms)
	if share := f.share(); share != f.y[touchShare] {
		f.hold(touchShare, share)
	}
	if f.y[touchOhms] < 0 {
		f.hold(touchOhms, 0)
	}
	return f
}

// hold takes figure i for known and moves the others by what they have in common
// with it. Rounding may leave less of a variance than the least doubt has, or
// nothing.
func (f *touchFit) hold(i int, value float64) {
	off, variance := f.y[i]-value, max(f.cov[i][i], leastDoubt*leastDoubt)
	common := append([]float64(nil), f.cov[i]...)
	for a := range f.y {
		f.y[a] -= common[a] / variance * off
		for b := range f.y {
			f.cov[a][b] -= common[a] / variance * common[b]
		}
	}
	f.y[i] = value
	f.misfit += off / variance * off
	f.free++
}

// share is that of the turns from the first end of the phase.
func (f touchFit) share() float64 { return min(max(f.y[touchShare], 0), 1) }

// holds tells whether a true cause leaves no more misfit in 95 % of cases.
func (f touchFit) holds() bool {
	const ofThree = 7.8147 // quantile of chi-square
	if f.free > 2 {
		return f.misfit <= ofThree
	}
	return f.misfit <= greatestMisfit[f.free]
}

// likeliest parts the fit with the least misfit from the others.
func likeliest(fits []touchFit) (best touchFit, others []touchFit) {
	at := 0
	for i := range fits {
		if fits[i].misfit < fits[at].misfit {
			at = i
		}
	}
	for i := range fits {
		if i == at {
			best = fits[i]
			continue
		}
		others = append(others, fits[i])
	}
	return best, others
}

// touchIn gives, from readings, the share of the touch from the first end of the
// phase, the resistance of the touch, and for three leads what is left over when
// the touch is not there.
func touchIn(c Connection, phase int) []func([]float64) float64 {
	switch c {
	case Star:
		return touchInStar(phase)
	case Delta:
		return touchInDelta(phase)
	}
	return []func([]float64) float64{
		func(x []float64) float64 { return tapped(x[2], x[0], x[1]) / x[2] },
		func(x []float64) float64 { return (x[0] + x[1] - x[2]) / 2 },
	}
}

// tapped is the part of the resistance between two leads that lies before the
// touch, from what both read to the core.
func tapped(pair, near, far float64) float64 { return (pair + near - far) / 2 }

// touchInStar compares what each lead reads to the core with its phase: the lead
// of the touched phase misses the turns past the touch, both others have them
// in excess.
func touchInStar(i int) []func([]float64) float64 {
	past := func(x []float64, lead int) float64 { return x[lead] - leg(lead)(x[3:]) }
	others := func(x []float64) float64 { return (past(x, (i+1)%3) + past(x, (i+2)%3)) / 2 }
	return []func([]float64) float64{
		func(x []float64) float64 { return 1 - (others(x)-past(x, i))/2/leg(i)(x[3:]) },
		func(x []float64) float64 { return (others(x) + past(x, i)) / 2 },
		func(x []float64) float64 { return past(x, (i+1)%3) - past(x, (i+2)%3) },
	}
}

// touchInDelta: the branch is a divider between its own leads, and with the next
// branch it is one between the first lead and the one across. With equal branches
// of one ohm, A, B and C read x(3-x)/3, (1-x)(2+x)/3 and (1+x)(2-x)/3.
func touchInDelta(i int) []func([]float64) float64 {
	j, k := (i+1)%3, (i+2)%3
	share := func(x []float64) float64 { return tapped(x[3+i], x[i], x[j]) / x[3+i] }
	return []func([]float64) float64{
		share,
		func(x []float64) float64 {
			pair, part := x[3+i], share(x)
			return x[i] - part*pair - part*(1-part)*(branch(i)(x[3:])-pair)
		},
		func(x []float64) float64 {
			own, next := branch(i)(x[3:]), branch(j)(x[3:])
			return tapped(x[3+k], x[i], x[k]) - x[3+k]*share(x)*own/(own+next)
		},
	}
}
