package diagnose

import (
	"cmp"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
)

// Suspect is a fault with its probability.
type Suspect struct {
	Fault       fault.Fault
	Probability float64
}

// Suspects is what the evidence comes to.
type Suspects struct {
	Faults []Suspect              // the likeliest first
	Parts  map[check.Part]float64 // "" is no fault
	Slips  map[check.ID]float64   // how likely a number is a mistake
	// Strange is how badly even the best case fits: near 1 where such readings are
	// hardly ever seen under any fault of the catalogue.
	Strange float64
	weights []float64 // by case
}

// Part is the likeliest part and its probability.
func (s Suspects) Part() (p check.Part, probability float64) {
	for part, x := range s.Parts {
		if x > probability || x == probability && part < p {
			p, probability = part, x
		}
	}
	return p, probability
}

// Weigh gives the suspects behind the evidence. The model must be ready.
func (m *Model) Weigh(evidence []Evidence) Suspects {
	numbers, others := m.sorted(evidence)
	logs := make([]float64, len(m.cases))
	slip := make([][]float64, len(m.cases))
	for i, c := range m.cases {
		if !(c.weight > 0) {
			logs[i] = math.Inf(-1)
			continue
		}
		var l float64
		l, slip[i] = m.logLike(c, numbers, others)
		logs[i] = math.Log(c.weight) + l
	}
	total := logSum(logs)
	out := Suspects{Parts: map[check.Part]float64{}, Slips: map[check.ID]float64{}, weights: make([]float64, len(m.cases))}
	byFault := map[fault.ID]*Suspect{}
	best := 0
	for i, c := range m.cases {
		w := math.Exp(logs[i] - total)
		out.weights[i] = w
		out.Parts[c.fault.Part()] += w
		s := byFault[c.fault.ID]
		if s == nil {
			s = &Suspect{Fault: c.fault}
			byFault[c.fault.ID] = s
		}
		s.Probability += w
		for k, x := range numbers {
			if slip[i] != nil {
				out.Slips[m.Checks[x.check].ID] += w * slip[i][k]
			}
		}
		if w > out.weights[best] {
			best = i
		}
	}
	for _, s := range byFault {
		out.Faults = append(out.Faults, *s)
	}
	slices.SortFunc(out.Faults, func(a, b Suspect) int {
		return cmp.Or(cmp.Compare(b.Probability, a.Probability), cmp.Compare(a.Fault.ID, b.Fault.ID))
	})
	out.Strange = m.strange(m.cases[best], numbers, others)
	return out
}

// strange is the share of readings under a case that would fit it better than
// these do.
func (m *Model) strange(c *caseOf, numbers []number, others []Evidence) float64 {
	if len(numbers)+len(others) == 0 {
		return 0
	}
	odd := 0.0
	for _, e := range others {
		if l := m.logShare(c, e); l < math.Log(0.1) {
			odd += -2 * l
		}
	}
	square := 0.0
	for _, z := range m.fit(c, numbers, -1).z {
		square += z * z
	}
	// Wilson and Hilferty's normal for a sum of squares (1931, from memory).
	n := float64(len(numbers) + len(others))
	x := (math.Cbrt((square+odd)/n) - (1 - 2/(9*n))) / math.Sqrt(2/(9*n))
	return below(x)
}
