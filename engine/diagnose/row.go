package diagnose

import (
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// The valves of a regulator are read in a row: once it is unplugged each takes a
// touch of the probes, and one alone tells little. Whether the upper ones block goes
// by the kind of regulator, which they share; so their open lines are weighed
// together, by kind, and the row is looked ahead to as a whole.
func inRow(c check.Check) bool { return c.Instrument == check.Multimeter && c.Function == meter.Diode }

// ofKind is what a case's machines with one kind of regulator show in the row.
type ofKind struct {
	weight float64
	shares map[int][showings]float64 // by check
}

// kinds parts the machines of a drawing by their regulators. A pin that does not
// conduct, and is no fault of the list, is rarer than the share that is left to what
// the machines of a case do not show. An assumption, no source.
func (d *drawing) kinds(checks []check.Check) []ofKind {
	const little = 1e-4
	w := d.weights()
	var out []ofKind
	for _, kind := range []machine.Regulating{machine.Shunt, machine.Series, machine.HalfWave} {
		k := ofKind{shares: map[int][showings]float64{}}
		for j, c := range checks {
			if !inRow(c) {
				continue
			}
			weight, known, open := 0.0, 0.0, 0.0
			for i, s := range d.shown {
				if s.regulating == kind {
					weight += w[i]
					known += w[i] * s.at[j].known
					open += w[i] * s.at[j].open
				}
			}
			k.weight = weight
			if known > 0 {
				open = (open/known + little) / (1 + 3*little)
				unrest := little / (1 + 3*little)
				k.shares[j] = [showings]float64{1 - open - unrest, open, unrest}
			}
		}
		if k.weight > 0 && len(k.shares) > 0 {
			out = append(out, k)
		}
	}
	return out
}

// alike is how likely answers in the row are for each kind, times its weight.
func (m *Model) alike(c *caseOf, row []asked) []float64 {
	out := make([]float64, len(c.kinds))
	for i, k := range c.kinds {
		out[i] = k.weight
		for _, a := range row {
			out[i] *= m.whole(a, k.shares[a.check], showings)
		}
	}
	return out
}

// logRow is how likely the answers in the row are as far as they are numbers or open
// lines; it keeps in slip how likely each is one.
func (m *Model) logRow(c *caseOf, row []asked, slip []float64) float64 {
	if len(row) == 0 {
		return 0
	}
	if len(c.kinds) == 0 { // the meter has no such range, or no formula says
		log := 0.0
		for _, a := range row {
			log += m.logShares(c, a, slip)
		}
		return log
	}
	all := sum(m.alike(c, row))
	for i, a := range row {
		for n, g := range a.answers {
			without := slices.Clone(row)
			without[i].answers = slices.Delete(slices.Clone(a.answers), n, n+1)
			slip[g.at] = m.slips / showings * sum(m.alike(c, without)) / all
		}
	}
	return math.Log(all)
}

// left are the row's checks without an answer.
func (m *Model) left(skip func(check.Check) bool) []int {
	var out []int
	for j, c := range m.Checks {
		if inRow(c) && !skip(c) {
			out = append(out, j)
		}
	}
	return out
}

// spoiltRow is what the row's answers are under an unlisted fault: of one kind of
// regulator, but for readings that it spoils.
func (m *Model) spoiltRow(h hypothesis, row []asked, numbers []number) float64 {
	if len(row) == 0 {
		return 0
	}
	var kinds []float64
	for _, k := range h.kinds {
		log := math.Log(k.weight)
		for _, a := range row {
			log += m.spoilt(h, a, numbers, k.shares[a.check])
		}
		kinds = append(kinds, log)
	}
	return logSum(kinds)
}

// What the rest of a row may come to: of the upper valves none, some or all open, of
// the lower none or some, and some of either shorted or none.
const rowOutcomes = 3 * 2 * 2

// shortedBelow is from where a valve is no junction, in V.
const shortedBelow = 0.2

// junction reports a reading that is one, like its sisters: nobody reads that again.
func junction(e Evidence) bool { return e.State == quantity.Number && e.Value > shortedBelow }

// outlookOnRow is the table of the row's rest.
func (m *Model) outlookOnRow(s Suspects, evidence []Evidence, left []int) [][]float64 {
	table := make([][]float64, rowOutcomes)
	for k := range table {
		table[k] = make([]float64, len(m.naming.columns))
	}
	_, checks := m.sorted(evidence)
	row := slices.DeleteFunc(checks, func(a asked) bool { return !inRow(m.Checks[a.check]) })
	add := func(h hypothesis, set int, weight float64) {
		for k, p := range m.restOfRow(h, row, left) {
			table[k][set] += weight * p
		}
	}
	for i := 0; i < len(m.hypotheses); {
		h, weight := m.hypotheses[i], 0.0
		for ; i < len(m.hypotheses) && m.hypotheses[i].caseOf == h.caseOf; i++ {
			weight += s.weights[i]
		}
		if weight >= leastWeight {
			add(h, h.set, weight)
		}
	}
	if set := len(m.naming.sets); len(m.unlisted.sound) > 0 && s.Unlisted >= leastWeight {
		spoils := 0.0
		for _, j := range left {
			spoils = math.Max(spoils, (1-s.unseen)*m.unlisted.spoils[j])
		}
		add(m.unlisted.sound[0], set, s.Unlisted*(1-spoils))
		for k := range table {
			table[k][set] += s.Unlisted * spoils / rowOutcomes
		}
	}
	return whole(table)
}

// restOfRow is how likely a hypothesis makes each outcome, after the row's answers.
func (m *Model) restOfRow(h hypothesis, row []asked, left []int) [rowOutcomes]float64 {
	var out [rowOutcomes]float64
	alike := m.alike(h.caseOf, row)
	all := sum(alike)
	for i, k := range h.kinds {
		noUpper, allUpper, noLower, noShort := 1.0, 1.0, 1.0, 1.0
		for _, j := range left {
			shares := k.shares[j]
			open := (1-m.slips)*shares[showsOpen] + m.slips/showings
			if m.Checks[j].Red == check.RegulatorBody {
				noLower *= 1 - open
			} else {
				noUpper *= 1 - open
				allUpper *= open
			}
			mean, variance := m.expects(h, j)
			to := scaleOf(m.Checks[j]).of(shortedBelow)
			noShort *= 1 - (1-open)*below((to-mean)/math.Sqrt(variance+1e-4))
		}
		if noUpper == 1 {
			allUpper = 0
		}
		upper := [3]float64{noUpper, max(1-noUpper-allUpper, 0), allUpper}
		lower, short := [2]float64{noLower, 1 - noLower}, [2]float64{noShort, 1 - noShort}
		for n := range out {
			out[n] += alike[i] / all * upper[n%3] * lower[n/3%2] * short[n/6]
		}
	}
	return out
}
