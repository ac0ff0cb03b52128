package diagnose

import (
	"cmp"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/uncertainty"
)

// Choice is a check that could be done next.
type Choice struct {
	Check   check.Check
	Minutes float64 // with what must be got at before it
	Bits    float64 // expected to be learnt about which parts are at fault
	Gain    float64 // by how much the likeliest part is expected to grow likelier
	Spares  float64 // minutes by which naming it cheapens, its own not taken off
	Saves   float64 // minutes, against naming the likeliest part now
	Again   bool    // it was done: whether that reading was a slip is what is learnt
	// Confirms: what is named stands already, and this is read before it is bought or mended.
	Confirms bool
	row      float64 // minutes of the checks in a row with it, whose bits, gain and savings are counted in
}

// Worth is what is learnt in a minute.
func (c Choice) Worth() float64 { return c.Bits / (c.Minutes + c.row) }

// wrongPart is what a wrong part costs, in minutes: it is bought, fitted, and the
// search begins again. One part too many, or one of two left out, is half of it.
// An assumption, no source.
const wrongPart = 150

// searching is how much longer than at the pace of the best check it takes to settle
// what is left open: what tells most comes first. From problems small enough to be
// solved exactly.
const searching = 1.75

// stopping is what naming what is likeliest is expected to cost, times the weights'
// sum, in minutes.
func (n naming) stopping(weights []float64) float64 {
	return wrongPart * (sum(weights) - n.name(weights).right)
}

// ahead is what a state is expected to cost that is left with these weights, times
// their sum, in minutes: a wrong part now and then, or the search that goes on at a
// pace in bits a minute.
func (n naming) ahead(weights []float64, pace float64) float64 {
	return min(n.stopping(weights), searching*entropy(weights)/pace)
}

// saves is how much less a check with its minutes and its outcomes is expected to
// cost than stopping.
func (n naming) saves(minutes float64, table [][]float64, pace float64) float64 {
	later := minutes
	for _, row := range table {
		later += n.ahead(row, pace)
	}
	return n.stopping(summed(table)) - later
}

// summed is the weights before the outcome is known.
func summed(table [][]float64) []float64 {
	now := make([]float64, len(table[0]))
	for _, row := range table {
		for c, w := range row {
			now[c] += w
		}
	}
	return now
}

// Next ranks the checks that are not done and not refused, the best first. done
// are the checks that were done, whose accesses are open.
func (m *Model) Next(s Suspects, evidence []Evidence, done []check.ID, refused func(check.Check) bool) []Choice {
	return m.next(s, evidence, done, refused, func() {})
}

// next is Next with a rest after each check.
func (m *Model) next(s Suspects, evidence []Evidence, done []check.ID, refused func(check.Check) bool, rest func()) []Choice {
	numbers, _ := m.sorted(evidence)
	fits := m.fits(s, numbers)
	open := map[check.Access]bool{}
	did := map[check.ID]bool{}
	for _, id := range done {
		did[id] = true
		if j, ok := m.index[id]; ok {
			for _, a := range m.Checks[j].Needs {
				open[a] = true
			}
		}
	}
	out, tables := m.again(s, evidence, refused)
	row := m.left(func(c check.Check) bool { return did[c.ID] || refused != nil && refused(c) })
	var onRow [][]float64
	for j, c := range m.Checks {
		if did[c.ID] || c.ID == leadZero || refused != nil && refused(c) {
			continue
		}
		choice := Choice{Check: c, Minutes: c.Minutes}
		for _, a := range c.Needs {
			if !open[a] {
				choice.Minutes += a.Minutes()
			}
		}
		if inRow(c) {
			for _, other := range row {
				choice.row += m.Checks[other].Minutes
			}
			choice.row -= c.Minutes
			if onRow == nil {
				onRow = m.outlookOnRow(s, evidence, row)
			}
			out, tables = append(out, choice), append(tables, onRow)
			continue
		}
		out, tables = append(out, choice), append(tables, m.outlook(j, s, numbers, fits, len(evidence)))
		rest()
	}
	return m.naming.ranked(out, tables)
}

// outlook is the table of a check after so many answers.
func (m *Model) outlook(j int, s Suspects, numbers []number, fits []*normal, answers int) [][]float64 {
	if answers == 0 && j < len(m.first) {
		return m.first[j]
	}
	_, table := m.table(m.outcomes(j, s, numbers, fits))
	return whole(table)
}

// whole makes up for the cases that weigh too little to be looked at, so that a check
// is not the worse for how many of them there are. It changes the table.
func whole(table [][]float64) [][]float64 {
	total := 0.0
	for _, row := range table {
		total += sum(row)
	}
	if !(total > 0) {
		return table
	}
	for _, row := range table {
		for p := range row {
			row[p] /= total
		}
	}
	return table
}

// ranked weighs choices by their outcomes, the one that saves most first.
func (n naming) ranked(choices []Choice, tables [][][]float64) []Choice {
	pace := 1e-9
	for i, table := range tables {
		c := &choices[i]
		c.Bits, c.Gain, c.Spares = n.tells(table)
		pace = max(pace, c.Worth())
	}
	for i, table := range tables {
		choices[i].Saves = n.saves(choices[i].Minutes+choices[i].row, table, pace)
	}
	slices.SortFunc(choices, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(b.Saves, a.Saves), cmp.Compare(a.Check.ID, b.Check.ID))
	})
	return choices
}

// leastWeight is the probability from which a case is looked at for the next
// check.
const leastWeight = 1e-3

