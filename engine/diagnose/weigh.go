package diagnose

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/quantity"
)

// slips is how often a reading is a mistake of any kind: a digit, a unit, a probe
// that did not touch. An assumption, no source.
const slips = 0.015

// logLike is the logarithm of how likely a case makes the evidence. Any one of
// the numbers may be a slip, which tells nothing.
func (m *Model) logLike(c *caseOf, numbers []number, others []Evidence) (sum float64, slip []float64) {
	for _, e := range others {
		sum += m.logShare(c, e)
	}
	for _, x := range numbers {
		if v := c.views[x.check]; !v.vague {
			sum += math.Log((1-slips)*v.number + slips/3)
		}
	}
	whole := m.fit(c, numbers, -1).logStudent() + math.Log1p(-slips)*float64(len(numbers))
	parts := []float64{whole}
	for i, x := range numbers {
		flat := -math.Log(8 * m.spread[x.check]) // anything within the check's usual span
		parts = append(parts, m.fit(c, numbers, i).logStudent()+math.Log(slips)+flat)
	}
	total := logSum(parts)
	for _, p := range parts[1:] {
		slip = append(slip, math.Exp(p-total))
	}
	return sum + total, slip
}

// logShare is for an answer without a number.
func (m *Model) logShare(c *caseOf, e Evidence) float64 {
	j := m.index[e.Check]
	v := c.views[j]
	if v.vague {
		return math.Log(1.0 / 3)
	}
	share := v.unrest
	switch {
	case m.Checks[j].Instrument == check.Eyes:
		share = v.open
		if e.Value < 0.5 {
			share = 1 - v.open
		}
	case e.State == quantity.OverRange:
		share = v.open
	case e.State == quantity.Unsettled:
		share = math.Max(v.unrest, 0.05) // what comes to rest in formulas may dance all the same
	}
	return math.Log((1-slips)*share + slips/3)
}

// fit is the numbers under a case, without one of them (-1 for all).
func (m *Model) fit(c *caseOf, numbers []number, without int) normal {
	var used []number
	for i, x := range numbers {
		if i != without {
			used = append(used, x)
		}
	}
	s, d := make([][]float64, len(used)), make([]float64, len(used))
	for i, x := range used {
		s[i] = make([]float64, len(used))
		mean, variance := m.expects(c, x.check)
		d[i] = x.value - mean
		for k, y := range used[:i] {
			if !c.views[x.check].vague && !c.views[y.check].vague {
				s[i][k] = c.cov[x.check][y.check]
			}
		}
		s[i][i] = variance + x.errors
	}
	return decompose(s, d)
}

// expects is mean and variance of a check's numbers under a case.
func (m *Model) expects(c *caseOf, j int) (mean, variance float64) {
	v := c.views[j]
	if v.vague || v.number < 0.03 {
		return m.middle[j], 4 * m.spread[j] * m.spread[j]
	}
	rough := 2 * v.rough * scaleOf(m.Checks[j]).errors
	return v.mean, c.cov[j][j] + rough*rough
}

func logSum(parts []float64) float64 {
	most := math.Inf(-1)
	for _, p := range parts {
		most = math.Max(most, p)
	}
	sum := 0.0
	for _, p := range parts {
		sum += math.Exp(p - most)
	}
	return most + math.Log(sum)
}
