package diagnose

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
)

// drawing is a case whose machines are still being drawn.
type drawing struct {
	shown []shown  // by those of the machines that can have the fault
	now   *looking // nil between two machines
	next  int
}

// shown is what one machine shows at all checks.
type shown struct {
	regulating machine.Regulating
	complains  float64     // how likely its owner comes with the symptom
	numbers    [][]float64 // scaled, by detector and check; NaN for none
	at         []showingAt // by check
}

// showingAt is what it shows at one check besides a number.
type showingAt struct {
	known, rough float64
	open, unrest float64 // how likely; open is yes of a look
}

// looking is a machine on its way to shown: some of its checks are not worked out yet.
type looking struct {
	shown
	machine machine.Machine
	at      int // the next check
}

// look begins with a machine. One without a fault has its complaint for another reason:
// it is one that does what it should.
func look(m machine.Machine, q Question, checks []check.Check, sound bool) *looking {
	l := &looking{machine: m, shown: shown{regulating: m.Build.Regulating, complains: complains(m, q.Symptom),
		numbers: make([][]float64, len(detectors(q.Meter))), at: make([]showingAt, len(checks))}}
	if sound {
		l.complains = max(1-l.complains, seldom)
	}
	for i := range l.numbers {
		l.numbers[i] = make([]float64, len(checks))
	}
	return l
}

// checksAtOnce is how many checks are worked out in one step: a slow phone takes a few
// milliseconds for them.
const checksAtOnce = 6

// goOn works out what the machine shows at the next checks, with each of the detectors
// that the meter may have, and reports whether more are left.
func (l *looking) goOn(q Question, checks []check.Check) (more bool) {
	with := detectors(q.Meter)
	for end := min(l.at+checksAtOnce, len(checks)); l.at < end; l.at++ {
		j, k := l.at, checks[l.at]
		l.shown.at[j], l.numbers[0][j] = showingOf(l.machine.Predict(k, having(q.Meter, with[0]), q.Kit), k)
		for i := 1; i < len(with); i++ {
			if alternates(k) {
				_, l.numbers[i][j] = showingOf(l.machine.Predict(k, having(q.Meter, with[i]), q.Kit), k)
			} else {
				l.numbers[i][j] = l.numbers[0][j]
			}
		}
	}
	return l.at < len(checks)
}

// restlessFrom is the flicker from which nobody writes down a number. A starter
// that labours over compression is below it: its digits are read all the same.
// Common practice, no source.
const restlessFrom = 0.35

func showingOf(p machine.Prediction, k check.Check) (at showingAt, number float64) {
	number = math.NaN()
	if !p.Known && !p.Rough || math.IsNaN(p.Value) {
		return at, number
	}
	at.known = 1
	if p.Rough {
		at.rough = 1
	}
	switch {
	case k.Instrument == check.Eyes:
		at.open = p.Value
	case p.Open, math.IsInf(p.Value, 0):
		at.open = 1
	default:
		at.unrest = steps(p.Flicker, restlessFrom, restlessFrom/5)
		number = scaleOf(k).of(p.Value)
	}
	return at, number
}

// complaint is how likely the owners come with the symptom, on the whole.
func (d *drawing) complaint() float64 {
	sum := 0.0
	for _, s := range d.shown {
		sum += s.complains
	}
	return sum / math.Max(float64(len(d.shown)), 1)
}

// weights are those of the machines: of a fault, the machines count whose owners
// come with the symptom. Where that leaves fewer than are needed to say how widely
// they lie, all count more alike.
func (d *drawing) weights() []float64 {
	const fewest = 20
	out, sum := make([]float64, len(d.shown)), 0.0
	for i, s := range d.shown {
		out[i] = s.complains
		sum += out[i]
	}
	for range 20 {
		squares := 0.0
		for _, w := range out {
			squares += w * w
		}
		if sum*sum >= fewest*squares || len(out) <= fewest {
			break
		}
		mean := sum / float64(len(out))
		for i := range out {
			out[i] += 0.3 * mean
		}
		sum *= 1.3
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

// settle turns what the machines show into means, shares and covariances.
func (d *drawing) settle(checks []check.Check, detectors int) (views []view, cov [][]float64) {
	w := d.weights()
	views = make([]view, len(checks))
	for j := range views {
		views[j] = d.view(j, w, detectors)
	}
	return views, d.covariance(w, views, checks)
}

// view sums what is shown at a check. None of its shares is ever quite 0 or 1.
func (d *drawing) view(j int, w []float64, detectors int) view {
	v := view{means: make([]float64, detectors)}
	known, counted := 0.0, 0.0
	for i, s := range d.shown {
		at := s.at[j]
		known += w[i] * at.known
		v.rough += w[i] * at.rough
		v.open += w[i] * at.open
		if math.IsNaN(s.numbers[0][j]) {
			continue
		}
		v.counted++
		counted += w[i]
		v.unrest += w[i] * at.unrest
		v.number += w[i] * (1 - at.unrest)
		for k := range v.means {
			v.means[k] += w[i] * s.numbers[k][j]
		}
	}
	if known < 0.5 {
		v.vague = true
		return v
	}
	for k := range v.means {
		v.means[k] /= math.Max(counted, 1e-12)
	}
	const little = 0.1 / samples
	total := known + 3*little
	v.rough /= known
	v.number, v.open, v.unrest = (v.number+little)/total, (v.open+little)/total, (v.unrest+little)/total
	return v
}

// covariance of the numbers about their detector's means, shrunk towards its
// diagonal. What is missing counts as no deviation, so that no reading can
// contradict another: the matrix stays positive.
func (d *drawing) covariance(w []float64, views []view, checks []check.Check) [][]float64 {
	const shrink = 0.85
	n := len(views)
	out, counted := make([][]float64, n), make([]float64, n)
	for j := range out {
		out[j] = make([]float64, n)
		for i, s := range d.shown {
			if !math.IsNaN(s.numbers[0][j]) {
				counted[j] += w[i]
			}
		}
	}
	for i := range n {
		for j := range i + 1 {
			if views[i].counted < fewNumbers || views[j].counted < fewNumbers {
				continue
			}
			detectors := 1
			if alternates(checks[i]) || alternates(checks[j]) {
				detectors = len(views[i].means)
			}
			c := d.product(w, views, i, j, detectors) / math.Sqrt(counted[i]*counted[j])
			if i != j {
				c *= shrink
			}
			out[i][j], out[j][i] = c, c
		}
	}
	return out
}

// product is what two checks deviate by together; the mean of the detectors where
// they matter.
func (d *drawing) product(w []float64, views []view, i, j, detectors int) float64 {
	sum := 0.0
	for n, s := range d.shown {
		for k, r := range s.numbers[:detectors] {
			if x := (r[i] - views[i].means[k]) * (r[j] - views[j].means[k]); !math.IsNaN(x) {
				sum += w[n] * x
			}
		}
	}
	return sum / float64(detectors)
}
