package winding

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// sample is three pairs of which those that are numbers have been brought to
// independent values with a standard uncertainty of one each, by the Cholesky
// root of their covariance.
type sample struct {
	pairs  Pairs
	root   [3][3]float64
	values []float64
}

// Readings are taken to have at least this relative doubt each, so that
// readings that only share theirs, or have none, can be fitted too.
const leastDoubt = 1e-8

func sampleOf(p Pairs, cov uncertainty.Covariance) sample {
	s := sample{pairs: p}
	largest := 0.0
	for _, i := range p.numbers() {
		largest = max(largest, math.Abs(float64(p[i])))
	}
	at := p.numbers()
	for i := range at {
		for j := range i + 1 {
			s.root[i][j] = s.rootAt(i, j, cov[at[i]][at[j]], leastDoubt*largest)
		}
	}
	s.values = s.whiten(p)
	return s
}

func (s *sample) rootAt(i, j int, covariance, least float64) float64 {
	for k := range j {
		covariance -= s.root[i][k] * s.root[j][k]
	}
	if i == j {
		return math.Sqrt(covariance + least*least)
	}
	return covariance / s.root[j][j]
}

func (s *sample) whiten(p Pairs) []float64 {
	var out []float64
	for i, at := range s.pairs.numbers() {
		v := float64(p[at])
		for k := range out {
			v -= s.root[i][k] * out[k]
		}
		out = append(out, v/s.root[i][i])
	}
	return out
}

// numbers are the places of the pairs that are no open line.
func (p Pairs) numbers() []int {
	var out []int
	for i, r := range p {
		if !math.IsInf(float64(r), 1) {
			out = append(out, i)
		}
	}
	return out
}

// fit finds the phase, and the share of a graded fault, that leave the least
// misfit: generalised least squares.
func (s *sample) fit(c Connection, f Fault) Fit {
	sound := shape(c, Fault{})
	switch f.Kind {
	case TurnsShorted:
		return s.fitMixture(c, f, sound, shape(c, Fault{Kind: PhaseShorted, At: f.At}))
	case PoorJoint:
		return s.fitMixture(c, f, sound, jointIn(f.At))
	}
	return s.fitOne(c, f, shape(c, f))
}

// shape is what pairs read when every phase has one ohm.
func shape(c Connection, f Fault) Pairs {
	return Assemble(c, []quantity.Ohm{1, 1, 1}, f).Pairs()
}

// jointIn is what a joint of one ohm in a lead adds to the pairs.
func jointIn(lead int) Pairs {
	p := Pairs{1, 1, 1}
	p[(lead+1)%3] = 0
	return p
}

// fitOne scales one shape to the readings.
func (s *sample) fitOne(c Connection, f Fault, p Pairs) Fit {
	if !s.opensAs(p) {
		return Fit{Free: -1}
	}
	a := s.whiten(p)
	r := dot(a, s.values) / dot(a, a)
	return Fit{Connection: c, Fault: f, Free: len(a) - 1, Misfit: s.misfit(a, a, r, 0),
		Phase: quantity.Ohm(r), PhaseStd: quantity.Ohm(1 / math.Sqrt(dot(a, a)))}
}

// fitMixture fits a graded fault. All of them read as some of the sound winding
// and some of the whole fault put together, and how much of each tells the share.
func (s *sample) fitMixture(c Connection, f Fault, sound, whole Pairs) Fit {
	if !s.opensAs(sound) {
		return Fit{Free: -1}
	}
	a, b := s.whiten(sound), s.whiten(whole)
	aa, ab, bb, ay, by := dot(a, a), dot(a, b), dot(b, b), dot(a, s.values), dot(b, s.values)
	det := aa*bb - ab*ab
	parts := []float64{(bb*ay - ab*by) / det, (aa*by - ab*ay) / det}
	cov := uncertainty.Covariance{{bb / det, -ab / det}, {-ab / det, aa / det}}
	y, u := uncertainty.PropagateAll(unmixed(c, f.Kind), parts, cov)
	f.Share = y[1]
	return Fit{Connection: c, Fault: f, Free: len(a) - 2, Misfit: s.misfit(a, b, parts[0], parts[1]),
		Phase: quantity.Ohm(y[0]), PhaseStd: quantity.Ohm(u.U(0)), ShareStd: u.U(1)}
}

// unmixed gives the phase and the share from the parts of sound and whole.
// Derived from the signatures: a star with shorted turns reads r·((1-k)·sound +
// k·whole), a delta r/(3-k)·(3·(1-k)·sound + 2·k·whole); a poor joint of e ohm
// reads r·sound + e·whole, and its share is that of e in e + r.
func unmixed(c Connection, k FaultKind) []func([]float64) float64 {
	ofSound, ofWhole := 1.0, 1.0
	if k == TurnsShorted && c == Delta {
		ofSound, ofWhole = 1.0/3, 1.0/2
	}
	share := func(x []float64) float64 { return x[1] * ofWhole / (x[0]*ofSound + x[1]*ofWhole) }
	phase := func(x []float64) float64 {
		switch {
		case k == PoorJoint:
			return x[0]
		case c == Star:
			return x[0] + x[1]
		}
		return (x[0]*ofSound + x[1]*ofWhole) * (3 - share(x))
	}
	return []func([]float64) float64{phase, share}
}

func (s *sample) opensAs(p Pairs) bool {
	for i := range p {
		if math.IsInf(float64(p[i]), 1) != math.IsInf(float64(s.pairs[i]), 1) {
			return false
		}
	}
	return true
}

func (s *sample) misfit(a, b []float64, ofA, ofB float64) float64 {
	sum := 0.0
	for i, y := range s.values {
		left := y - ofA*a[i] - ofB*b[i]
		sum += left * left
	}
	return sum
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
