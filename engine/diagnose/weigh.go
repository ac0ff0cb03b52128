package diagnose

import (
	"math"
	"slices"

	"coilbook/engine/check"
)

// likelihood is what a hypothesis makes of the evidence: its logarithm, and how
// likely each answer is then a slip, by its place in the evidence.
type likelihood struct {
	log   float64
	slips []float64
}

// like is how likely a hypothesis makes the evidence, of so many answers. Any one of
// the numbers may be a slip, which tells nothing, and any answer without one.
func (m *Model) like(h hypothesis, numbers []number, checks []asked, answers int) likelihood {
	out := likelihood{slips: make([]float64, answers)}
	var row []asked
	for _, a := range checks {
		if inRow(m.Checks[a.check]) {
			row = append(row, a)
			continue
		}
		out.log += m.logShares(h.caseOf, a, out.slips)
	}
	out.log += m.logRow(h.caseOf, row, out.slips)
	parts := make([]float64, 1, len(numbers)+1)
	g := m.fit(h, numbers)
	parts[0] = g.logStudent() + math.Log1p(-m.slips)*float64(len(numbers))
	for i, l := range g.leftOut() {
		flat := -math.Log(8 * m.spread[numbers[i].check]) // anything within the check's usual span
		parts = append(parts, l+math.Log(m.slips)+flat)
	}
	total := logSum(parts)
	for i, p := range parts[1:] {
		at := numbers[i].at
		out.slips[at] = math.Max(out.slips[at], math.Exp(p-total))
	}
	out.log += total
	return out
}

// A machine shows one of these at a check, whenever it is asked.
const (
	showsNumber = iota // yes, of a look
	showsOpen          // no, of a look
	showsUnrest
	showings
)

// logShares is how likely the answers to one check are as far as they are numbers,
// open lines, restless or yes and no; it keeps in slip, unless
// that is nil, how likely each is one.
func (m *Model) logShares(c *caseOf, a asked, slip []float64) float64 {
	shares, kinds := m.shares(c, a.check)
	whole := m.whole(a, shares, kinds)
	if slip != nil {
		for i, g := range a.answers {
			others := 1.0
			if len(a.answers) > 1 {
				others = m.whole(asked{a.check, slices.Delete(slices.Clone(a.answers), i, i+1)}, shares, kinds)
			}
			slip[g.at] = m.slips / float64(kinds) * others / whole
		}
	}
	return math.Log(whole)
}

// whole is how likely the answers to a check are where machines show so much of each
// kind.
func (m *Model) whole(a asked, shares [showings]float64, kinds int) float64 {
	whole := 0.0
	for shown := range kinds {
		product := shares[shown]
		for _, g := range a.answers {
			product *= m.answered(g, shown, m.Checks[a.check], kinds)
		}
		whole += product
	}
	return whole
}

// shares is what a case's machines show at a check.
func (m *Model) shares(c *caseOf, j int) (shares [showings]float64, kinds int) {
	v := c.views[j]
	switch {
	case m.Checks[j].Instrument == check.Eyes && v.vague:
		return [showings]float64{0.5, 0.5}, 2
	case m.Checks[j].Instrument == check.Eyes:
		return [showings]float64{v.open, 1 - v.open}, 2
	case v.vague:
		return [showings]float64{1.0 / 3, 1.0 / 3, 1.0 / 3}, 3
	}
	return [showings]float64{v.number, v.open, v.unrest}, 3
}

// answered is how likely an answer is where a machine shows one of the kinds.
func (m *Model) answered(g given, shown int, k check.Check, kinds int) float64 {
	said := kindOf(g, k)
	p := m.slips / float64(kinds)
	switch {
	case said == shown:
		p += 1 - m.slips
	case said == showsUnrest && k.Instrument != check.Eyes:
		p += restlessAfterAll
	}
	return p
}

// restlessAfterAll is how often digits dance that come to rest in formulas, or that
// stay away in them: fingers and damp on a long range do it. An assumption, no
// source.
const restlessAfterAll = 0.04

// fit is the numbers under a case.
func (m *Model) fit(c hypothesis, numbers []number) normal {
	n := len(numbers)
	s, all, d, own := make([][]float64, n), make([]float64, n*n), make([]float64, n), make([]float64, n)
	for i, x := range numbers {
		s[i] = all[i*n : (i+1)*n]
		mean, variance := m.expects(c, x.check)
		d[i], own[i] = x.value-mean, x.errors
		for k, y := range numbers[:i] {
			if !c.views[x.check].vague && !c.views[y.check].vague {
				s[i][k] = c.cov[x.check][y.check]
			}
			if x.check == y.check {
				s[i][k] = variance + x.model // the meter errs alike too, most of the time
				own[i] = math.Max(x.errors-x.model, 1e-6)
			}
		}
		s[i][i] = variance + x.errors
	}
	return decompose(s, d, own)
}

// fewNumbers say nothing of how numbers lie.
const fewNumbers = 8

// expects is mean and variance of a check's numbers under a case.
func (m *Model) expects(c hypothesis, j int) (mean, variance float64) {
	v := c.views[j]
	if v.vague || v.counted < fewNumbers {
		return m.middle[j], 4 * m.spread[j] * m.spread[j]
	}
	rough := 2 * v.rough * scaleOf(m.Checks[j]).errors
	return v.means[c.detector], c.cov[j][j] + rough*rough
}

func logSum(parts []float64) float64 {
	most := math.Inf(-1)
	for _, p := range parts {
		most = math.Max(most, p)
	}
	if math.IsInf(most, -1) {
		return most
	}
	sum := 0.0
	for _, p := range parts {
		sum += math.Exp(p - most)
	}
	return most + math.Log(sum)
}
