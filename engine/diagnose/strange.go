package diagnose

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/quantity"
)

// strange is how seldom answers under a hypothesis are as odd as these: by the oddest
// of them, or by all together. Answers that are likelier slips than not are left out.
func (m *Model) strange(h hypothesis, evidence []Evidence, slips [][]float64) float64 {
	var sound []Evidence
	for at, e := range evidence {
		if sum(slips[at]) < likelySlip {
			sound = append(sound, e)
		}
	}
	numbers, checks := m.sorted(sound)
	if len(checks) == 0 {
		return 0
	}
	seldom := 1.0
	for _, a := range checks {
		shares, _ := m.shares(h.caseOf, a.check)
		said := shares[kindOf(a.answers[0], m.Checks[a.check])]
		tail := 0.0
		for _, p := range shares {
			if p <= said {
				tail += p
			}
		}
		seldom = math.Min(seldom, tail)
	}
	g := m.fit(h, numbers)
	square := 0.0
	for i, z := range g.residuals() {
		square += g.z[i] * g.z[i]
		seldom = math.Min(seldom, 2*below(-math.Abs(z)))
	}
	tests := float64(len(checks) + len(numbers))
	oddest := -math.Expm1(tests * math.Log1p(-math.Min(seldom, 1-1e-9)))
	together := 1.0
	if n := float64(len(numbers)); n > 0 {
		// Wilson and Hilferty's normal for a sum of squares (1931, from memory).
		together = below(-(math.Cbrt(square/n) - (1 - 2/(9*n))) / math.Sqrt(2/(9*n)))
	}
	return 1 - math.Min(1, 2*math.Min(oddest, together))
}

// kindOf is what an answer says that the machine shows.
func kindOf(g given, k check.Check) int {
	switch {
	case k.Instrument == check.Eyes && g.Value < 0.5, g.State == quantity.OverRange:
		return showsOpen
	case g.State == quantity.Unsettled:
		return showsUnrest
	}
	return showsNumber
}

func sum(list []float64) float64 {
	out := 0.0
	for _, x := range list {
		out += x
	}
	return out
}
