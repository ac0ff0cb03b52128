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
	Bits    float64 // expected to be learnt about the part
	Gain    float64 // by how much the likeliest part is expected to grow likelier
}

// Worth is what is learnt in a minute.
func (c Choice) Worth() float64 { return c.Bits / c.Minutes }

// Next ranks the checks that are not done and not refused, the best first. done
// are the checks that were done, whose accesses are open.
func (m *Model) Next(s Suspects, evidence []Evidence, done []check.ID, refused func(check.Check) bool) []Choice {
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
	var out []Choice
	for j, c := range m.Checks {
		if did[c.ID] || c.ID == "lead-zero" || refused != nil && refused(c) {
			continue
		}
		choice := Choice{Check: c, Minutes: c.Minutes}
		for _, a := range c.Needs {
			if !open[a] {
				choice.Minutes += a.Minutes()
			}
		}
		choice.Bits, choice.Gain = m.tells(j, s, numbers, fits)
		out = append(out, choice)
	}
	slices.SortFunc(out, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(b.Worth(), a.Worth()), cmp.Compare(a.Check.ID, b.Check.ID))
	})
	return out
}

// leastWeight is the probability from which a case is looked at for the next
// check.
const leastWeight = 1e-3

func (m *Model) fits(s Suspects, numbers []number) []*normal {
	fits := make([]*normal, len(m.cases))
	for i, c := range m.cases {
		if s.weights[i] >= leastWeight {
			g := m.fit(c, numbers, -1)
			fits[i] = &g
		}
	}
	return fits
}

// outcome is what a case expects of a check.
type outcome struct {
	part       int // of the model's
	weight     float64
	mean, sd   float64
	open, rest float64 // shares without a number
}

// bins is into how many a number is sorted.
const bins = 6

// tells is what a check is expected to tell about the part, in bits, and by how
// much the likeliest part is expected to grow.
func (m *Model) tells(j int, s Suspects, numbers []number, fits []*normal) (bits, gain float64) {
	var all []outcome
	for i, c := range m.cases {
		if fits[i] == nil {
			continue
		}
		all = append(all, m.outcome(j, c, s.weights[i], numbers, fits[i]))
	}
	_, table := m.table(all)
	now := make([]float64, len(m.parts))
	for _, t := range table {
		for p, w := range t {
			now[p] += w
		}
	}
	before, most := entropy(now)
	after, likely := 0.0, 0.0
	for _, t := range table {
		h, top := entropy(t)
		after += h
		likely += top
	}
	return math.Max(before-after, 0), likely - most
}

// table is what comes of each outcome, by part: the bins of numbers, parted by the
// edges, then open (or yes) and restless (or no).
func (m *Model) table(all []outcome) (edges []float64, table [][]float64) {
	edges = edgesOf(all)
	table = make([][]float64, bins+2)
	for k := range table {
		table[k] = make([]float64, len(m.parts))
	}
	for _, o := range all {
		table[bins][o.part] += o.weight * o.open
		table[bins+1][o.part] += o.weight * o.rest
		numbers, last := o.weight*(1-o.open-o.rest), 0.0
		for k := range bins {
			upto := 1.0
			if k < len(edges) {
				upto = below((edges[k] - o.mean) / o.sd)
			}
			table[k][o.part] += numbers * (upto - last)
			last = upto
		}
	}
	return edges, table
}

func (m *Model) outcome(j int, c *caseOf, weight float64, numbers []number, g *normal) outcome {
	v := c.views[j]
	o := outcome{part: c.part, weight: weight}
	if m.Checks[j].Instrument == check.Eyes {
		o.open = 1.0 / 2
		if !v.vague {
			o.open = (1-slips)*v.open + slips/2
		}
		o.rest = 1 - o.open
		o.sd = 1
		return o
	}
	mean, variance := m.expects(c, j)
	if !v.vague {
		o.open, o.rest = (1-slips)*v.open+slips/3, (1-slips)*v.unrest+slips/3
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

// edgesOf parts the numbers that are expected into bins of about equal weight.
func edgesOf(all []outcome) []float64 {
	type point struct{ at, weight float64 }
	var points []point
	total := 0.0
	for _, o := range all {
		w := o.weight * (1 - o.open - o.rest)
		for _, d := range []float64{-1.2, 0, 1.2} {
			points = append(points, point{o.mean + d*o.sd, w})
			total += w
		}
	}
	slices.SortFunc(points, func(a, b point) int { return cmp.Compare(a.at, b.at) })
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

// entropy of weights that need not sum to one, times their sum, in bits; and the
// largest of them.
func entropy(weights []float64) (bits, most float64) {
	sum := 0.0
	for _, w := range weights {
		sum += w
		most = math.Max(most, w)
	}
	for _, w := range weights {
		if w > 0 {
			bits -= w * math.Log2(w/sum)
		}
	}
	return bits, most
}