func (m *Model) fits(s Suspects, numbers []number) []*normal {
	fits := make([]*normal, len(m.hypotheses))
	told := m.anyAlternates(numbers)
	least := leastWeight / float64(len(detectors(m.q.Meter)))
	for i, h := range m.hypotheses {
		switch {
		case s.weights[i] < least:
		case h.detector > 0 && !told:
			fits[i] = fits[i-1]
		default:
			g := m.fit(h, numbers)
			fits[i] = &g
		}
	}
	return fits
}

// outcomes are what all hypotheses that matter expect of a check. Where no detector
// tells them apart, those of a case are one.
func (m *Model) outcomes(j int, s Suspects, numbers []number, fits []*normal) []outcome {
	var all []outcome
	apart := alternates(m.Checks[j]) || m.anyAlternates(numbers)
	for i, h := range m.hypotheses {
		switch {
		case fits[i] == nil:
		case h.detector > 0 && !apart:
			all[len(all)-1].weight += s.weights[i]
		default:
			all = append(all, m.outcome(j, h, s.weights[i], numbers, fits[i]))
		}
	}
	return append(all, m.unlistedOutcomes(j, s, numbers)...)
}

// outcome is what a case expects of a check.
type outcome struct {
	set        int // of parts, of the model's
	weight     float64
	mean, sd   float64
	open, rest float64 // shares without a number
}

// bins is into how many a number is sorted.
const bins = 8

// tells is what outcomes are expected to tell, in bits, by how much the likeliest part
// is expected to grow, and by how many minutes naming one cheapens.
func (n naming) tells(table [][]float64) (bits, gain, spares float64) {
	now := summed(table)
	bits, gain, spares = entropy(now), -n.name(now).leads, n.stopping(now)
	for _, row := range table {
		bits -= entropy(row)
		gain += n.name(row).leads
		spares -= n.stopping(row)
	}
	return math.Max(bits, 0), gain, spares
}

// table is what comes of each outcome, by column of the naming: the bins of numbers,
// parted by the edges, then open (or yes) and restless (or no).
func (m *Model) table(all []outcome) (edges []float64, table [][]float64) {
	edges = edgesOf(all)
	table = make([][]float64, bins+2)
	for k := range table {
		table[k] = make([]float64, len(m.naming.columns))
	}
	for _, o := range all {
		table[bins][o.set] += o.weight * o.open
		table[bins+1][o.set] += o.weight * o.rest
		numbers, last := o.weight*(1-o.open-o.rest), 0.0
		for k := range bins {
			upto := 1.0
			if k < len(edges) {
				upto = below((edges[k] - o.mean) / o.sd)
			}
			table[k][o.set] += numbers * (upto - last)
			last = upto
		}
	}
	return edges, table
}

func (m *Model) outcome(j int, c hypothesis, weight float64, numbers []number, g *normal) outcome {
	v := c.views[j]
	o := outcome{set: c.set, weight: weight}
	if m.Checks[j].Instrument == check.Eyes {
		o.open = 1.0 / 2
		if !v.vague {
			o.open = (1-m.slips)*v.open + m.slips/2
		}
		o.rest = 1 - o.open
		o.sd = 1
		return o
	}
	mean, variance := m.expects(c, j)
	if !v.vague {
		o.open, o.rest = (1-m.slips)*v.open+m.slips/3, (1-m.slips)*v.unrest+m.slips/3
		with := make([]float64, len(numbers))
		for i, x := range numbers {
			if !c.views[x.check].vague {
				with[i] = c.cov[j][x.check]
			}
		}
		shift, left := g.given(with, variance)
		mean, variance = mean+shift, left
	}
	s := scaleOf(m.Checks[j])
	shown := s.back(mean)
	d := s.doubt(shown, m.doubt(m.Checks[j], shown))
	o.mean, o.sd = mean, math.Sqrt(variance+s.errors*s.errors+d*d)
	return o
}

// leadsDoubt is what leads that nobody measured leave open, in Ω. Common practice,
// no source.
const leadsDoubt = 0.1

// doubt is the standard uncertainty with which the meter will show a value.
func (m *Model) doubt(c check.Check, value float64) float64 {
	r, ok := c.Dial(m.q.Meter)
	if !ok {
		return 0
	}
	d := uncertainty.Rectangular(r.Accuracy.HalfWidth(value, r.Step))
	if c.Function == meter.Ohms {
		d = math.Hypot(d, leadsDoubt)
	}
	return d
}

// edgesOf parts the numbers that are expected into bins. Each set of parts has as
// much say in where they lie as the root of its weight: what is unlikely still has
// readings of its own.
func edgesOf(all []outcome) []float64 {
	type point struct{ at, weight float64 }
	share := func(o outcome) float64 { return o.weight * (1 - o.open - o.rest) }
	sets := map[int]float64{}
	for _, o := range all {
		sets[o.set] += share(o)
	}
	var points []point
	total := 0.0
	for _, o := range all {
		w := share(o)
		if !(w > 0) {
			continue
		}
		w /= math.Sqrt(sets[o.set])
		for _, d := range []float64{-1.2, 0, 1.2} {
			points = append(points, point{o.mean + d*o.sd, w})
			total += w
		}
	}
	slices.SortFunc(points, func(a, b point) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.weight, b.weight)) })
	var edges []float64
	sum := 0.0
	for _, p := range points {
		sum += p.weight
		if len(edges) < bins-1 && sum >= total*float64(len(edges)+1)/bins {
			edges = append(edges, p.at)
		}
	}
	return edges
}

// entropy of weights that need not sum to one, times their sum, in bits.
func entropy(weights []float64) (bits float64) {
	sum := sum(weights)
	for _, w := range weights {
		if w > 0 {
			bits -= w * math.Log2(w/sum)
		}
	}
	return bits
}
